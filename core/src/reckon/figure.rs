//! The results of a sum.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::units::Unit;

/// A result of a sum.
#[wire]
pub struct Figure {
    /// What it is.
    pub name: String,
    /// Value.
    pub value: f64,
    /// Unit.
    pub unit: Unit,
}

/// The results of a sum.
#[wire]
pub struct Figures {
    /// Results, the main one first.
    pub figures: Vec<Figure>,
}

pub(super) fn figure(name: &str, value: f64, unit: Unit) -> Figure {
    Figure { name: name.to_owned(), value, unit }
}

pub(super) fn teeth(front: u32, rear: u32) -> Result<(), Refused> {
    bounds::FRONT_TEETH.check(f64::from(front))?;
    bounds::REAR_TEETH.check(f64::from(rear))?;
    Ok(())
}
