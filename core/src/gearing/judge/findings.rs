//! What is worth saying about a drive: missing values, a chain that does not fit, a speedometer that reads wrong.

use super::fit::{Axle, ChainFit, counts_that_fit, ends_swapped, teeth};
use super::mesh::on_mesh;
use super::speedometer::SpeedometerShift;
use super::train::GearTrain;
use crate::gearing::formulas::{centre_distance, pitch};
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Bike, ChainJoint, Drive, Section, TyreSize, Wheel};

/// Findings on gears and speeds.
pub(crate) fn on_gears(bike: &Bike, train: &GearTrain, has_standard: bool, road_speed_kmh: f64) -> Vec<Finding> {
    let mut findings = Vec::new();
    let limit = bike.fitted.drive.rev_limit_rpm;
    if !has_standard {
        findings.push(note(
            FindingCode::GearingStandardUnknown,
            "The gearing as made is not on the bike, so there is nothing to compare with. Enter the standard sprockets and \
             rear tyre.",
        ));
    }
    if limit.is_none() {
        findings.push(note(
            FindingCode::GearingMissingRevLimit,
            "The engine speed limit is not known, so no highest speed is shown for any gear. Enter it from the manual.",
        ));
    }
    if let (Some(limit), Some(top)) = (limit, train.top())
        && top.rpm_at_road_speed > limit
    {
        findings.push(care(
            FindingCode::GearingBeyondLimit,
            format!(
                "{road_speed_kmh:.0} km/h would need {:.0} rpm in top gear; the engine's limit is {limit:.0} rpm.",
                top.rpm_at_road_speed
            ),
        ));
    }
    findings.extend(on_clearance(bike, (train.front_teeth, train.rear_teeth)));
    findings
}

/// Sprockets against what the bike takes, where that was entered; else a gearbox sprocket larger than standard has to clear what
/// stands round it (common practice).
pub(crate) fn on_clearance(bike: &Bike, (front, rear): (u32, u32)) -> Vec<Finding> {
    let drive = &bike.fitted.drive;
    let mut findings = Vec::new();
    for (code, end, teeth, least, most) in [
        (FindingCode::GearingFrontLimit, "in front", front, drive.front_teeth_min, drive.front_teeth_max),
        (FindingCode::GearingRearLimit, "behind", rear, drive.rear_teeth_min, drive.rear_teeth_max),
    ] {
        if least.is_some_and(|least| teeth < least) || most.is_some_and(|most| teeth > most) {
            let end_of = |teeth: Option<u32>| teeth.map_or("?".to_owned(), |teeth| teeth.to_string());
            findings.push(care(
                code,
                format!(
                    "{teeth} teeth {end}, but the bike takes {} to {}: cover, guard or swing arm is in the way.",
                    end_of(least),
                    end_of(most)
                ),
            ));
        }
    }
    let known = drive.front_teeth_max.is_some();
    findings.extend(bike.standard.drive.front_teeth.filter(|standard| !known && front > *standard).map(|standard| {
        note(
            FindingCode::GearingFrontClearance,
            format!(
                "{front} teeth in front, {standard} as made: before buying, check that sprocket and chain clear the crankcase, the \
                 cover and the swing arm. Turn the wheel by hand only with the engine stopped and the ignition off."
            ),
        )
    }));
    findings
}

/// Findings on the chain. `drive` is the one that is looked at, `bike` tells what is fitted now.
pub(crate) fn on_chain(bike: &Bike, drive: &Drive, axle: Option<&Axle>, fit: Option<&ChainFit>) -> Vec<Finding> {
    let mut findings = Vec::new();
    if drive.chain_size.is_none() {
        findings.push(note(
            FindingCode::GearingMissingChainSize,
            "The chain size is not known. It is stamped on the side plates: 428, 520 and so on.",
        ));
    } else if axle.is_none() {
        findings.push(note(
            FindingCode::GearingMissingCentreDistance,
            "The centre distance is not known, and neither is the chain that is fitted. Measure from the middle of the gearbox \
             sprocket to the middle of the axle with the chain on, or count the links.",
        ));
    }
    if ends_swapped(drive) {
        findings.push(care(
            FindingCode::ChainAdjusterEndsSwapped,
            "The least centre distance of the adjuster is not below the greatest one. Measure both ends again; until then the \
             adjuster counts as unknown.",
        ));
    }
    if let (Some(axle), Some(fit)) = (axle, fit) {
        findings.extend(on_fit(bike, drive, axle, fit));
    }
    findings.extend(on_measured_distance(bike, drive));
    findings.extend(on_mesh(drive));
    findings
}

