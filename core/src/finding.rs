//! Findings, workings and sources: what the program says about a bike, and why one may believe it.

use layshaft_wire::wire;

use crate::units::Unit;

/// How heavy a finding weighs.
#[wire]
pub enum Weight {
    /// Worth knowing.
    Note,
    /// Look at this before going on.
    Care,
    /// Forbids riding, or would fail the inspection today.
    Stopper,
}

/// Something worth saying about the bike. A bad bike is a finding, never an error.
#[wire]
pub struct Finding {
    /// Stable code, dotted: `chain.too-short`.
    pub code: String,
    /// How heavy it weighs.
    pub weight: Weight,
    /// The finding in one or two sentences.
    pub text: String,
}

impl Finding {
    /// A finding from its parts.
    pub fn new(code: &str, weight: Weight, text: impl Into<String>) -> Self {
        Self { code: code.to_owned(), weight, text: text.into() }
    }
}

/// How a number came to be known.
#[wire]
pub enum Standing {
    /// The text of the source itself was read.
    Seen,
    /// Read in somebody else's restatement. Shown as unconfirmed.
    SecondHand,
    /// Recalled, not read. Shown as unconfirmed.
    Memory,
    /// Follows from the formula.
    Computed,
    /// Common practice of the trade, no source.
    CommonPractice,
    /// Entered by the owner.
    Entered,
    /// Invented for the demo bike.
    Invented,
}

/// Where a number or a rule comes from.
#[wire]
pub struct Source {
    /// Title and place: standard and clause, book and page, law and article.
    pub text: String,
    /// How it came to be known.
    pub standing: Standing,
}

impl Source {
    /// A source from its parts.
    pub fn new(text: impl Into<String>, standing: Standing) -> Self {
        Self { text: text.into(), standing }
    }
}

/// One line of a working: what was computed, how, and the result.
#[wire]
pub struct WorkLine {
    /// What this line gives.
    pub label: String,
    /// The equation with the numbers in it.
    pub equation: String,
    /// The result.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
}

/// How an answer was worked out.
#[wire]
pub struct Working {
    /// The steps, in order.
    pub lines: Vec<WorkLine>,
    /// Where the formulas come from.
    pub sources: Vec<Source>,
    /// Where they hold and what was assumed.
    pub range: String,
}

impl WorkLine {
    /// A line from its parts.
    pub fn new(label: &str, equation: impl Into<String>, value: f64, unit: Unit) -> Self {
        Self { label: label.to_owned(), equation: equation.into(), value, unit }
    }
}
