//! What is worth saying about a drive: missing values, a chain that does not fit, a speedometer that reads wrong.

use super::fit::{Axle, ChainFit, counts_that_fit, ends_swapped, teeth};
use super::mesh::on_mesh;
use super::speedometer::SpeedometerShift;
use super::train::GearTrain;
use crate::gearing::formulas::{centre_distance, pitch};
use crate::gearing::message::GearingFinding;
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Bike, ChainJoint, Drive, End, Section, TyreSize, Wheel};
use crate::units::Unit;

/// Findings on gears and speeds.
pub(crate) fn on_gears(bike: &Bike, train: &GearTrain, has_standard: bool, road_speed_kmh: f64) -> Vec<Finding> {
    let mut findings = Vec::new();
    let limit = bike.fitted.drive.rev_limit_rpm;
    if !has_standard {
        findings.push(note(FindingCode::GearingStandardUnknown, GearingFinding::StandardUnknown));
    }
    if limit.is_none() {
        findings.push(note(FindingCode::GearingMissingRevLimit, GearingFinding::MissingRevLimit));
    }
    if let (Some(limit), Some(top)) = (limit, train.top())
        && top.rpm_at_road_speed > limit
    {
        let (needed, limit) = (Unit::Rpm.of(top.rpm_at_road_speed), Unit::Rpm.of(limit));
        let beyond = GearingFinding::BeyondLimit { speed: Unit::KilometreHour.of(road_speed_kmh), needed, limit };
        findings.push(care(FindingCode::GearingBeyondLimit, beyond));
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
        (FindingCode::GearingFrontLimit, End::Front, front, drive.front_teeth_min, drive.front_teeth_max),
        (FindingCode::GearingRearLimit, End::Rear, rear, drive.rear_teeth_min, drive.rear_teeth_max),
    ] {
        let outside = match (least, most) {
            (Some(least), Some(most)) if teeth < least || teeth > most => {
                GearingFinding::OutsideTeeth { end, teeth, least, most }
            }
            (Some(least), None) if teeth < least => GearingFinding::TooFewTeeth { end, teeth, least },
            (None, Some(most)) if teeth > most => GearingFinding::TooManyTeeth { end, teeth, most },
            _ => continue,
        };
        findings.push(care(code, outside));
    }
    let known = drive.front_teeth_max.is_some();
    findings.extend(bike.standard.drive.front_teeth.filter(|standard| !known && front > *standard).map(|standard| {
        note(FindingCode::GearingFrontClearance, GearingFinding::FrontClearance { teeth: front, standard })
    }));
    findings
}

/// Findings on the chain. `drive` is the one that is looked at, `bike` tells what is fitted now.
pub(crate) fn on_chain(bike: &Bike, drive: &Drive, axle: Option<&Axle>, fit: Option<&ChainFit>) -> Vec<Finding> {
    let mut findings = Vec::new();
    if drive.chain_size.is_none() {
        findings.push(note(FindingCode::GearingMissingChainSize, GearingFinding::MissingChainSize));
    } else if axle.is_none() {
        findings.push(note(FindingCode::GearingMissingCentreDistance, GearingFinding::MissingCentreDistance));
    }
    if ends_swapped(drive) {
        findings.push(care(FindingCode::ChainAdjusterEndsSwapped, GearingFinding::AdjusterEndsSwapped));
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
        let odd = GearingFinding::OddCount { links, fewer: links - 1, more: links + 1 };
        findings.push(care(FindingCode::ChainOddCount, odd));
    }
    if let Some(fitted) = bike.fitted.drive.chain_links.filter(|fitted| *fitted != links) {
        findings.push(note(FindingCode::ChainAnotherChain, GearingFinding::AnotherChain { links, fitted }));
    }
    match (fit.inside_adjuster, fit.wear_room_percent) {
        (Some(false), _) => findings.push(care(FindingCode::ChainOutsideAdjuster, outside_text(drive, axle, fit))),
        (None, _) if !ends_swapped(drive) => {
            findings.push(note(FindingCode::GearingMissingAdjuster, GearingFinding::MissingAdjuster));
        }
        (_, Some(room)) if room < WEAR_ROOM_PERCENT => {
            let little = GearingFinding::LittleRoomForWear { room: Unit::Percent.of(room) };
            findings.push(note(FindingCode::ChainLittleRoomForWear, little));
        }
        _ => {}
    }
    findings.extend(on_forward(drive, fit));
    findings
}

