//! Something that draws current: what it is, when it draws, and how much.

use layshaft_wire::wire;

use super::lamp_cap::LampCap;
use super::role::ConsumerRole;
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;

/// When a consumer draws current.
#[wire(stored)]
pub enum Use {
    /// Whenever the engine runs or the key is on (ignition, dashboard).
    Steady,
    /// With the lights on.
    Lights,
    /// While braking.
    Braking,
    /// While indicating; half of the time at a duty of 0.5.
    Indicating,
    /// Now and then (horn, starter); left out of the balance.
    Moment,
}

/// What turns the current into light or work.
#[wire(stored)]
pub enum LightSource {
    /// Filament lamp: current follows volts to the power 0.55.
    Filament,
    /// LED with its driver: near constant power.
    Led,
    /// Motor or horn.
    Motor,
    /// Coil or electronics.
    Electronics,
}

/// Something that draws current.
#[wire(lenient, stored)]
pub struct Consumer {
    /// What it is called.
    pub name: String,
    /// What it is to the bike; none where it is nothing that the program reckons with by name.
    pub role: Option<ConsumerRole>,
    /// Watts of one, at its test voltage.
    pub watts: f64,
    /// How many of them draw together; of indicators those on one side.
    pub count: u32,
    /// When.
    pub used: Option<Use>,
    /// Kind.
    pub source: Option<LightSource>,
    /// Voltage at which the watts hold, volts; 13.5 V for lamps of a 12 V system when not said.
    pub test_volts: Option<f64>,
    /// Cap of the lamp.
    pub cap: Option<LampCap>,
    /// Light of one lamp at its test voltage, lumens.
    pub lumens: Option<f64>,
    /// Whether it works only one way round, as many LED lamps do.
    pub polarised: Option<bool>,
}

impl Consumer {
    /// The consumer with its name trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.name = check::check_title("name", FieldMessage::Consumer, &self.name)?;
        bounds::WATTS.check(self.watts)?;
        bounds::COUNT.check(f64::from(self.count))?;
        bounds::TEST_VOLTS.check_known(self.test_volts)?;
        bounds::LUMENS.check_known(self.lumens)?;
        Ok(self)
    }

    /// Refuses more indicators than one side of a bike has. Asked where a consumer is entered, not where a stored one is read:
    /// before roles were, four could be stored, and they still draw what they drew.
    pub fn check_count_of_role(&self) -> Result<(), Refused> {
        match self.role {
            Some(role) if role.is_indicator() => bounds::INDICATORS_A_SIDE.check(f64::from(self.count)).map(drop),
            _ => Ok(()),
        }
    }
}
