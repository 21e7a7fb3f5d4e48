//! Readings: measured values with who, when and how.

use layshaft_wire::wire;

use crate::bounds;
use crate::changes::Record;
use crate::error::Refused;
use crate::units::Unit;

/// A measured value.
#[wire(lenient)]
pub struct Reading {
    /// What was measured, as a dotted mark: `tyre.rear.tread`.
    pub what: String,
    /// The value.
    pub value: f64,
    /// Its unit.
    pub unit: Option<Unit>,
    /// When, milliseconds since 1970 (UTC).
    pub taken_ms: i64,
    /// By whom.
    pub by: Option<String>,
    /// With what: “digital calliper”.
    pub how: Option<String>,
}

impl Record for Reading {
    const KIND: &'static str = "reading";
}

impl Reading {
    /// The reading, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.what = bounds::check_title("what", "What was measured", &self.what)?;
        bounds::READING.check(self.value)?;
        Ok(self)
    }
}