/// Whether the chain can be closed with the wheel pushed forward, and how.
fn on_forward(drive: &Drive, fit: &ChainFit) -> Option<Finding> {
    let free = fit.free_forward_mm.filter(|_| fit.fits_forward == Some(false) && fit.inside_adjuster == Some(true))?;
    let apart = Unit::Millimetre.of(-free);
    let endless = drive.chain_joint == Some(ChainJoint::Endless);
    let open =
        if endless { GearingFinding::CannotCloseEndless { apart } } else { GearingFinding::CannotClose { apart } };
    Some(care(FindingCode::ChainCannotClose, open))
}

/// Room for wear below which it is worth a word: in the middle of the limits that are in use (disputed, 1 to 3 %).
const WEAR_ROOM_PERCENT: f64 = 2.0;

fn outside_text(drive: &Drive, axle: &Axle, fit: &ChainFit) -> Message {
    let mm = |value: f64| Unit::Millimetre.of(value);
    let (links, distance) = (fit.links, mm(fit.centre_distance_mm));
    let reach = match (axle.from_mm, axle.to_mm) {
        (Some(from), Some(to)) => GearingFinding::Outside { links, distance, from: mm(from), to: mm(to) },
        (Some(from), None) => return GearingFinding::OutsideNear { links, distance, from: mm(from) }.into(),
        (None, Some(to)) => return GearingFinding::OutsideFar { links, distance, to: mm(to) }.into(),
        (None, None) => return GearingFinding::MissingAdjuster.into(),
    };
    let counts = match (drive.chain_size, teeth(drive)) {
        (Some(size), Ok(teeth)) => counts_that_fit(pitch(size), teeth, axle),
        _ => Vec::new(),
    };
    let fits = if counts.is_empty() {
        GearingFinding::NoCountFits
    } else {
        let counts = counts.iter().map(|count| Message::as_entered(count.to_string()));
        GearingFinding::CountsFit { counts: List(ListStyle::Or, counts.collect()) }
    };
    Message::joined(ListStyle::Sentences, vec![reach.into(), fits.into()])
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
        let (reckoned, measured) = (Unit::Millimetre.of(reckoned), Unit::Millimetre.of(measured));
        let disagrees = GearingFinding::DistanceDisagrees { links, front, rear, reckoned, measured };
        care(FindingCode::ChainDistanceDisagrees, disagrees)
    })
}

/// Findings on the speedometer.
pub(crate) fn on_speedometer(drive: &Drive, shift: Option<&SpeedometerShift>) -> Option<Finding> {
    let Some(shift) = shift else {
        return Some(if drive.speedometer.is_none() {
            note(FindingCode::GearingMissingSpeedometer, GearingFinding::MissingSpeedometer)
        } else {
            note(FindingCode::SpeedometerStandardUnknown, GearingFinding::SpeedometerUnknown)
        });
    };
    let (shown_kmh, most_kmh) = (shift.shown_at_80_kmh, shift.allowed_to_at_80_kmh);
    let (shown, most) = (Unit::KilometreHour.of(shown_kmh), Unit::KilometreHour.of(most_kmh));
    match shift.in_band {
        Some(true) => None,
        Some(false) if shown_kmh < shift.allowed_from_at_80_kmh => {
            Some(care(FindingCode::SpeedometerReadsLow, GearingFinding::ReadsLow { shown }))
        }
        Some(false) => Some(care(FindingCode::SpeedometerReadsHigh, GearingFinding::ReadsHigh { shown, most })),
        None if shift.factor < 1.0 - 1e-6 => {
            let less = Unit::Percent.of(-shift.shift_percent);
            Some(care(FindingCode::SpeedometerMayReadLow, GearingFinding::MayReadLow { shift: less }))
        }
        None if shown_kmh > most_kmh => {
            let more = Unit::Percent.of(shift.shift_percent);
            Some(care(FindingCode::SpeedometerMayReadHigh, GearingFinding::MayReadHigh { shift: more, shown, most }))
        }
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
        let off = Unit::Percent.of((most - least) / (most + least) * 100.0);
        let (least, most) = (Unit::Millimetre.of(least), Unit::Millimetre.of(most));
        let open = GearingFinding::HeightOpen { tyre: size.to_string(), least, most, off };
        return Some(care(FindingCode::TyreHeightOpen, open));
    }
    matches!(size.section, Section::Alpha { .. })
        .then(|| note(FindingCode::TyreNearestEquivalent, GearingFinding::NearestEquivalent { tyre: size.to_string() }))
}

fn note(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Note, text)
}

fn care(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Care, text)
}
