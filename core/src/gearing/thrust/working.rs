//! The working of the page on thrust: every equation with its numbers, and where it comes from.

use super::at_wheel::{TorqueOfPower, WheelPower, power_at_wheel};
use super::formulas::{PowerSpeed, RoadResistance, RollingCoefficient, ThrustAtTyre};
use super::gears::GearingMatch;
use super::machine::Machine;
use super::power::torque_of;
use super::road_load::{FORMULA_TOP_KMH, RollingLaw, rolling_coefficient};
use super::sources::{air_source, road_load};
use super::top_speed::{HeldBy, TopSpeed};
use crate::gearing::formulas::{RoadSpeed, WantedRatio, kinematics};
use crate::gearing::message::{GearingSource, ThrustMessage, ThrustWorking};
use crate::message::{ListStyle, Message};
use crate::quantity::{Line, PercentChange, Source, Standing, WorkLine, Working};
use crate::record::Drive;
use crate::tyres::tyre_source;

fn rolling_source(rolling: &RollingLaw) -> Source {
    match rolling {
        RollingLaw::Constant { .. } => Source::new(GearingSource::RollingConstant, Standing::Memory),
        RollingLaw::ByPressure { .. } => Source::new(GearingSource::RollingPressure, Standing::Memory),
    }
}

/// Rolling coefficient at a speed, with its line where it goes by speed.
fn coefficient(rolling: &RollingLaw, kmh: f64) -> (f64, Option<WorkLine>) {
    match *rolling {
        RollingLaw::Constant { rolling_coefficient } => (rolling_coefficient, None),
        RollingLaw::ByPressure { tyre_bar } => {
            let law = RollingCoefficient { tyre_bar, road_speed_kmh: kmh.min(FORMULA_TOP_KMH) };
            (rolling_coefficient(tyre_bar, kmh), law.line(ThrustWorking::RollingCoefficient))
        }
    }
}

/// The lines on the top speed.
fn on_top(machine: &Machine, top: &TopSpeed) -> Vec<WorkLine> {
    let load = &machine.load;
    let overall_ratio =
        machine.train.gears.iter().find(|line| line.gear == top.gear).map_or(0.0, |line| line.overall_ratio);
    let power_kw = machine.engine.kw_at(top.rpm);
    let (rolling_coefficient, by_speed) = coefficient(&load.rolling, top.kmh);
    let resistance = RoadResistance {
        road_speed_kmh: top.kmh,
        mass_kg: load.mass_kg,
        rolling_coefficient,
        drag_area_m2: load.drag_area_m2,
        air_density: load.air_density,
        grade_percent: load.grade_percent,
        head_wind_kmh: load.head_wind_kmh,
    };
    let thrust = ThrustAtTyre {
        crank_nm: torque_of(power_kw, top.rpm),
        overall_ratio,
        drive_efficiency: machine.efficiency,
        wheel_radius_mm: machine.radius_mm(),
    };
    let speed = RoadSpeed { engine_rpm: top.rpm, overall_ratio, circumference_mm: machine.train.circumference_mm };
    let label = match top.held_by {
        HeldBy::Power => ThrustWorking::TopSpeedByPower { gear: top.gear },
        HeldBy::EngineLimit => ThrustWorking::TopSpeedByLimit { gear: top.gear },
    };
    let lines = [
        by_speed,
        resistance.line_of("rolling", ThrustWorking::Rolling),
        resistance.line_of("slope", ThrustWorking::Slope),
        resistance.line_of("air", ThrustWorking::Air),
        WheelPower { power_kw, drive_efficiency: machine.efficiency }.line(ThrustWorking::WheelPower),
        thrust.line(ThrustWorking::Thrust),
        speed.line(label),
    ];
    lines.into_iter().flatten().collect()
}

/// The lines on the best possible gearing.
fn on_best(machine: &Machine, drive: &Drive, kmh: f64) -> Vec<WorkLine> {
    let ((peak_kw, peak_rpm), load) = (machine.engine.peak, &machine.load);
    let speed = PowerSpeed {
        wheel_kw: power_at_wheel(peak_kw, machine.efficiency),
        mass_kg: load.mass_kg,
        rolling_coefficient: coefficient(&load.rolling, kmh).0,
        drag_area_m2: load.drag_area_m2,
        air_density: load.air_density,
        grade_percent: load.grade_percent,
        head_wind_kmh: load.head_wind_kmh,
    };
    let mut lines = Vec::from_iter(speed.line(ThrustWorking::BestSpeed));
    lines.extend(drive.primary_ratio.zip(drive.gear_ratios.last()).and_then(|(primary_ratio, gear_ratio)| {
        let ratio = WantedRatio {
            engine_rpm: peak_rpm,
            road_speed_kmh: kmh,
            primary_ratio,
            gear_ratio: *gear_ratio,
            circumference_mm: machine.train.circumference_mm,
        };
        ratio.line(ThrustWorking::BestRatio)
    }));
    lines
}

/// Where the page holds, with what was assumed on it.
fn range(assumptions: &[Message]) -> Message {
    let first = std::iter::once(ThrustMessage::Range.into());
    let last = std::iter::once(ThrustMessage::RangeOldEngine.into());
    Message::joined(ListStyle::Sentences, first.chain(assumptions.iter().cloned()).chain(last).collect())
}

/// The whole working.
pub(super) fn working(
    machine: &Machine,
    drive: &Drive,
    top: Option<&TopSpeed>,
    matched: Option<&GearingMatch>,
) -> Working {
    let (peak_kw, peak_rpm) = machine.engine.peak;
    let torque = TorqueOfPower { power_kw: peak_kw, engine_rpm: peak_rpm };
    let mut lines = Vec::from_iter(torque.line(ThrustWorking::PeakTorque));
    lines.extend(top.into_iter().flat_map(|top| on_top(machine, top)));
    lines.extend(matched.and_then(|matched| {
        let off = PercentChange { before: matched.peak_power_rpm, after: matched.top_gear_rpm? };
        off.line(ThrustWorking::AgainstPeakPower)
    }));
    if let Some((kmh, _)) = matched.and_then(|matched| matched.best_kmh.zip(matched.best_final_ratio)) {
        lines.extend(on_best(machine, drive, kmh));
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
