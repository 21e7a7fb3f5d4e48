//! A derived quantity with its judgement, and all of them together.

use layshaft_wire::wire;

use super::finding::Finding;
use super::source::Source;
use crate::message::Message;
use crate::units::Unit;

/// Whether a quantity is as it should be.
#[wire]
pub enum Judgement {
    /// Inside its limits.
    Fine,
    /// Outside a limit or common practice.
    Outside,
    /// Not judged, or not enough is known to judge it.
    Open,
}

/// One derived quantity.
#[wire]
pub struct Quantity {
    /// Stable id, dotted: `speed.gear5.at-limit`.
    pub id: String,
    /// In words.
    pub label: Message,
    /// Value.
    pub value: f64,
    /// Unit.
    pub unit: Unit,
    /// Judgement.
    pub judgement: Judgement,
    /// Why, where it is judged.
    pub why: Option<Message>,
    /// Where the formula or limit comes from.
    pub source: Source,
}

/// Everything derived from a spec.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Derived {
    /// The quantities, in a stable order.
    pub quantities: Vec<Quantity>,
    /// Findings on the way.
    pub findings: Vec<Finding>,
}

impl Derived {
    /// The quantity with an id, where it could be derived.
    pub fn quantity(&self, id: &str) -> Option<&Quantity> {
        self.quantities.iter().find(|quantity| quantity.id == id)
    }
}

impl Quantity {
    /// A quantity from its parts.
    pub(crate) fn new(
        id: &str,
        label: impl Into<Message>,
        value: f64,
        unit: Unit,
        (judgement, why): (Judgement, Option<Message>),
        source: Source,
    ) -> Self {
        Self { id: id.to_owned(), label: label.into(), value, unit, judgement, why, source }
    }
}