fn on_fit(bike: &Bike, drive: &Drive, axle: &Axle, fit: &ChainFit) -> Vec<Finding> {
    let mut findings = Vec::new();
    let links = fit.links;
    if !links.is_multiple_of(2) {
        findings.push(care(
            FindingCode::ChainOddCount,
            format!(
                "{links} links is an odd count. Inner and outer links take turns, so a chain closes on an even count only; a \
                 cranked link has no place on a motorcycle. Count again, or take {} or {}.",
                links - 1,
                links + 1
            ),
        ));
    }
    if let Some(fitted) = bike.fitted.drive.chain_links.filter(|fitted| *fitted != links) {
        findings.push(note(
            FindingCode::ChainAnotherChain,
            format!("This takes a chain of {links} links; the one on the bike has {fitted}."),
        ));
    }
    match (fit.inside_adjuster, fit.wear_room_percent) {
        (Some(false), _) => findings.push(care(FindingCode::ChainOutsideAdjuster, outside_text(drive, axle, fit))),
        (None, _) if !ends_swapped(drive) => findings.push(note(
            FindingCode::GearingMissingAdjuster,
            "How far the adjuster reaches is not known, so nobody can say whether the axle lands inside it. Measure the centre \
             distance with the axle fully forward and fully back.",
        )),
        (_, Some(room)) if room < WEAR_ROOM_PERCENT => findings.push(note(
            FindingCode::ChainLittleRoomForWear,
            format!(
                "From there the adjuster takes up {room:.1} % of wear. Chains are renewed at 1 to 3 % (manuals and chain makers \
                 differ); this one may reach the end of the adjuster first."
            ),
        )),
        _ => {}
    }
    findings.extend(on_forward(drive, fit));
    findings
}

/// Whether the chain can be closed with the wheel pushed forward, and how.
fn on_forward(drive: &Drive, fit: &ChainFit) -> Option<Finding> {
    let free = fit.free_forward_mm.filter(|_| fit.fits_forward == Some(false) && fit.inside_adjuster == Some(true))?;
    Some(care(
        FindingCode::ChainCannotClose,
        format!(
            "With the wheel forward the ends of the chain stand {:.0} mm apart{}.",
            -free,
            if drive.chain_joint == Some(ChainJoint::Endless) {
                "; an endless chain goes on with the swing arm out"
            } else {
                ""
            }
        ),
    ))
}

/// Room for wear below which it is worth a word: in the middle of the limits that are in use (disputed, 1 to 3 %).
const WEAR_ROOM_PERCENT: f64 = 2.0;

fn outside_text(drive: &Drive, axle: &Axle, fit: &ChainFit) -> String {
    let end = |mm: Option<f64>| mm.map_or("an unknown end".to_owned(), |mm| format!("{mm:.1} mm"));
    let reach = format!(
        "With {} links the axle would stand at {:.1} mm; the adjuster reaches from {} to {}.",
        fit.links,
        fit.centre_distance_mm,
        end(axle.from_mm),
        end(axle.to_mm)
    );
    if axle.from_mm.is_none() || axle.to_mm.is_none() {
        return reach;
    }
    let counts = match (drive.chain_size, teeth(drive)) {
        (Some(size), Ok(teeth)) => counts_that_fit(pitch(size), teeth, axle),
        _ => Vec::new(),
    };
    let counts = counts.iter().map(u32::to_string).collect::<Vec<_>>().join(" or ");
    if counts.is_empty() {
        format!("{reach} No even count fits these sprockets.")
    } else {
        format!("{reach} {counts} links would fit.")
    }
}

