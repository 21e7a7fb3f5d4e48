//! Where the bike stands.

use layshaft_wire::wire;

use crate::bounds::{self};
use crate::error::Refused;

/// Where the bike stands: temperature and dryness that cures run on when no reading is at hand.
#[wire(lenient, stored)]
pub struct Place {
    /// Usual temperature of the garage by night, °C.
    pub night_celsius: Option<f64>,
    /// Usual temperature of the garage by day, °C.
    pub day_celsius: Option<f64>,
    /// Usual relative humidity, per cent.
    pub humidity: Option<f64>,
}

impl Place {
    /// The place, or the first field that cannot be accepted.
    pub fn checked(self) -> Result<Self, Refused> {
        bounds::TEMPERATURE.of("nightCelsius").check_known(self.night_celsius)?;
        bounds::TEMPERATURE.of("dayCelsius").check_known(self.day_celsius)?;
        bounds::HUMIDITY.check_known(self.humidity)?;
        Ok(self)
    }
}
