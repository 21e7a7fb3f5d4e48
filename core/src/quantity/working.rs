//! How an answer was worked out: equations with the numbers in them, sources, range.

use layshaft_wire::wire;

use super::source::Source;
use crate::message::Message;
use crate::units::Unit;

/// One line of a working: what was computed, how, and the result.
#[wire]
pub struct WorkLine {
    /// What this line gives.
    pub label: Message,
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
    pub range: Message,
}

impl WorkLine {
    /// A line from its parts. Only a formula makes one, so that no page writes an equation of its own.
    pub(super) fn new(label: impl Into<Message>, equation: String, value: f64, unit: Unit) -> Self {
        Self { label: label.into(), equation, value, unit }
    }

    /// A number that was measured: nothing was worked out.
    pub(crate) fn measured(label: impl Into<Message>, value: f64, unit: Unit) -> Self {
        Self::new(label, value.to_string(), value, unit)
    }

    /// The same line in another unit, of a formula that holds in any.
    pub(crate) fn measured_in(self, unit: Unit) -> Self {
        Self { unit, ..self }
    }
}
