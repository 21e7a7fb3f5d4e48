//! Where thrust and resistance meet: the highest speed that a gear can hold.
//!
//! Root finding by bracketing over speed, from the top down, so that the highest crossing is found whatever lies below it. Power
//! and resistance are continuous up to the engine's limit; nothing is differentiated.

use layshaft_wire::wire;

use super::road_load::{Resistance, RoadLoad};
use crate::error::Refused;
use crate::gearing::message::GearingRefused;
use crate::units::Unit;

/// What ends the speed.
#[wire]
pub enum HeldBy {
    /// Resistance takes all the power.
    Power,
    /// The engine's speed limit.
    EngineLimit,
}

/// The highest speed of a gear.
#[wire]
pub struct TopSpeed {
    /// Gear, first is 1.
    pub gear: u32,
    /// Speed, km/h.
    pub kmh: f64,
    /// Engine speed there, revolutions a minute.
    pub rpm: f64,
    /// What ends it.
    pub held_by: HeldBy,
    /// Resistance there.
    pub resistance: Resistance,
}

/// Steps of the search from the top down; each crossing is then halved to the last bits.
const STEPS: u32 = 96;

/// The highest speed between two at which power is at least what resistance takes, km/h; none where there is no such speed.
/// `spare` is power less resistance, in any unit. The flag says whether the upper end itself is held.
pub(super) fn highest_held(low: f64, high: f64, spare: impl Fn(f64) -> f64) -> Option<(f64, bool)> {
    if spare(high) >= 0.0 {
        return Some((high, true));
    }
    let step = (high - low) / f64::from(STEPS);
    let mut above = high;
    for count in (0..STEPS).rev() {
        let below = low + step * f64::from(count);
        if spare(below) >= 0.0 {
            return Some((halve(below, above, &spare), false));
        }
        above = below;
    }
    None
}

/// Halves a bracket whose lower end is held and whose upper end is not.
fn halve(mut held: f64, mut lost: f64, spare: &impl Fn(f64) -> f64) -> f64 {
    for _ in 0..60 {
        let middle = f64::midpoint(held, lost);
        if spare(middle) >= 0.0 {
            held = middle
        } else {
            lost = middle
        }
        if lost - held <= 1e-12 * lost {
            break;
        }
    }
    held
}

/// Highest speed for which this is looked for, km/h.
const HIGHEST_KMH: f64 = 400.0;

