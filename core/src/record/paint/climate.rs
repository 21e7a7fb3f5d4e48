//! Temperature and humidity where things cure.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::time::check_written;

/// Temperature and humidity where things cure, from a moment on.
#[wire(lenient, stored)]
pub struct Climate {
    /// From when on, milliseconds since 1970 (UTC).
    pub from_ms: i64,
    /// Temperature, °C.
    pub celsius: f64,
    /// Relative humidity, per cent.
    pub humidity: Option<f64>,
}

impl Climate {
    /// The reading, or the first field that cannot be accepted.
    pub fn checked(self) -> Result<Self, Refused> {
        check_written("fromMs", FieldMessage::FromWhenOn, Some(self.from_ms))?;
        bounds::TEMPERATURE.check(self.celsius)?;
        bounds::HUMIDITY.check_known(self.humidity)?;
        Ok(self)
    }
}
