//! The working of the brake page: every equation with its numbers, and where it comes from.

use super::ask::StoppingAnswer;
use crate::brakes::formulas::uniform;
use crate::brakes::formulas::{
    CamLever, DrumShoes, HydraulicBrake, LeverTravel, StoppingDeceleration, StoppingDistance, USUAL_PIVOT_SHARE, drums,
    hydraulics, lining_friction,
};
use crate::brakes::judge::{BrakeLine, Effort, fluid_source, ratio_source, swap};
use crate::brakes::message::{BrakesMessage, BrakesWorking};
use crate::message::{ListStyle, Message};
use crate::quantity::{Line, WorkLine, Working};
use crate::record::Brake;
use crate::units::Unit;

/// What is not known.
const UNKNOWN: f64 = f64::NAN;

/// The lines on a hydraulic brake.
pub(crate) fn on_line(line: &BrakeLine, effort: &Effort) -> Vec<WorkLine> {
    let brake = |pad_friction| HydraulicBrake {
        lever_newtons: line.lever_newtons,
        lever_ratio: line.lever_ratio.unwrap_or(UNKNOWN),
        master_mm: line.master_mm,
        pistons: line.pistons,
        piston_mm: line.piston_mm,
        pad_friction,
        effective_radius_mm: line.effective_radius_mm.unwrap_or(UNKNOWN),
        wheel_radius_mm: effort.wheel_radius_mm.unwrap_or(UNKNOWN),
        mass_kg: effort.mass_kg.unwrap_or(UNKNOWN),
    };
    let travel = LeverTravel {
        lever_newtons: line.lever_newtons,
        lever_ratio: line.lever_ratio.unwrap_or(UNKNOWN),
        master_mm: line.master_mm,
        pistons: line.pistons,
        piston_mm: line.piston_mm,
        pad_clearance_mm: line.pad_clearance_mm,
        hose_mm: UNKNOWN,
        hose_swell_ml_m: UNKNOWN,
    };
    let (least, most) = (brake(line.friction_least), brake(line.friction_most));
    let entered = line.radius_entered;
    let lines = [
        least.line_of("hydraulic_ratio", BrakesWorking::HydraulicRatio),
        least.line_of("pressure", BrakesWorking::Pressure),
        least.line_of("clamp", BrakesWorking::Clamp),
        least.line_of("torque", BrakesWorking::TorqueLeast { entered }),
        most.line_of("torque", BrakesWorking::TorqueMost { entered }),
        least.line(BrakesWorking::DecelerationLeast),
        most.line(BrakesWorking::DecelerationMost),
        travel.line_of("master_travel", BrakesWorking::MasterTravel),
        travel.line_of("pad_travel", BrakesWorking::LeverTravel),
    ];
    lines.into_iter().flatten().collect()
}

/// The lines on the change against standard.
pub(crate) fn on_change(standard: &BrakeLine, proposed: &BrakeLine) -> Vec<WorkLine> {
    let swap = swap(standard, proposed);
    let lines = [swap.line(BrakesWorking::LeverForce), swap.line_of("travel", BrakesWorking::TravelChange)];
    lines.into_iter().flatten().collect()
}

/// The lines on a drum.
pub(crate) fn on_drum(brake: &Brake, rod_travel_mm: Option<f64>) -> Vec<WorkLine> {
    let mut lines = Vec::new();
    if let (Some(cam_degrees), Some(rod_travel_mm), Some(cam_arm_mm)) =
        (brake.cam_degrees, rod_travel_mm, brake.cam_arm_mm)
    {
        let cam = CamLever { cam_degrees, rod_travel_mm, cam_arm_mm, rod_newtons: UNKNOWN };
        lines.extend(cam.line(BrakesWorking::CamAngle));
    }
    let (low, high) = lining_friction(brake.pad_friction);
    let twin = brake.twin_leading == Some(true);
    let shoes = |pad_friction| DrumShoes { pad_friction, pivot_share: USUAL_PIVOT_SHARE };
    let friction = |value| Unit::None.of(value);
    let (least, most) = if twin {
        (
            shoes(low).line_of("twin_leading", BrakesWorking::DrumLeast { friction: friction(low) }),
            shoes(high).line_of("twin_leading", BrakesWorking::DrumMost { friction: friction(high) }),
        )
    } else {
        (
            shoes(low).line_of("equal_wear", BrakesWorking::DrumLeastBedded { friction: friction(low) }),
            shoes(high).line_of("equal_force", BrakesWorking::DrumMost { friction: friction(high) }),
        )
    };
    lines.extend(least.into_iter().chain(most));
    lines
}

/// The lines on stopping.
pub(crate) fn on_stopping(stopping: &StoppingAnswer, measured_metres: Option<f64>) -> Vec<WorkLine> {
    let (road_speed_kmh, reaction_seconds) = (stopping.road_speed_kmh, stopping.reaction_seconds);
    let stop = |slows: Option<f64>| {
        let deceleration = slows.filter(|slows| *slows > 0.0).unwrap_or(UNKNOWN);
        StoppingDistance { road_speed_kmh, deceleration, reaction_seconds }
    };
    let measured = |metres| StoppingDeceleration { road_speed_kmh, metres, reaction_seconds };
    let lines = [
        stop(None).line_of("reaction", BrakesWorking::Reaction),
        stop(stopping.deceleration_most).line(BrakesWorking::StopBest),
        stop(stopping.deceleration_least).line(BrakesWorking::StopWorst),
        measured_metres.and_then(|metres| measured(metres).line(BrakesWorking::Deceleration)),
    ];
    lines.into_iter().flatten().collect()
}

/// The whole working.
pub(crate) fn working(lines: Vec<WorkLine>, hydraulic: bool, mass: Option<(f64, f64)>) -> Working {
    let first = if hydraulic { vec![hydraulics(), ratio_source(), fluid_source()] } else { vec![drums()] };
    let mass = match mass {
        Some((dry, load)) => BrakesMessage::RangeMass { dry: Unit::Kilogram.of(dry), load: Unit::Kilogram.of(load) },
        None => BrakesMessage::RangeNoMass,
    };
    Working {
        lines,
        sources: first.into_iter().chain([uniform()]).collect(),
        range: Message::joined(ListStyle::Sentences, vec![BrakesMessage::Range.into(), mass.into()]),
    }
}
