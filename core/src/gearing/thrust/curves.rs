//! The lines of the picture: thrust in each gear and resistance, against speed.

use layshaft_wire::wire;

use super::machine::{LOWEST_SHARE, Machine};
use super::road_load::Resistance;
use super::top_speed::TopSpeed;

/// A point of a thrust line.
#[wire]
pub struct CurvePoint {
    /// Road speed, km/h.
    pub road_speed_kmh: f64,
    /// Engine speed, revolutions a minute.
    pub engine_rpm: f64,
    /// Thrust, N.
    pub newtons: f64,
}

/// Thrust in one gear.
#[wire]
pub struct GearCurve {
    /// Gear, first is 1.
    pub gear: u32,
    /// Overall ratio.
    pub overall_ratio: f64,
    /// The line, slowest first; it ends at the engine's limit.
    pub points: Vec<CurvePoint>,
    /// Most thrust of the line, N.
    pub most_newtons: f64,
    /// Highest speed that the gear holds; none where it cannot hold any.
    pub top: Option<TopSpeed>,
}

/// Points of a thrust line.
const GEAR_POINTS: u32 = 24;
/// Points of the resistance line.
const ROAD_POINTS: u32 = 40;

/// The thrust lines, first gear first.
pub(super) fn gear_curves(machine: &Machine) -> Vec<GearCurve> {
    let limit = machine.engine.limit_rpm;
    let curve = |gear: u32, overall_ratio: f64| {
        let points: Vec<CurvePoint> = (0..=GEAR_POINTS)
            .map(|step| {
                let share = LOWEST_SHARE + (1.0 - LOWEST_SHARE) * f64::from(step) / f64::from(GEAR_POINTS);
                let engine_rpm = limit * share;
                CurvePoint {
                    road_speed_kmh: machine.kmh(overall_ratio, engine_rpm),
                    engine_rpm,
                    newtons: machine.thrust(overall_ratio, engine_rpm),
                }
            })
            .collect();
        let most_newtons = points.iter().map(|point| point.newtons).fold(0.0, f64::max);
        GearCurve { gear, overall_ratio, most_newtons, top: machine.top_of(gear, overall_ratio), points }
    };
    machine.train.gears.iter().map(|line| curve(line.gear, line.overall_ratio)).collect()
}

/// The resistance line from standstill to the fastest point of any thrust line.
pub(super) fn resistance_curve(machine: &Machine) -> Vec<Resistance> {
    let ends = machine.train.gears.iter().map(|line| machine.kmh(line.overall_ratio, machine.engine.limit_rpm));
    let far = ends.fold(0.0, f64::max);
    (0..=ROAD_POINTS).map(|step| machine.resistance(far * f64::from(step) / f64::from(ROAD_POINTS))).collect()
}
