//! Battery and alternator.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;

/// One point of the alternator's output.
#[wire(stored)]
pub struct OutputPoint {
    /// Engine speed, revolutions a minute.
    pub rpm: f64,
    /// Output, watts.
    pub watts: f64,
}

/// Battery and alternator.
#[wire(lenient, stored)]
pub struct Supply {
    /// Nominal voltage of the system, volts.
    pub system_volts: Option<f64>,
    /// Voltage that the regulator holds, volts.
    pub charging_volts: Option<f64>,
    /// Battery capacity, ampere-hours.
    pub battery_ah: Option<f64>,
    /// Hours of discharge that the capacity is rated for (10 on most motorcycle batteries).
    pub rated_hours: Option<f64>,
    /// Peukert exponent; 1.2 to 1.3 flooded, 1.05 to 1.15 absorbed glass mat.
    pub peukert: Option<f64>,
    /// Output against engine speed, lowest speed first.
    pub output: Vec<OutputPoint>,
    /// Idle speed, revolutions a minute.
    pub idle_rpm: Option<f64>,
}

impl Supply {
    /// Battery and alternator with the output curve in order, or the first field that cannot be accepted.
    pub fn checked(mut self) -> Result<Self, Refused> {
        bounds::SYSTEM_VOLTS.check_known(self.system_volts)?;
        bounds::CHARGING_VOLTS.check_known(self.charging_volts)?;
        bounds::BATTERY_AH.check_known(self.battery_ah)?;
        bounds::RATED_HOURS.check_known(self.rated_hours)?;
        bounds::PEUKERT.check_known(self.peukert)?;
        bounds::ENGINE_SPEED.named("idleRpm", FieldMessage::IdleSpeed).check_known(self.idle_rpm)?;
        for point in &self.output {
            bounds::ENGINE_SPEED.of("output").check(point.rpm)?;
            bounds::ALTERNATOR_WATTS.of("output").check(point.watts)?;
        }
        self.output.sort_by(|a, b| a.rpm.total_cmp(&b.rpm));
        Ok(self)
    }
}
