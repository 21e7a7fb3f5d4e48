//! Readings: measured values with who, when and how.

use layshaft_wire::wire;

use crate::bounds;
use crate::changes::{Field, Stored};
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::time::check_written;
use crate::units::Unit;

/// A measured value.
#[wire(lenient, stored)]
pub struct Reading {
    /// What was measured, as a dotted id: `tyre.rear.tread`.
    pub what: String,
    /// The value.
    pub value: f64,
    /// Its unit.
    pub unit: Option<Unit>,
    /// When, milliseconds since 1970 (UTC); left out where it is taken: now.
    pub taken_ms: Option<i64>,
    /// By whom.
    pub by: Option<String>,
    /// With what: “digital calliper”.
    pub how: Option<String>,
}

impl Stored for Unit {
    const FIELDS: &'static [Field] = &[];
}

impl Reading {
    /// The reading, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.what = check::check_title("what", FieldMessage::WhatWasMeasured, &self.what)?;
        bounds::READING.check(self.value)?;
        check_written("takenMs", FieldMessage::WhenItWasMeasured, self.taken_ms)?;
        Ok(self)
    }
}
