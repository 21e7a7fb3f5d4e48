//! Where a coat stands while it cures: in the garage, in the house, under a heat lamp.

use layshaft_wire::wire;

use super::message::PaintMessage;
use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;

/// Temperature in the house when none is given, °C. An assumption that is said.
pub(crate) const IN_THE_HOUSE: f64 = 20.0;

/// Where something stands.
#[wire(stored)]
#[derive(Default)]
pub enum StayPlace {
    /// Where the bike stands: the log and the usual temperatures of that place hold.
    #[default]
    Garage,
    /// In the house, at 20 °C where nothing else is given.
    House,
    /// Under a heat lamp: the temperature is measured on the surface.
    HeatLamp,
    /// Elsewhere, at a temperature that is given.
    Elsewhere,
}

/// From when on a coat stands somewhere.
#[wire(lenient, stored)]
pub struct Stay {
    /// From when on, milliseconds since 1970 (UTC).
    pub from_ms: i64,
    /// Where.
    pub place: StayPlace,
    /// Temperature there, °C; left out: the log in the garage, 20 °C in the house.
    pub celsius: Option<f64>,
}

impl Stay {
    /// The stay, or the first field that cannot be accepted. A heat lamp without a temperature is refused: its distance
    /// decides, and only a thermometer on the surface knows.
    ///
    /// ```
    /// use layshaft_core::record::{Stay, StayPlace};
    /// let lamp = Stay { place: StayPlace::HeatLamp, ..Stay::default() };
    /// assert!(lamp.clone().checked().is_err());
    /// assert!(Stay { celsius: Some(40.0), ..lamp }.checked().is_ok());
    /// ```
    pub fn checked(self) -> Result<Self, Refused> {
        bounds::TEMPERATURE.check_known(self.celsius)?;
        if matches!(self.place, StayPlace::HeatLamp | StayPlace::Elsewhere) && self.celsius.is_none() {
            return Err(Refused::Missing {
                field: "celsius".to_owned(),
                label: FieldMessage::Temperature.into(),
                help: PaintMessage::MeasureOnSurface.into(),
            });
        }
        Ok(self)
    }

    /// The temperature that holds there, °C; none where the log of the garage holds.
    pub(crate) fn holds(&self) -> Option<f64> {
        match self.place {
            StayPlace::Garage => None,
            StayPlace::House => Some(self.celsius.unwrap_or(IN_THE_HOUSE)),
            StayPlace::HeatLamp | StayPlace::Elsewhere => self.celsius,
        }
    }
}
