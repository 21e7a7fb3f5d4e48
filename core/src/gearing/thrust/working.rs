//! The working of the page on thrust: every equation with its numbers, and where it comes from.

use super::gears::GearingMatch;
use super::machine::Machine;
use super::road_load::RollingLaw;
use super::sources::{air_source, road_load};
use super::top_speed::{HeldBy, TopSpeed};
use crate::gearing::formulas::kinematics;
use crate::gearing::message::{GearingSource, ThrustMessage};
use crate::message::{Joint, Message};
use crate::quantity::{Source, Standing, WorkLine, Working};
use crate::tyres::tyre_source;
use crate::units::Unit;

fn rolling_source(rolling: &RollingLaw) -> Source {
    match rolling {
        RollingLaw::Constant { .. } => Source::new(GearingSource::RollingConstant, Standing::Memory),
        RollingLaw::ByPressure { .. } => Source::new(GearingSource::RollingPressure, Standing::Memory),
    }
}

/// The lines on the top speed.
fn on_top(machine: &Machine, top: &TopSpeed) -> Vec<WorkLine> {
    let load = &machine.load;
    let at = &top.resistance;
    let overall = machine.train.gears.iter().find(|line| line.gear == top.gear).map_or(0.0, |line| line.overall_ratio);
    let kw = machine.engine.kw_at(top.rpm);
    let coefficient = match load.rolling {
        RollingLaw::Constant { rolling_coefficient } => rolling_coefficient.to_string(),
        RollingLaw::ByPressure { tyre_bar } => {
            format!("(0.0085 + 0.018 / {tyre_bar} + 1.59e-6 × {:.1}² / {tyre_bar})", top.kmh)
        }
    };
    let condition = match top.held_by {
        HeldBy::Power => "where power at the wheel equals resistance × speed, found by halving",
        HeldBy::EngineLimit => "the engine's limit; power is left over",
    };
    let wheel_kw = machine.wheel_kw(top.rpm);
    vec![
        WorkLine::new(
            "Rolling resistance there",
            format!("{coefficient} × {} kg × 9.80665 × cos(atan({} / 100))", load.mass_kg, load.grade_percent),
            at.rolling_newtons,
            Unit::Newton,
        ),
        WorkLine::new(
            "Slope",
            format!("{} kg × 9.80665 × sin(atan({} / 100))", load.mass_kg, load.grade_percent),
            at.slope_newtons,
            Unit::Newton,
        ),
        WorkLine::new(
            "Resistance of the air there",
            format!(
                "½ × {:.4} × {} × (({:.2} + {}) / 3.6)²",
                load.air_density, load.drag_area_m2, top.kmh, load.head_wind_kmh
            ),
            at.air_newtons,
            Unit::Newton,
        ),
        WorkLine::new(
            "Power at the wheel there",
            format!("{kw:.3} kW × {}", machine.efficiency),
            wheel_kw,
            Unit::Kilowatt,
        ),
        WorkLine::new(
            "Thrust there",
            format!(
                "{:.2} N m × {overall:.4} × {} / {:.4} m",
                super::torque_of(kw, top.rpm),
                machine.efficiency,
                machine.radius_mm() / 1000.0
            ),
            machine.thrust(overall, top.rpm),
            Unit::Newton,
        ),
        WorkLine::new(
            "Top speed",
            format!("gear {}: {condition} = {:.2}", top.gear, top.kmh),
            top.kmh,
            Unit::KilometreHour,
        ),
    ]
}

/// Where the page holds, with what was assumed on it.
fn range(assumptions: &[Message]) -> Message {
    let first = std::iter::once(ThrustMessage::Range.into());
    let last = std::iter::once(ThrustMessage::RangeOldEngine.into());
    Message::joined(Joint::Sentences, first.chain(assumptions.iter().cloned()).chain(last).collect())
}

/// The whole working.
pub(super) fn working(machine: &Machine, top: Option<&TopSpeed>, matched: Option<&GearingMatch>) -> Working {
    let (peak_kw, peak_rpm) = machine.engine.peak;
    let mut lines = vec![WorkLine::new(
        "Torque at peak power",
        format!("{peak_kw} kW × 60,000 / (2π × {peak_rpm})"),
        super::torque_of(peak_kw, peak_rpm),
        Unit::NewtonMetre,
    )];
    lines.extend(top.into_iter().flat_map(|top| on_top(machine, top)));
    if let Some((matched, off)) = matched.and_then(|matched| matched.off_percent.map(|off| (matched, off))) {
        let equation =
            format!("({:.0} / {:.0} − 1) × 100", matched.top_gear_rpm.unwrap_or_default(), matched.peak_power_rpm);
        lines.push(WorkLine::new("Top gear against peak power", equation, off, Unit::Percent));
    }
    if let Some((kmh, ratio)) = matched.and_then(|matched| matched.best_kmh.zip(matched.best_final_ratio)) {
        let equation = format!("peak power at the wheel, {peak_kw} kW × {}, against resistance", machine.efficiency);
        lines.push(WorkLine::new("Speed with the best possible gearing", equation, kmh, Unit::KilometreHour));
        let equation = format!("{peak_rpm} rpm at {kmh:.2} km/h in top, solved for the ratio");
        lines.push(WorkLine::new("Final drive ratio for it", equation, ratio, Unit::None));
    }
    Working {
        lines,
        sources: vec![
            kinematics(),
            road_load(),
            rolling_source(&machine.load.rolling),
            air_source(),
            tyre_source(machine.train.circumference_measured),
        ],
        range: range(&machine.assumptions),
    }
}
