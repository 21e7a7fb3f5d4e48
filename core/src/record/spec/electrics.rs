//! What an electrical system is made of: whether there is a battery, what rectifies, what feeds the lamps, what regulates.

use layshaft_wire::wire;

/// The electrical systems of small motorcycles.
#[wire(stored)]
pub enum ElectricalSystem {
    /// Battery, full-wave rectifier and regulator; everything runs on the battery's direct current.
    RegulatedBattery,
    /// Battery behind one diode, which lets every other half of the wave through; nothing but the battery holds the voltage.
    HalfWaveBattery,
    /// The alternating current of a lighting coil goes straight to the lamps, unregulated; there is no battery.
    LightingCoil,
    /// The same, with a shunt regulator that takes what the lamps do not need.
    LightingCoilRegulated,
    /// An unregulated lighting coil feeds what burns with the lights; a battery behind one diode feeds the rest.
    LightingCoilAndBattery,
}

/// What an electrical system has, for forms and pages.
#[wire]
pub struct SystemCard {
    /// The system.
    pub system: ElectricalSystem,
    /// Whether it has a battery.
    pub battery: bool,
    /// Whether a lighting coil feeds the lamps.
    pub lighting_coil: bool,
    /// The fields of the supply that it is not asked for.
    pub lacks: Vec<String>,
}

impl ElectricalSystem {
    /// Every system.
    pub const ALL: [Self; 5] = [
        Self::RegulatedBattery,
        Self::HalfWaveBattery,
        Self::LightingCoil,
        Self::LightingCoilRegulated,
        Self::LightingCoilAndBattery,
    ];

    /// The system with what it has and what it is not asked for.
    pub fn card(self) -> SystemCard {
        SystemCard {
            system: self,
            battery: self.has_battery(),
            lighting_coil: self.has_lighting_coil(),
            lacks: self.lacks().iter().map(|field| (*field).to_owned()).collect(),
        }
    }

    /// The fields of the supply that mean nothing in it: figures of a battery, and a voltage that nothing holds.
    fn lacks(self) -> &'static [&'static str] {
        match (self.has_battery(), self.is_regulated()) {
            (true, true) => &[],
            (true, false) => &["chargingVolts"],
            (false, true) => &["batteryAh", "ratedHours", "peukert"],
            (false, false) => &["chargingVolts", "batteryAh", "ratedHours", "peukert"],
        }
    }

    /// Whether it has a battery.
    pub fn has_battery(self) -> bool {
        !matches!(self, Self::LightingCoil | Self::LightingCoilRegulated)
    }

    /// Whether a lighting coil feeds the lamps with alternating current.
    pub fn has_lighting_coil(self) -> bool {
        matches!(self, Self::LightingCoil | Self::LightingCoilRegulated | Self::LightingCoilAndBattery)
    }

    /// Whether one diode charges the battery.
    pub fn is_half_wave(self) -> bool {
        matches!(self, Self::HalfWaveBattery | Self::LightingCoilAndBattery)
    }

    /// Whether something holds the voltage, at the battery or at the lamps.
    pub fn is_regulated(self) -> bool {
        matches!(self, Self::RegulatedBattery | Self::LightingCoilRegulated)
    }
}

/// Where the spark comes from.
#[wire(stored)]
pub enum IgnitionKind {
    /// Coil and contact breaker on the battery's current: no spark with a flat battery.
    BatteryPoints,
    /// A coil of its own under the flywheel with a contact breaker: needs no battery and loads none.
    Magneto,
    /// A box with its own pulser, on the battery or on a coil of its own.
    Electronic,
}

#[cfg(test)]
mod tests {
    use super::ElectricalSystem;
    use super::ElectricalSystem::*;

    #[test]
    fn what_is_not_asked_for_are_figures_of_a_battery_and_a_voltage_that_nothing_holds() {
        for system in ElectricalSystem::ALL {
            let card = system.card();
            let lacks = |field: &str| card.lacks.iter().any(|lacked| lacked == field);
            for field in ["batteryAh", "ratedHours", "peukert"] {
                assert_eq!(lacks(field), !system.has_battery(), "{system:?} {field}");
            }
            assert_eq!(lacks("chargingVolts"), !system.is_regulated(), "{system:?}");
        }
    }

    #[test]
    fn each_system_says_what_it_has() {
        for (system, battery, coil, half, regulated) in [
            (RegulatedBattery, true, false, false, true),
            (HalfWaveBattery, true, false, true, false),
            (LightingCoil, false, true, false, false),
            (LightingCoilRegulated, false, true, false, true),
            (LightingCoilAndBattery, true, true, true, false),
        ] {
            let said = (system.has_battery(), system.has_lighting_coil(), system.is_half_wave(), system.is_regulated());
            assert_eq!(said, (battery, coil, half, regulated), "{system:?}");
        }
    }
}