/// A measured centre distance belongs to the sprockets and the chain that it was measured with; when geometry says that this
/// chain cannot give it, one of the two was taken down wrong.
fn on_measured_distance(bike: &Bike, drive: &Drive) -> Option<Finding> {
    let standard = &bike.standard.drive;
    // What is not said on the fitted side is taken over from standard: then the distance belongs to the standard chain.
    let own = drive.centre_distance_mm != standard.centre_distance_mm;
    let with = if own { drive } else { standard };
    let measured = with.centre_distance_mm?;
    let (front, rear) = teeth(with).ok()?;
    let pitch = pitch(with.chain_size?);
    let links = with.chain_links?;
    let reckoned = centre_distance(front, rear, links, pitch).ok()?;
    // One pitch either way is a chain of two links more or less: the least miscount there is.
    ((reckoned - measured).abs() > 0.75 * pitch).then(|| {
        care(
            FindingCode::ChainDistanceDisagrees,
            format!(
                "{links} links on {front} and {rear} teeth put the axle at {reckoned:.1} mm, but {measured:.1} mm is entered. \
                 Count the links and measure the distance again."
            ),
        )
    })
}

/// Findings on the speedometer.
pub(crate) fn on_speedometer(drive: &Drive, shift: Option<&SpeedometerShift>) -> Option<Finding> {
    let Some(shift) = shift else {
        return Some(if drive.speedometer.is_none() {
            note(
                FindingCode::GearingMissingSpeedometer,
                "What drives the speedometer is not known: follow its cable to the gearbox or to a wheel.",
            )
        } else {
            note(
                FindingCode::SpeedometerStandardUnknown,
                "How the speedometer shifts is not known, because the sprockets or the tyre as made are not on the bike.",
            )
        });
    };
    let shown = shift.shown_at_80_kmh;
    let (least, most) = (shift.allowed_from_at_80_kmh, shift.allowed_to_at_80_kmh);
    match shift.in_band {
        Some(true) => None,
        Some(false) if shown < least => Some(care(
            FindingCode::SpeedometerReadsLow,
            format!(
                "At a true 80 km/h it shows {shown:.1} km/h. Type approval allows no reading below the true speed; correct the \
                 drive before you ride by it."
            ),
        )),
        Some(false) => Some(care(
            FindingCode::SpeedometerReadsHigh,
            format!("At a true 80 km/h it shows {shown:.1} km/h; type approval allows up to {most:.0} km/h."),
        )),
        None if shift.factor < 1.0 - 1e-6 => Some(care(
            FindingCode::SpeedometerMayReadLow,
            format!(
                "It shows {:.1} % less than as made. Type approval allows no reading below the true speed. Whether it still \
                 keeps to that depends on how far it read high before: enter that, or check it against a reference.",
                -shift.shift_percent
            ),
        )),
        None if shown > most => Some(care(
            FindingCode::SpeedometerMayReadHigh,
            format!(
                "It shows {:.1} % more than as made; if it was exact then, it shows {shown:.1} km/h at a true 80 km/h, and type \
                 approval allows up to {most:.0} km/h.",
                shift.shift_percent
            ),
        )),
        None => None,
    }
}

/// Findings on the tyre that the speeds are reckoned with.
pub(crate) fn on_tyre(wheel: &Wheel, measured: bool) -> Option<Finding> {
    if measured {
        return None;
    }
    let size = TyreSize::read(wheel.tyre.as_deref()?).ok()?;
    let (least, most) = size.outer_diameter_range_mm();
    if most > least {
        return Some(care(
            FindingCode::TyreHeightOpen,
            format!(
                "{size} does not say how high the tyre is; sources give {least:.0} to {most:.0} mm diameter, and speeds are off by \
                 up to {:.1} % either way. A roll-out settles it.",
                (most - least) / (most + least) * 100.0
            ),
        ));
    }
    matches!(size.section, Section::Alpha { .. }).then(|| {
        note(
            FindingCode::TyreNearestEquivalent,
            format!(
                "{size} is reckoned as its nearest metric equivalent, which is not the same tyre. A roll-out is better."
            ),
        )
    })
}

fn note(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Note, text)
}

fn care(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Care, text)
}
