//! What the mechanic said about an item of an inspection.

use layshaft_wire::wire;

/// An answer in words.
#[wire(stored)]
pub enum AnswerWord {
    /// As it should be.
    Good,
    /// Not as it should be.
    NotGood,
    /// Not looked at (takes an earlier answer back).
    NotChecked,
    /// The machine has no such thing, or the rule does not cover it.
    DoesNotApply,
}

/// The answer to one item, in words or as a measured value.
#[wire(lenient, stored)]
pub struct ItemAnswer {
    /// In words.
    pub word: Option<AnswerWord>,
    /// Measured value in the item's unit; where the item measures, it decides, unless the word says “not good”.
    pub value: Option<f64>,
    /// When, milliseconds since 1970 (UTC); the door says it, whatever stands here.
    pub answered_ms: Option<i64>,
    /// A remark.
    pub note: Option<String>,
}
