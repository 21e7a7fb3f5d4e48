//! Load against output: from which engine speed on the battery no longer discharges, and how long it lasts at a standstill.

use layshaft_wire::wire;

use crate::bounds;
use crate::electrical::formulas::{RidingState, Volts, balance_speed, battery_hours, charge_current, output_at};
use crate::record::Supply;

/// Engine speed of the comparison when none is asked for, revolutions a minute: a small single in town.
pub(crate) const COMPARED_AT_RPM: f64 = 3000.0;

/// Exponent when the battery does not say: flooded lead, the middle of 1.2 to 1.3.
pub(crate) const FLOODED: f64 = 1.25;

/// Hours of the rating when the battery does not say.
pub(crate) const TEN_HOURS: f64 = 10.0;

/// The load in one riding state.
#[wire]
pub struct StateLoad {
    /// State.
    pub state: RidingState,
    /// Load, watts at the voltage of that state.
    pub watts: f64,
    /// The same as current, amperes.
    pub amperes: f64,
    /// The same on the fitted bike as it is now, watts, when something is being tried.
    pub fitted_watts: f64,
}

/// Output against load in one riding state.
#[wire]
pub struct Balance {
    /// State.
    pub state: RidingState,
    /// Current into the battery at idle, amperes; negative discharges it.
    pub at_idle_amperes: Option<f64>,
    /// Current into the battery at the comparison speed, amperes.
    pub at_speed_amperes: f64,
    /// Engine speed above which the battery no longer discharges; none when the output never reaches the load.
    pub from_rpm: Option<f64>,
}

/// Standing with the key on.
#[wire]
pub struct Stationary {
    /// State.
    pub state: RidingState,
    /// Current, amperes.
    pub amperes: f64,
    /// Minutes until a full battery is flat.
    pub minutes: f64,
}

/// Output against load with the engine running; none standing, when the output is not known, or where
/// it goes to lamps and charges no battery.
pub(crate) fn balance(supply: &Supply, load: &StateLoad, volts: &Volts, engine_rpm: f64) -> Option<Balance> {
    if load.state == RidingState::Standing || supply.kind().has_lighting_coil() {
        return None;
    }
    let spare = |rpm| output_at(&supply.output, rpm).map(|output| charge_current(output, load.watts, volts.charging));
    Some(Balance {
        state: load.state,
        at_idle_amperes: supply.idle_rpm.and_then(spare),
        at_speed_amperes: spare(engine_rpm)?,
        from_rpm: balance_speed(&supply.output, load.watts),
    })
}

/// How long the battery lasts standing; none when its capacity is not known or nothing draws current.
pub(crate) fn stationary(supply: &Supply, loads: &[StateLoad]) -> Option<Stationary> {
    let load = loads.iter().find(|load| load.state == RidingState::Standing)?;
    let amperes = bounds::AMPERES.check(load.amperes).ok()?;
    let (hours, exponent) = (supply.rated_hours.unwrap_or(TEN_HOURS), supply.peukert.unwrap_or(FLOODED));
    let lasts = battery_hours(supply.battery_ah?, hours, exponent, amperes);
    Some(Stationary { state: load.state, amperes, minutes: lasts * 60.0 })
}
