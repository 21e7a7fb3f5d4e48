//! The voltages at which the load is worked out, and what is taken for granted where one of them is not known.
//!
//! Six lead cells make a 12 V system, three a 6 V one; every figure here is given for six cells and scales with them.

use super::riding::RidingState;
use crate::record::Supply;

/// Cells that the figures below belong to.
pub(crate) const SIX_CELLS: f64 = 6.0;
/// Nominal voltage of six cells, volts.
const OF_SIX: f64 = 12.0;
/// Nominal voltage of a lead cell, volts.
const CELL: f64 = OF_SIX / SIX_CELLS;
/// Test voltage of lamps, volts (UN R37).
const TEST: f64 = 13.5;

/// Voltages of the electrical system.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Volts {
    /// Nominal voltage, volts.
    pub system: f64,
    /// Voltage of a full battery with the engine off, volts.
    pub standing: f64,
    /// Voltage with the engine running, as the regulator holds it, volts.
    pub charging: f64,
    /// Voltage at which the watts of a consumer hold when it does not say, volts.
    pub test: f64,
    /// The nominal voltage was not known and is taken as 12 V.
    pub system_assumed: bool,
    /// The regulated voltage was not known and is taken as 14.0 V for every 12 V.
    pub charging_assumed: bool,
}

impl Volts {
    /// The voltages of a supply. Unknown: a 12 V system that charges at 14.0 V.
    ///
    /// For every 12 V of the system: 12.6 V standing (a rested full battery), 14.0 V charging (the least that service
    /// manuals accept at 5,000 rpm, so that the alternator is not flattered by a high voltage), 13.5 V test voltage
    /// (UN R37). A 6 V machine has half of each.
    ///
    /// ```
    /// use layshaft_core::record::Supply;
    /// use layshaft_core::electrical::Volts;
    /// let volts = Volts::of(&Supply { system_volts: Some(6.0), ..Supply::default() });
    /// assert_eq!((volts.standing, volts.charging, volts.test), (6.3, 7.0, 6.75));
    /// ```
    pub fn of(supply: &Supply) -> Self {
        if !supply.kind().has_battery() {
            return Self::at_coil(supply);
        }
        let system = supply.system_volts.unwrap_or(OF_SIX);
        let scale = system / OF_SIX;
        Self {
            system,
            standing: 12.6 * scale,
            charging: supply.charging_volts.unwrap_or(14.0 * scale),
            test: TEST * scale,
            system_assumed: supply.system_volts.is_none(),
            charging_assumed: supply.charging_volts.is_none(),
        }
    }

    /// The voltages of a lighting coil: lamps get what they are rated for, or what a shunt regulator is said to hold.
    ///
    /// ```
    /// use layshaft_core::record::{ElectricalSystem, Supply};
    /// use layshaft_core::electrical::Volts;
    /// let coil = Supply { system: Some(ElectricalSystem::LightingCoil), system_volts: Some(6.0), ..Supply::default() };
    /// assert_eq!(Volts::of(&coil).charging, 6.75);
    /// ```
    pub fn at_coil(supply: &Supply) -> Self {
        let system = supply.system_volts.unwrap_or(OF_SIX);
        let test = TEST * system / OF_SIX;
        let held = supply.charging_volts.filter(|_| supply.kind().is_regulated());
        Self {
            system,
            standing: test,
            charging: held.unwrap_or(test),
            test,
            system_assumed: supply.system_volts.is_none(),
            charging_assumed: held.is_none(),
        }
    }

    /// Lead cells in series of the battery that the system has.
    ///
    /// ```
    /// use layshaft_core::record::Supply;
    /// use layshaft_core::electrical::Volts;
    /// let cells = |system| Volts::of(&Supply { system_volts: Some(system), ..Supply::default() }).cells();
    /// assert_eq!((cells(6.0), cells(12.0)), (3, 6));
    /// ```
    pub fn cells(&self) -> u32 {
        (self.system / CELL).round() as u32
    }

    /// The voltage in a riding state, volts: that of the battery with the engine off, else the regulated one.
    pub fn in_state(&self, state: RidingState) -> f64 {
        match state {
            RidingState::Standing => self.standing,
            RidingState::Day | RidingState::Lights | RidingState::Busy => self.charging,
        }
    }

    /// Whether the regulated voltage lies inside the window of service manuals, 14.0 to 15.5 V for every 12 V.
    ///
    /// ```
    /// use layshaft_core::record::Supply;
    /// use layshaft_core::electrical::Volts;
    /// let at = |charging| Volts::of(&Supply { charging_volts: Some(charging), ..Supply::default() });
    /// assert!(at(14.4).charging_in_window() && !at(13.2).charging_in_window() && !at(16.0).charging_in_window());
    /// ```
    pub fn charging_in_window(&self) -> bool {
        let of_six_cells = self.charging * OF_SIX / self.system;
        (14.0..=15.5).contains(&of_six_cells)
    }
}
