//! What holds a machine back: rolling, slope and air; and what the wheel pushes with.

use layshaft_wire::wire;

use crate::units::GRAVITY;

/// How rolling is reckoned.
#[wire]
pub enum RollingLaw {
    /// The same coefficient at every speed.
    Constant {
        /// Coefficient, a pure number.
        rolling_coefficient: f64,
    },
    /// By tyre pressure and speed, see [`rolling_coefficient`]; above 165 km/h its value there is held.
    ByPressure {
        /// Tyre pressure, bar.
        tyre_bar: f64,
    },
}

/// What holds the machine back at a speed, newtons.
#[wire]
pub struct Resistance {
    /// Road speed, km/h.
    pub road_speed_kmh: f64,
    /// Rolling of the tyres, N.
    pub rolling_newtons: f64,
    /// Slope, N; below zero it pushes.
    pub slope_newtons: f64,
    /// Air, N; below zero it pushes.
    pub air_newtons: f64,
    /// All of it, N.
    pub total_newtons: f64,
}

/// Everything that the resistance depends on but the speed.
#[derive(Clone, Debug, PartialEq)]
pub struct RoadLoad {
    /// Machine, rider, luggage and fluids, kg.
    pub mass_kg: f64,
    /// Rolling.
    pub rolling: RollingLaw,
    /// Drag area, m².
    pub drag_area_m2: f64,
    /// Density of the air, kg/m³.
    pub air_density: f64,
    /// Grade, per cent of the way; above zero is uphill.
    pub grade_percent: f64,
    /// Head wind, km/h; below zero it comes from behind.
    pub head_wind_kmh: f64,
}

/// Top of the formula's first branch, km/h.
pub const FORMULA_TOP_KMH: f64 = 165.0;

/// Rolling coefficient of a motorcycle tyre, a pure number.
///
/// `f = 0.0085 + 0.018/p + 1.59·10⁻⁶ · V²/p`
///
/// - `p` tyre pressure, bar; `V` road speed, km/h
///
/// Source: K. Cooper, in Cossalter, *Motorcycle Dynamics*, chapter 3 (from memory). Range: up to 165 km/h. The printed second
/// branch begins a fifth higher, so the two do not join; here the value at 165 km/h is held above it instead.
///
/// ```
/// use layshaft_core::gearing::rolling_coefficient;
/// assert!((rolling_coefficient(2.25, 165.0) - 0.0357).abs() < 5e-5);
/// assert_eq!(rolling_coefficient(2.25, 200.0), rolling_coefficient(2.25, 165.0));
/// ```
pub fn rolling_coefficient(tyre_bar: f64, road_speed_kmh: f64) -> f64 {
    let kmh = road_speed_kmh.min(FORMULA_TOP_KMH);
    0.0085 + 0.018 / tyre_bar + 1.59e-6 * kmh * kmh / tyre_bar
}

/// Parts of the weight along and across a slope, N.
///
/// `m·g·sin θ`, `m·g·cos θ`, `tan θ = grade / 100`; mass in kg. Source: statics, computed. Range: any grade.
///
/// ```
/// let (along, across) = layshaft_core::gearing::slope_force(250.0, 6.0);
/// assert!((along - 146.835).abs() < 1e-2 && across < 250.0 * 9.80665);
/// ```
pub fn slope_force(mass_kg: f64, grade_percent: f64) -> (f64, f64) {
    let angle = (grade_percent / 100.0).atan();
    (mass_kg * GRAVITY * angle.sin(), mass_kg * GRAVITY * angle.cos())
}

/// Resistance of the air, N.
///
/// `½ · ρ · CdA · (v + w) · |v + w|`
///
/// - `ρ` density, kg/m³; `CdA` drag area, m²; `v` road speed and `w` head wind, km/h here, m/s in the formula
///
/// Source: definition of the drag coefficient (Cossalter, chapter 3; Gillespie, chapter 4: from memory). Range: wind along the
/// road; side wind is left out.
///
/// ```
/// let newtons = layshaft_core::gearing::air_resistance(1.225, 0.6, 40.8211 * 3.6, 0.0);
/// assert!((newtons - 612.39).abs() < 0.01);
/// ```
pub fn air_resistance(air_density: f64, drag_area_m2: f64, road_speed_kmh: f64, head_wind_kmh: f64) -> f64 {
    let through = (road_speed_kmh + head_wind_kmh) / 3.6;
    0.5 * air_density * drag_area_m2 * through * through.abs()
}

/// Thrust at the tyre, N.
///
/// `F = T · i · η / r`
///
/// - `T` torque at the crankshaft, N m; `i` overall ratio; `η` share that reaches the wheel; `r` radius of the wheel, mm here
///
/// Source: moments through gears in mesh (from memory: Cossalter, chapter 3). Range: no wheelspin, clutch closed.
///
/// ```
/// // 40 N m, 3.0 × 1 × 45/15, 0.9, 0.31 m.
/// assert!((layshaft_core::gearing::thrust(40.0, 9.0, 0.9, 310.0) - 1045.16).abs() < 0.01);
/// ```
pub fn thrust(crank_nm: f64, overall_ratio: f64, drive_efficiency: f64, wheel_radius_mm: f64) -> f64 {
    crank_nm * overall_ratio * drive_efficiency / (wheel_radius_mm / 1000.0)
}

impl RoadLoad {
    /// Resistance at a speed.
    pub fn at(&self, road_speed_kmh: f64) -> Resistance {
        let (slope_newtons, across) = slope_force(self.mass_kg, self.grade_percent);
        let coefficient = match self.rolling {
            RollingLaw::Constant { rolling_coefficient } => rolling_coefficient,
            RollingLaw::ByPressure { tyre_bar } => rolling_coefficient(tyre_bar, road_speed_kmh),
        };
        let rolling_newtons = coefficient * across;
        let air_newtons = air_resistance(self.air_density, self.drag_area_m2, road_speed_kmh, self.head_wind_kmh);
        Resistance {
            road_speed_kmh,
            rolling_newtons,
            slope_newtons,
            air_newtons,
            total_newtons: rolling_newtons + slope_newtons + air_newtons,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_printed_second_branch_does_not_join_the_first_which_is_why_it_is_left_out() {
        let second = 0.018 / 2.25 + 2.91e-6 * FORMULA_TOP_KMH * FORMULA_TOP_KMH / 2.25;
        assert!((second - 0.0432).abs() < 5e-5);
        assert!(second / rolling_coefficient(2.25, FORMULA_TOP_KMH) > 1.2);
    }

    #[test]
    fn a_tail_wind_faster_than_the_machine_pushes() {
        assert!(air_resistance(1.225, 0.6, 36.0, -54.0) < 0.0);
        assert_eq!(air_resistance(1.225, 0.6, 36.0, -36.0), 0.0);
    }

    #[test]
    fn a_slope_splits_the_weight_by_pythagoras() {
        let (along, across) = slope_force(250.0, 6.0);
        assert!((along.hypot(across) - 250.0 * GRAVITY).abs() < 1e-9 && (along / across - 0.06).abs() < 1e-12);
    }
}
