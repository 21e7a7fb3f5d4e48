//! Sums of the brakes: every input against its range, then the formula.

use super::figure::{Figure, figure};
use crate::bounds::{self, Bound};
use crate::brakes::{self, DirectiveLine};
use crate::error::Refused;
use crate::record::FluidGrade;
use crate::units::{GRAVITY, Unit};

type Given = Result<Vec<Figure>, Refused>;

/// Master cylinder, pistons on one side, diameter of one.
fn cylinders((master_mm, pistons, piston_mm): (f64, u32, f64)) -> Result<(), Refused> {
    Bound { field: "masterMm", label: "Bore of the master cylinder", ..bounds::BORE }.check(master_mm)?;
    bounds::PISTONS.check(f64::from(pistons))?;
    Bound { field: "pistonMm", label: "Piston", ..bounds::BORE }.check(piston_mm)?;
    Ok(())
}

fn hand((lever_newtons, lever_ratio): (f64, f64)) -> Result<(), Refused> {
    bounds::LEVER_FORCE.check(lever_newtons)?;
    bounds::LEVER_RATIO.check(lever_ratio)?;
    Ok(())
}

pub(super) fn hydraulic(
    lever: (f64, f64),
    (master_mm, pistons, piston_mm): (f64, u32, f64),
    (pad_friction, effective_radius_mm): (f64, f64),
    (wheel_radius_mm, mass_kg): (f64, f64),
) -> Given {
    hand(lever)?;
    cylinders((master_mm, pistons, piston_mm))?;
    bounds::PAD_FRICTION.check(pad_friction)?;
    bounds::EFFECTIVE_RADIUS.check(effective_radius_mm)?;
    bounds::WHEEL_RADIUS.check(wheel_radius_mm)?;
    bounds::RIDING_MASS.check(mass_kg)?;
    let pressure = brakes::line_pressure(lever.0, lever.1, master_mm);
    let clamp = brakes::clamp_force(pressure, pistons, piston_mm);
    let torque = brakes::brake_torque(clamp, pad_friction, effective_radius_mm);
    let force = brakes::tyre_force(torque, wheel_radius_mm);
    Ok(vec![
        figure("deceleration", brakes::deceleration(force, mass_kg), Unit::MetreSecondSquared),
        figure("pressure", pressure, Unit::Bar),
        figure("hydraulicRatio", brakes::hydraulic_ratio(master_mm, pistons, piston_mm), Unit::None),
        figure("clamp", clamp, Unit::Newton),
        figure("torque", torque, Unit::NewtonMetre),
        figure("tyreForce", force, Unit::Newton),
    ])
}

pub(super) fn one_side(pistons: u32, opposed: bool) -> Given {
    bounds::PISTONS.check(f64::from(pistons))?;
    Ok(vec![figure("oneSide", f64::from(brakes::pistons_one_side(pistons, opposed)?), Unit::None)])
}

pub(super) fn travel(
    lever: (f64, f64),
    (master_mm, pistons, piston_mm): (f64, u32, f64),
    pad_clearance_mm: f64,
    (hose_mm, hose_swell_ml_m): (f64, f64),
) -> Given {
    hand(lever)?;
    cylinders((master_mm, pistons, piston_mm))?;
    bounds::PAD_CLEARANCE.check(pad_clearance_mm)?;
    bounds::HOSE_LENGTH.check(hose_mm)?;
    bounds::HOSE_SWELL.check(hose_swell_ml_m)?;
    let pressure = brakes::line_pressure(lever.0, lever.1, master_mm);
    let at_lever = |volume| brakes::lever_travel(brakes::master_travel(volume, master_mm), lever.1);
    let (pads, hose) = (
        brakes::clearance_volume(pad_clearance_mm, pistons, piston_mm),
        brakes::hose_volume(hose_mm, hose_swell_ml_m, pressure),
    );
    Ok(vec![
        figure("leverTravel", at_lever(pads + hose), Unit::Millimetre),
        figure("padTravel", at_lever(pads), Unit::Millimetre),
        figure("hoseTravel", at_lever(hose), Unit::Millimetre),
        figure("volume", pads + hose, Unit::Millilitre),
    ])
}

pub(super) fn pair(before: (f64, u32, f64), after: (f64, u32, f64)) -> Given {
    cylinders(before)?;
    Bound { field: "newMasterMm", label: "Bore of the new master cylinder", ..bounds::BORE }.check(after.0)?;
    Bound { field: "newPistons", ..bounds::PISTONS }.check(f64::from(after.1))?;
    Bound { field: "newPistonMm", label: "New piston", ..bounds::BORE }.check(after.2)?;
    let ratio = |(master, pistons, piston)| brakes::hydraulic_ratio(master, pistons, piston);
    let (before, after) = (ratio(before), ratio(after));
    Ok(vec![
        figure("effort", brakes::effort_change((1.0, before, 1.0), (1.0, after, 1.0)), Unit::Percent),
        figure("travel", brakes::travel_change((1.0, before, 1.0), (1.0, after, 1.0)), Unit::Percent),
        figure("hydraulicRatio", before, Unit::None),
        figure("newHydraulicRatio", after, Unit::None),
    ])
}