/// Speed at which resistance takes all of a power at the wheel, km/h, whatever the gearing.
///
/// Solves `P = F(v) · v`, `F = f·m·g·cos θ + m·g·sin θ + ½·ρ·CdA·(v + w)·|v + w|`
///
/// - `P` power at the wheel, kW; the rest as in [`RoadLoad`]
///
/// Source: forms of Cossalter, *Motorcycle Dynamics*, chapter 3, and Gillespie, *Fundamentals of Vehicle Dynamics*, chapter 4
/// (from memory); checked with `brentq` of scipy. Range: up to 400 km/h; beyond, or where the power cannot move it at all, refused.
///
/// ```
/// use layshaft_core::gearing::{RoadLoad, RollingLaw, power_limited_speed};
/// let load = RoadLoad {
///     mass_kg: 250.0,
///     rolling: RollingLaw::Constant { rolling_coefficient: 0.02 },
///     drag_area_m2: 0.6,
///     air_density: 1.225,
///     grade_percent: 0.0,
///     head_wind_kmh: 0.0,
/// };
/// assert!((power_limited_speed(27.0, &load).unwrap() - 146.956).abs() < 1e-3);
/// ```
pub fn power_limited_speed(wheel_kw: f64, load: &RoadLoad) -> Result<f64, Refused> {
    let spare = |kmh: f64| wheel_kw * 1000.0 - load.at(kmh).total_newtons * kmh / 3.6;
    match highest_held(0.0, HIGHEST_KMH, spare) {
        Some((kmh, false)) if kmh > 0.0 => Ok(kmh),
        _ => Err(Refused::Conflict {
            field: "wheelKw".to_owned(),
            reason: GearingRefused::NoBalance {
                power: Unit::Kilowatt.of(wheel_kw),
                highest: Unit::KilometreHour.of(HIGHEST_KMH),
            }
            .into(),
        }),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::gearing::thrust::RollingLaw;

    fn load(mass_kg: f64, rolling_coefficient: f64, drag_area_m2: f64) -> RoadLoad {
        RoadLoad {
            mass_kg,
            rolling: RollingLaw::Constant { rolling_coefficient },
            drag_area_m2,
            air_density: 1.225,
            grade_percent: 0.0,
            head_wind_kmh: 0.0,
        }
    }

    #[test]
    fn the_worked_cases_come_out() {
        for (kw, load, kmh) in [
            (27.0, load(250.0, 0.02, 0.6), 146.956),
            (11.7, load(200.0, 0.02, 0.6), 110.059),
            (50.0, load(300.0, 0.015, 0.5), 193.595),
            (27.0, RoadLoad { grade_percent: 6.0, ..load(250.0, 0.02, 0.6) }, 135.572),
        ] {
            let found = power_limited_speed(kw, &load).unwrap();
            assert!((found - kmh).abs() < 6e-4, "{found}");
        }
        let at = load(250.0, 0.02, 0.6).at(40.8211 * 3.6);
        assert!((at.rolling_newtons - 49.03).abs() < 5e-3 && (at.air_newtons - 612.39).abs() < 5e-3);
    }

    #[test]
    fn the_search_does_not_jump_at_the_top_of_the_rolling_formula() {
        let by_pressure = |kw| {
            let load = RoadLoad { rolling: RollingLaw::ByPressure { tyre_bar: 2.25 }, ..load(250.0, 0.02, 0.6) };
            power_limited_speed(kw, &load).unwrap()
        };
        let speeds: Vec<_> = (0..200).map(|step| by_pressure(36.0 + 0.05 * f64::from(step))).collect();
        assert!(speeds[0] < 165.0 && speeds[199] > 165.0);
        assert!(speeds.windows(2).all(|two| two[1] > two[0] && two[1] - two[0] < 0.12));
    }

    #[test]
    fn the_highest_of_several_crossings_is_found() {
        // Held from 10 to 20 and again from 60 to 70.
        let spare = |v: f64| (v - 10.0) * (20.0 - v) * (v - 60.0) * (v - 70.0);
        let (found, at_end) = highest_held(0.0, 100.0, spare).unwrap();
        assert!(!at_end && (found - 70.0).abs() < 1e-9, "{found}");
        assert_eq!(highest_held(0.0, 5.0, spare), None);
        assert_eq!(highest_held(0.0, 15.0, spare), Some((15.0, true)));
    }

    #[test]
    fn too_little_power_for_the_hill_and_too_much_for_the_search_are_refused() {
        let hill = RoadLoad { grade_percent: -20.0, ..load(200.0, 0.01, 0.1) };
        assert!(power_limited_speed(200.0, &hill).is_err());
        let wind = RoadLoad { head_wind_kmh: 100.0, ..load(900.0, 0.1, 2.0) };
        assert!(power_limited_speed(0.1, &wind).is_ok_and(|kmh| kmh < 1.0));
    }

    proptest! {
        #[test]
        fn more_power_never_lowers_the_speed(kw in 2.0..80.0, more in 0.0..20.0, mass in 120.0..400.0, area in 0.25..0.8) {
            let load = load(mass, 0.02, area);
            prop_assert!(power_limited_speed(kw + more, &load).unwrap() >= power_limited_speed(kw, &load).unwrap());
        }

        #[test]
        fn power_and_resistance_balance_there(kw in 2.0..80.0, mass in 120.0..400.0, area in 0.25..0.8, grade in -2.0..12.0) {
            let load = RoadLoad { grade_percent: grade, ..load(mass, 0.02, area) };
            let kmh = power_limited_speed(kw, &load).unwrap();
            prop_assert!((load.at(kmh).total_newtons * kmh / 3.6 - kw * 1000.0).abs() < 1e-6 * kw * 1000.0);
        }
    }
}
