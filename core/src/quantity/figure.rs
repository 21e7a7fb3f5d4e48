//! The results of a formula.

use layshaft_wire::wire;

use crate::units::Unit;

/// A result of a formula.
#[wire]
pub struct Figure {
    /// What it is.
    pub name: String,
    /// Value.
    pub value: f64,
    /// Unit.
    pub unit: Unit,
}

/// The results of a formula.
#[wire]
pub struct Figures {
    /// Results, the main one first. One that does not apply to what was given is left out.
    pub figures: Vec<Figure>,
}