pub(super) fn distance(road_speed_kmh: f64, deceleration: f64, reaction_seconds: f64) -> Given {
    bounds::BRAKING_SPEED.check(road_speed_kmh)?;
    bounds::DECELERATION.check(deceleration)?;
    bounds::REACTION.check(reaction_seconds)?;
    let reaction = brakes::reaction_distance(road_speed_kmh, reaction_seconds);
    let braking = brakes::braking_distance(road_speed_kmh, deceleration);
    Ok(vec![
        figure("distance", reaction + braking, Unit::Metre),
        figure("reaction", reaction, Unit::Metre),
        figure("braking", braking, Unit::Metre),
    ])
}

pub(super) fn deceleration(road_speed_kmh: f64, metres: f64, reaction_seconds: f64) -> Given {
    bounds::BRAKING_SPEED.check(road_speed_kmh)?;
    bounds::STOPPING_DISTANCE.check(metres)?;
    bounds::REACTION.check(reaction_seconds)?;
    let slows = brakes::deceleration_from_distance(road_speed_kmh, metres, reaction_seconds)?;
    Ok(vec![
        figure("deceleration", slows, Unit::MetreSecondSquared),
        figure("efficiency", brakes::efficiency(slows), Unit::Percent),
    ])
}

pub(super) fn efficiency(percent: f64, mass_kg: f64) -> Given {
    bounds::BRAKE_EFFICIENCY.check(percent)?;
    bounds::RIDING_MASS.check(mass_kg)?;
    let slows = brakes::deceleration_from_efficiency(percent);
    Ok(vec![
        figure("deceleration", slows, Unit::MetreSecondSquared),
        figure("force", slows * mass_kg, Unit::Newton),
        // A brake tester reads kilograms-force.
        figure("forceKilograms", slows * mass_kg / GRAVITY, Unit::Kilogram),
    ])
}

pub(super) fn directive(line: &str, road_speed_kmh: f64) -> Given {
    bounds::BRAKING_SPEED.check(road_speed_kmh)?;
    let line = DirectiveLine::named(line)?;
    Ok(vec![
        figure("longest", line.longest(road_speed_kmh), Unit::Metre),
        figure("braking", road_speed_kmh * road_speed_kmh / line.divisor, Unit::Metre),
        figure("deceleration", line.implied(), Unit::MetreSecondSquared),
    ])
}

pub(super) fn cam(cam_degrees: f64, rod_travel_mm: f64, cam_arm_mm: f64, rod_newtons: f64) -> Given {
    bounds::CAM_ANGLE.check(cam_degrees)?;
    bounds::ROD_TRAVEL.check(rod_travel_mm)?;
    bounds::CAM_ARM.check(cam_arm_mm)?;
    Bound { field: "rodNewtons", label: "Pull of the rod", max: 5000.0, ..bounds::LEVER_FORCE }.check(rod_newtons)?;
    let applied = brakes::cam_angle(cam_degrees, rod_travel_mm, cam_arm_mm)?;
    Ok(vec![
        figure("angle", applied, Unit::Degree),
        figure("torque", brakes::cam_torque(rod_newtons, cam_arm_mm, applied), Unit::NewtonMetre),
    ])
}

pub(super) fn shoes(pad_friction: f64, pivot_share: f64) -> Given {
    bounds::PAD_FRICTION.check(pad_friction)?;
    bounds::SHOE_SHARE.check(pivot_share)?;
    let factors = brakes::shoe_factors(pad_friction, 1.0, pivot_share, 2.0 * pivot_share)?;
    Ok(vec![
        figure("equalForce", factors.equal_force, Unit::None),
        figure("equalWear", factors.equal_wear, Unit::None),
        figure("leading", factors.leading, Unit::None),
        figure("trailing", factors.trailing, Unit::None),
        figure("twinLeading", factors.twin_leading, Unit::None),
    ])
}

pub(super) fn fluid(fluid: &str) -> Given {
    let grade = FluidGrade::read(fluid)?;
    let Some((dry, wet)) = grade.boiling_celsius() else {
        return Err(Refused::Missing {
            field: "fluid".to_owned(),
            label: format!("Boiling point of {} fluid", grade.name()),
            help: "no standard sets one; read the can".to_owned(),
        });
    };
    let fahrenheit = |celsius: f64| Unit::Celsius.card().other.map(|other| celsius * other.factor + other.offset);
    let mut figures = vec![figure("dry", dry, Unit::Celsius), figure("wet", wet, Unit::Celsius)];
    figures.extend(fahrenheit(dry).map(|value| figure("dryFahrenheit", value, Unit::Fahrenheit)));
    figures.extend(fahrenheit(wet).map(|value| figure("wetFahrenheit", value, Unit::Fahrenheit)));
    Ok(figures)
}

pub(super) fn bleed((hose_bore_mm, hose_mm): (f64, f64), (master_mm, pistons, piston_mm): (f64, u32, f64)) -> Given {
    bounds::HOSE_BORE.check(hose_bore_mm)?;
    bounds::HOSE_LENGTH.check(hose_mm)?;
    cylinders((master_mm, pistons, piston_mm))?;
    let volume = brakes::bleed_volume(
        (hose_bore_mm, hose_mm),
        (pistons, piston_mm, brakes::USUAL_DEPTH_MM),
        (master_mm, brakes::USUAL_STROKE_MM),
    );
    Ok(vec![
        figure("through", volume.through_ml, Unit::Millilitre),
        figure("strokes", f64::from(volume.strokes), Unit::None),
        figure("hose", volume.hose_ml, Unit::Millilitre),
        figure("caliper", volume.caliper_ml, Unit::Millilitre),
    ])
}
