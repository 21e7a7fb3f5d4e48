//! Sums of the fasteners: every input against its range, then the formula.

use super::figure::{Figure, figure};
use crate::bounds::{self, Bound};
use crate::error::Refused;
use crate::fasteners::{self, PropertyClass, Seat};
use crate::units::Unit;

type Given = Result<Vec<Figure>, Refused>;

/// Share of the diameter that must be left as core; below it there is no such screw.
const LEAST_CORE: f64 = 0.5;

/// Diameter and pitch that make a screw.
fn size((diameter_mm, pitch_mm): (f64, f64)) -> Result<(), Refused> {
    bounds::THREAD_DIAMETER.check(diameter_mm)?;
    bounds::THREAD_PITCH.check(pitch_mm)?;
    if fasteners::core_diameter(diameter_mm, pitch_mm) < LEAST_CORE * diameter_mm {
        return Err(Refused::Conflict {
            field: "pitchMm".to_owned(),
            reason: format!("a pitch of {pitch_mm} mm leaves no core in a screw of {diameter_mm} mm"),
        });
    }
    Ok(())
}

pub(super) fn area(diameter_mm: f64, pitch_mm: f64) -> Given {
    size((diameter_mm, pitch_mm))?;
    Ok(vec![
        figure("stressArea", fasteners::stress_area(diameter_mm, pitch_mm), Unit::SquareMillimetre),
        figure("flankDiameter", fasteners::flank_diameter(diameter_mm, pitch_mm), Unit::Millimetre),
        figure("coreDiameter", fasteners::core_diameter(diameter_mm, pitch_mm), Unit::Millimetre),
    ])
}

pub(super) fn loads((diameter_mm, pitch_mm): (f64, f64), property_class: &str) -> Given {
    size((diameter_mm, pitch_mm))?;
    let class = PropertyClass::read(property_class)?;
    let area = fasteners::stress_area(diameter_mm, pitch_mm);
    Ok(vec![
        figure("proofLoad", fasteners::screw_load(area, class.proof(diameter_mm)), Unit::Newton),
        figure("breakingLoad", fasteners::screw_load(area, class.tensile(diameter_mm)), Unit::Newton),
    ])
}

pub(super) fn torque((diameter_mm, pitch_mm): (f64, f64), property_class: &str, friction: f64) -> Given {
    size((diameter_mm, pitch_mm))?;
    let class = PropertyClass::read(property_class)?;
    bounds::THREAD_FRICTION.check(friction)?;
    let (preload, torque) = fasteners::tighten((diameter_mm, pitch_mm), &class, &Seat::of(diameter_mm)?, friction);
    Ok(vec![figure("torque", torque, Unit::NewtonMetre), figure("preload", preload, Unit::Newton)])
}

pub(super) fn preload((diameter_mm, pitch_mm): (f64, f64), torque_nm: f64, friction: f64) -> Given {
    size((diameter_mm, pitch_mm))?;
    bounds::TORQUE.check(torque_nm)?;
    bounds::THREAD_FRICTION.check(friction)?;
    let seat = Seat::of(diameter_mm)?;
    let preload = fasteners::preload_from_torque(torque_nm, (diameter_mm, pitch_mm), &seat, friction, friction);
    Ok(vec![figure("preload", preload, Unit::Newton)])
}

pub(super) fn nut_factor(
    (diameter_mm, pitch_mm): (f64, f64),
    property_class: &str,
    nut_factor: f64,
    share_percent: f64,
) -> Given {
    size((diameter_mm, pitch_mm))?;
    let class = PropertyClass::read(property_class)?;
    bounds::NUT_FACTOR.check(nut_factor)?;
    bounds::PRELOAD_SHARE.check(share_percent)?;
    let proof = fasteners::screw_load(fasteners::stress_area(diameter_mm, pitch_mm), class.proof(diameter_mm));
    let torque = fasteners::nut_factor_torque(nut_factor, diameter_mm, share_percent / 100.0 * proof);
    Ok(vec![figure("torque", torque, Unit::NewtonMetre)])
}

pub(super) fn engagement(
    load_newtons: f64,
    pitch_mm: f64,
    (diameter_mm, nut_flank_mm): (f64, f64),
    shear_mpa: f64,
) -> Given {
    bounds::SCREW_LOAD.check(load_newtons)?;
    size((diameter_mm, pitch_mm))?;
    Bound { field: "nutFlankMm", label: "Flank diameter of the nut thread", ..bounds::THREAD_DIAMETER }
        .check(nut_flank_mm)?;
    bounds::SHEAR_STRENGTH.check(shear_mpa)?;
    if nut_flank_mm >= diameter_mm {
        return Err(Refused::Conflict {
            field: "nutFlankMm".to_owned(),
            reason: format!(
                "a nut thread of {nut_flank_mm} mm flank diameter does not hold a screw of {diameter_mm} mm"
            ),
        });
    }
    let length = fasteners::engagement_length(load_newtons, pitch_mm, diameter_mm, nut_flank_mm, shear_mpa);
    Ok(vec![figure("engagement", length, Unit::Millimetre)])
}

pub(super) fn which(diameter_mm: f64, pitch_mm: f64) -> Given {
    bounds::THREAD_DIAMETER.check(diameter_mm)?;
    bounds::THREAD_PITCH.check(pitch_mm)?;
    let found = fasteners::identify(diameter_mm, pitch_mm);
    let mut figures = vec![figure("likely", found.likely.len() as f64, Unit::None)];
    if let Some(nearest) = found.likely.first() {
        figures.push(figure("nominalDiameter", nearest.diameter_mm, Unit::Millimetre));
        figures.push(figure("nominalPitch", nearest.pitch_mm, Unit::Millimetre));
        figures.push(figure("turnsPerInch", nearest.turns_per_inch, Unit::TurnsInch));
        figures.push(figure("flankDegrees", nearest.flank_degrees, Unit::Degree));
    }
    figures.push(figure("neighbours", found.neighbours.len() as f64, Unit::None));
    Ok(figures)
}
