//! Battery and alternator.

use layshaft_wire::wire;

use super::electrics::{ElectricalSystem, IgnitionKind};
use crate::bounds;
use crate::error::Refused;
use crate::message::FieldMessage;

/// One point of the alternator's output.
#[wire(stored)]
pub struct OutputPoint {
    /// Engine speed, revolutions a minute.
    pub rpm: f64,
    /// Output, watts, as the plate or a meter at the alternator says.
    pub watts: f64,
}

/// Battery and alternator.
#[wire(lenient, stored)]
pub struct Supply {
    /// What the electrical system is made of; left out: battery, full-wave rectifier and regulator.
    pub system: Option<ElectricalSystem>,
    /// Where the spark comes from.
    pub ignition: Option<IgnitionKind>,
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
    /// The electrical system. What does not say is taken as battery, full-wave rectifier and regulator, as before systems were asked.
    ///
    /// ```
    /// use layshaft_core::record::{ElectricalSystem, Supply};
    /// assert_eq!(Supply::default().kind(), ElectricalSystem::RegulatedBattery);
    /// ```
    pub fn kind(&self) -> ElectricalSystem {
        self.system.unwrap_or(ElectricalSystem::RegulatedBattery)
    }

    /// The supply without what its system does not have: no battery figures where there is no battery.
    pub fn as_built(mut self) -> Self {
        if !self.kind().has_battery() {
            (self.battery_ah, self.rated_hours, self.peukert) = (None, None, None);
        }
        self
    }

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn battery_figures_count_only_where_there_is_a_battery() {
        let with = |system| Supply { system, battery_ah: Some(4.0), ..Supply::default() }.as_built().battery_ah;
        assert_eq!(with(None), Some(4.0));
        assert_eq!(with(Some(ElectricalSystem::LightingCoilAndBattery)), Some(4.0));
        assert_eq!(with(Some(ElectricalSystem::LightingCoil)), None);
    }
}
