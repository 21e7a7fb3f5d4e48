//! Who the bike is.

use layshaft_wire::wire;

use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::{FieldMessage, choices};

/// What cools the engine.
#[wire(stored)]
pub enum Cooling {
    /// Fins in the wind.
    Air,
    /// A radiator.
    Liquid,
}

/// How many strokes make one working cycle of the engine.
#[wire(stored)]
pub enum Strokes {
    /// Two.
    Two,
    /// Four.
    Four,
}

/// What turns the engine over.
#[wire(stored)]
pub enum Starter {
    /// A kick starter or pedals alone.
    Kick,
    /// A motor, with a kick starter beside it or without.
    Electric,
}

/// What a machine has or has not, and what rules ask of those alone that have it.
#[wire(stored)]
pub enum Equipment {
    /// A brake with fluid: a disc.
    HydraulicBrake,
    /// A brake on a cable or a rod: a drum.
    MechanicalBrake,
    /// Anti-lock brakes.
    AntiLock,
    /// Indicators.
    Indicators,
    /// A speedometer.
    Speedometer,
    /// A battery.
    Battery,
    /// Mirrors.
    Mirrors,
    /// A side stand.
    SideStand,
    /// A seat and rests for a passenger.
    PassengerSeat,
    /// An engine with four strokes.
    FourStroke,
}

choices! { Equipment; }

impl Equipment {
    /// Whether the owner alone can say that it is not there: nothing else on the bike tells.
    pub fn is_said(self) -> bool {
        matches!(
            self,
            Self::AntiLock
                | Self::Indicators
                | Self::Speedometer
                | Self::Mirrors
                | Self::SideStand
                | Self::PassengerSeat
        )
    }
}

/// Name, papers and the few figures that rules depend on.
#[wire(lenient, stored)]
pub struct Identity {
    /// What the owner calls it.
    pub name: String,
    /// Make and model as on the papers.
    pub model: Option<String>,
    /// Model year.
    pub model_year: Option<u32>,
    /// Year in which it was first used on a road; it switches inspection items on and off.
    pub first_used: Option<u32>,
    /// Frame number.
    pub frame_number: Option<String>,
    /// Displacement, cubic centimetres.
    pub displacement_cc: Option<f64>,
    /// Dry mass, kilograms.
    pub dry_mass_kg: Option<f64>,
    /// Peak power at the crankshaft, kilowatts.
    pub peak_power_kw: Option<f64>,
    /// Engine speed of peak power, revolutions a minute.
    pub peak_power_rpm: Option<f64>,
    /// Peak torque at the crankshaft, newton metres.
    pub peak_torque_nm: Option<f64>,
    /// Engine speed of peak torque, revolutions a minute.
    pub peak_torque_rpm: Option<f64>,
    /// Two-stroke or four-stroke.
    pub strokes: Option<Strokes>,
    /// What cools the engine.
    pub cooling: Option<Cooling>,
    /// What turns the engine over.
    pub starter: Option<Starter>,
    /// Inspection pack that the owner means to pass.
    pub pack: Option<String>,
    /// Day on which the owner hopes to have it inspected, `YYYY-MM-DD`.
    pub hoped_for: Option<String>,
    /// What it does not have, as its owner says.
    pub without: Vec<Equipment>,
    /// Everything about this bike is invented.
    #[wire(default)]
    pub invented: bool,
}

impl Identity {
    /// The identity with its texts trimmed, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        self.name = check::check_title("name", FieldMessage::NameOfTheBike, &self.name)?;
        bounds::MODEL_YEAR.check_known(self.model_year.map(f64::from))?;
        bounds::MODEL_YEAR
            .named("firstUsed", FieldMessage::YearOfFirstUse)
            .check_known(self.first_used.map(f64::from))?;
        bounds::DISPLACEMENT.check_known(self.displacement_cc)?;
        bounds::DRY_MASS.check_known(self.dry_mass_kg)?;
        bounds::PEAK_POWER.check_known(self.peak_power_kw)?;
        bounds::REV_LIMIT.of("peakPowerRpm").check_known(self.peak_power_rpm)?;
        bounds::PEAK_TORQUE.check_known(self.peak_torque_nm)?;
        bounds::PEAK_TORQUE_RPM.check_known(self.peak_torque_rpm)?;
        if let Some(day) = &self.hoped_for {
            crate::time::check_day("hopedFor", FieldMessage::DayHopedFor, day)?;
        }
        Ok(self)
    }
}

/// Rider, luggage and fluids where none are said, kg: 75 kg of rider as in type approval, and what he wears and fills in.
pub(crate) const USUAL_LOAD_KG: f64 = 90.0;
