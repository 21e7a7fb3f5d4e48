//! How the indicators are made to flash and to tell the rider: flasher, pilots, and what was fitted for LED lamps.

use layshaft_wire::wire;

use super::message::SpecMessage;
use crate::bounds;
use crate::error::Refused;

/// What makes the lamps flash.
#[wire(stored)]
pub enum FlasherKind {
    /// A bimetal strip that the lamp current heats; two terminals. Its rate follows from the load.
    Thermal,
    /// Electronic with two terminals, fed through the lamps: flashes about twice as fast when the load is too small.
    ElectronicTwo,
    /// Electronic with an earth of its own, three terminals: minds no load.
    ElectronicThree,
}

/// How the rider is told.
#[wire(stored)]
pub enum PilotFitting {
    /// One pilot between the two circuits: it finds its earth through the lamps of the other side.
    BetweenSides,
    /// One pilot to earth, fed from each side through a diode.
    OneWithDiodes,
    /// One pilot to earth on each side.
    OneEachSide,
}

/// Flasher, pilots and load resistors of a bike. What is left out is not known.
#[wire(lenient, stored)]
pub struct Indication {
    /// What makes the lamps flash.
    pub flasher: Option<FlasherKind>,
    /// Load of one side that the flasher is made for, watts; left out: that of the lamps as made.
    pub flasher_watts: Option<f64>,
    /// Flashes a minute that an electronic flasher is made for, as its maker says.
    pub flashes_minute: Option<f64>,
    /// How the rider is told.
    pub pilot: Option<PilotFitting>,
    /// One load resistor, ohms; left out: none is fitted.
    pub resistor_ohms: Option<f64>,
    /// Load resistors on each side.
    pub resistors_per_side: Option<u32>,
}

impl Indication {
    /// The record, or the first field that cannot be accepted. A resistor needs to say how many are on each side.
    pub fn checked(self) -> Result<Self, Refused> {
        bounds::FLASHER_WATTS.check_known(self.flasher_watts)?;
        bounds::FLASH_RATE.check_known(self.flashes_minute)?;
        bounds::LOAD_RESISTOR.check_known(self.resistor_ohms)?;
        bounds::RESISTORS.check_known(self.resistors_per_side.map(f64::from))?;
        if self.resistors_per_side.is_some_and(|count| count > 0) && self.resistor_ohms.is_none() {
            let reason = SpecMessage::ResistorOhms.into();
            return Err(Refused::Conflict { field: "resistorOhms".to_owned(), reason });
        }
        Ok(self)
    }

    /// This laid over another, field by field: what is not said here is as below.
    pub fn over(self, below: &Indication) -> Indication {
        Indication {
            flasher: self.flasher.or(below.flasher),
            flasher_watts: self.flasher_watts.or(below.flasher_watts),
            flashes_minute: self.flashes_minute.or(below.flashes_minute),
            pilot: self.pilot.or(below.pilot),
            resistor_ohms: self.resistor_ohms.or(below.resistor_ohms),
            resistors_per_side: self.resistors_per_side.or(below.resistors_per_side),
        }
    }

    /// Watts that the load resistors of one side take while lit, at a voltage.
    pub fn resistor_watts(&self, volts: f64) -> f64 {
        let count = f64::from(self.resistors_per_side.unwrap_or(u32::from(self.resistor_ohms.is_some())));
        self.resistor_ohms.map_or(0.0, |ohms| count * volts * volts / ohms)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn resistors_without_ohms_are_refused_and_what_is_not_said_stays() {
        let odd = Indication { resistors_per_side: Some(2), ..Indication::default() };
        assert!(odd.checked().unwrap_err().english().contains("how many ohms"));
        let below = Indication { flasher: Some(FlasherKind::Thermal), ..Indication::default() };
        let over = Indication { pilot: Some(PilotFitting::OneWithDiodes), ..Indication::default() }.over(&below);
        assert_eq!((over.flasher, over.pilot), (Some(FlasherKind::Thermal), Some(PilotFitting::OneWithDiodes)));
    }

    #[test]
    fn two_resistors_of_eight_ohms_take_the_watts_of_the_lamps_they_stand_for() {
        let fitted = Indication { resistor_ohms: Some(8.0), resistors_per_side: Some(2), ..Indication::default() };
        assert!((fitted.resistor_watts(14.0) - 49.0).abs() < 1e-12);
        assert_eq!(Indication::default().resistor_watts(14.0), 0.0);
    }
}
