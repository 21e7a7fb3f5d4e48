//! The working of the brake page: every equation with its numbers, and where it comes from.

use super::ask::StoppingAnswer;
use crate::brakes::formulas::uniform;
use crate::brakes::formulas::{drums, hydraulics};
use crate::brakes::judge::{BrakeChange, BrakeLine, DrumState, fluid_source, ratio_source};
use crate::brakes::message::BrakesMessage;
use crate::message::{Joint, Message};
use crate::quantity::{WorkLine, Working};
use crate::units::Unit;

/// The lines on a hydraulic brake.
pub(crate) fn on_line(line: &BrakeLine) -> Vec<WorkLine> {
    let (master, pistons, piston) = (line.master_mm, line.pistons, line.piston_mm);
    let mut lines = vec![WorkLine::new(
        "Hydraulic ratio",
        format!("{pistons} × {piston}² / {master}²"),
        line.hydraulic_ratio,
        Unit::None,
    )];
    if let (Some(lever), Some(bar)) = (line.lever_ratio, line.pressure_bar) {
        let equation = format!("{} N × {lever} / {:.3} mm² × 10", line.lever_newtons, line.master_area_mm2);
        lines.push(WorkLine::new("Pressure in the line", equation, bar, Unit::Bar));
    }
    if let (Some(bar), Some(clamp)) = (line.pressure_bar, line.clamp_newtons) {
        let equation = format!("{bar:.2} bar / 10 × {:.1} mm²", line.piston_area_mm2);
        lines.push(WorkLine::new("Clamp on each pad", equation, clamp, Unit::Newton));
    }
    if let (Some(clamp), Some(radius)) = (line.clamp_newtons, line.effective_radius_mm) {
        let entered = if line.radius_entered { "entered" } else { "half of disc minus piston" };
        for (label, friction, torque) in [
            ("Brake torque, least", line.friction_least, line.torque_least_nm),
            ("Brake torque, most", line.friction_most, line.torque_most_nm),
        ] {
            let equation = format!("2 × {friction} × {clamp:.0} N × {radius:.1} mm ({entered}) / 1000");
            lines.extend(torque.map(|torque| WorkLine::new(label, equation, torque, Unit::NewtonMetre)));
        }
    }
    for (label, torque, slows) in [
        ("Deceleration by this brake alone, least", line.torque_least_nm, line.deceleration_least),
        ("Deceleration by this brake alone, most", line.torque_most_nm, line.deceleration_most),
    ] {
        lines.extend(torque.zip(slows).map(|(torque, slows)| {
            let equation = format!("{torque:.1} N m / radius of the wheel / mass = {slows:.3}");
            WorkLine::new(label, equation, slows, Unit::MetreSecondSquared)
        }));
    }
    lines.push(WorkLine::new(
        "Travel of the master piston until the pads touch",
        format!("2 × clearance × {:.3}", line.hydraulic_ratio),
        line.master_travel_mm,
        Unit::Millimetre,
    ));
    if let (Some(lever), Some(travel)) = (line.lever_ratio, line.lever_travel_mm) {
        let equation = format!("{:.2} mm × {lever}", line.master_travel_mm);
        lines.push(WorkLine::new("Travel of the lever until the pads touch", equation, travel, Unit::Millimetre));
    }
    lines
}

/// The lines on the change against standard.
pub(crate) fn on_change(change: &BrakeChange) -> [WorkLine; 2] {
    let (before, after) = (change.ratio_before, change.ratio_after);
    [
        WorkLine::new(
            "Force at the lever for the same braking, against standard",
            format!("{before:.3} / {after:.3} × levers and radii, − 1, × 100"),
            change.effort_percent,
            Unit::Percent,
        ),
        WorkLine::new(
            "Lever travel until the pads touch, against standard",
            format!("{after:.3} / {before:.3} × levers and clearances, − 1, × 100"),
            change.travel_percent,
            Unit::Percent,
        ),
    ]
}

/// The lines on a drum.
pub(crate) fn on_drum(drum: &DrumState) -> Vec<WorkLine> {
    let mut lines = Vec::new();
    if let (Some(rest), Some(applied), Some(arm)) = (drum.rest_degrees, drum.applied_degrees, drum.cam_arm_mm) {
        let equation = format!("arccos(cos {rest}° − rod travel / {arm} mm)");
        lines.push(WorkLine::new("Angle of the cam lever, brake on", equation, applied, Unit::Degree));
    }
    for (label, factor) in [
        ("Drum force over force at a shoe tip, least", drum.shoe_factor_least),
        ("Drum force over force at a shoe tip, most", drum.shoe_factor_most),
    ] {
        let equation = match (drum.twin_leading, label.ends_with("least")) {
            (true, _) => "2 × l with l = μ h / (b − μ r), b = 0.8 r, h = 1.6 r",
            (false, true) => "4 l t / (l + t) with l, t = μ h / (b ∓ μ r), b = 0.8 r, h = 1.6 r (bedded in)",
            (false, false) => "l + t with l, t = μ h / (b ∓ μ r), b = 0.8 r, h = 1.6 r",
        };
        lines.push(WorkLine::new(label, equation, factor, Unit::None));
    }
    lines
}

/// The lines on stopping.
pub(crate) fn on_stopping(stopping: &StoppingAnswer) -> Vec<WorkLine> {
    let (speed, reaction) = (stopping.road_speed_kmh, stopping.reaction_seconds);
    let mut lines = vec![WorkLine::new(
        "Way before the brake works",
        format!("{speed} / 3.6 × {reaction} s"),
        stopping.reaction_metres,
        Unit::Metre,
    )];
    for (label, metres) in [("Stop, at best", stopping.metres_least), ("Stop, at worst", stopping.metres_most)] {
        let equation = format!("{:.1} m + ({speed} / 3.6)² / (2 × a)", stopping.reaction_metres);
        lines.extend(metres.map(|metres| WorkLine::new(label, equation, metres, Unit::Metre)));
    }
    lines.extend(stopping.measured_deceleration.map(|slows| {
        let equation = format!("({speed} / 3.6)² / (2 × (distance − {:.1} m))", stopping.reaction_metres);
        WorkLine::new("Deceleration from the measured distance", equation, slows, Unit::MetreSecondSquared)
    }));
    lines
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
        range: Message::joined(Joint::Sentences, vec![BrakesMessage::Range.into(), mass.into()]),
    }
}
