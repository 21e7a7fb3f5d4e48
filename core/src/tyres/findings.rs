//! What is worth saying about a tyre: beside the other one, beside the standard one, and by its own checks.

use super::checks::{TyreCheck, TyreLimit};
use super::message::TyresFinding;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Weight};
use crate::record::{Construction, End, SpeedSymbol, Tube, TyreSize, Wheel};

/// The end as it stands in an id.
pub(super) fn mark(end: End) -> &'static str {
    match end {
        End::Front => "front",
        End::Rear => "rear",
    }
}

/// Findings on checks that fail.
pub(super) fn on_checks(end: End, checks: &[TyreCheck]) -> Vec<Finding> {
    let failed = checks.iter().filter(|check| check.judgement == Judgement::Outside);
    failed
        .map(|check| care(failed_code(end, check.limit), TyresFinding::Failed { end, why: check.why.clone() }))
        .collect()
}

fn failed_code(end: End, limit: TyreLimit) -> FindingCode {
    match (end, limit) {
        (End::Front, TyreLimit::Load) => FindingCode::TyreFrontLoad,
        (End::Front, TyreLimit::Speed) => FindingCode::TyreFrontSpeed,
        (End::Front, TyreLimit::Rim) => FindingCode::TyreFrontRim,
        (End::Front, TyreLimit::Tube) => FindingCode::TyreFrontTube,
        (End::Rear, TyreLimit::Load) => FindingCode::TyreRearLoad,
        (End::Rear, TyreLimit::Speed) => FindingCode::TyreRearSpeed,
        (End::Rear, TyreLimit::Rim) => FindingCode::TyreRearRim,
        (End::Rear, TyreLimit::Tube) => FindingCode::TyreRearTube,
    }
}

/// Front and rear tyre of different build.
///
/// Source: Road Vehicles (Construction and Use) Regulations 1986, regulation 26(2) to (3), seen: not below 30 mph machines.
/// Any other mixture: common practice, the maker's approval decides.
pub(super) fn on_mixing(front: &TyreSize, rear: &TyreSize) -> Option<Finding> {
    use Construction::{BiasBelted, Diagonal, Radial};
    match (front.construction, rear.construction) {
        (front, rear) if front == rear => None,
        (front @ Radial, rear @ (Diagonal | BiasBelted)) | (front @ BiasBelted, rear @ Diagonal) => {
            Some(care(FindingCode::TyreMixed, TyresFinding::MixedForbidden { front, rear }))
        }
        (front, rear) => Some(note(FindingCode::TyreMixed, TyresFinding::Mixed { front, rear })),
    }
}

/// The tyre against the one as made.
pub(super) fn on_standard(end: End, standard: &TyreSize, proposed: &TyreSize) -> Vec<Finding> {
    let (other_size, rating_lower) = match end {
        End::Front => (FindingCode::TyreFrontOtherSize, FindingCode::TyreFrontRatingLower),
        End::Rear => (FindingCode::TyreRearOtherSize, FindingCode::TyreRearRatingLower),
    };
    let (tyre, made) = (proposed.to_string(), standard.to_string());
    let mut found = Vec::new();
    if !standard.same_dimensions(proposed) {
        found.push(note(other_size, TyresFinding::OtherSize { end, tyre: tyre.clone(), standard: made.clone() }));
    }
    let index = |size: &TyreSize| size.service.map(|service| service.load_index);
    let speed = |size: &TyreSize| size.speed().and_then(SpeedSymbol::kmh);
    if index(standard).zip(index(proposed)).is_some_and(|(before, after)| after < before) {
        let lower = TyresFinding::LoadIndexLower { end, tyre: tyre.clone(), standard: made.clone() };
        found.push(care(rating_lower, lower));
    }
    if speed(standard).zip(speed(proposed)).is_some_and(|(before, after)| after < before) {
        found.push(care(rating_lower, TyresFinding::SpeedSymbolLower { end, tyre, standard: made }));
    }
    found
}

/// Marks of tube and tubeless that ask for a word, though nothing is wrong yet.
pub(super) fn on_marks(size: &TyreSize, wheel: &Wheel) -> Option<Finding> {
    match (size.tube, wheel.tube, wheel.spoked) {
        (Some(Tube::Tubeless), Some(true), _) => {
            Some(note(FindingCode::TyreTubeInTubeless, TyresFinding::TubeInTubeless))
        }
        (Some(Tube::Tubeless), None, Some(true)) => {
            Some(care(FindingCode::TyreTubelessOnSpokes, TyresFinding::TubelessOnSpokes))
        }
        _ => None,
    }
}

/// Findings where a check is open for want of a value that the owner can enter.
pub(super) fn on_open(checks: &[TyreCheck]) -> Vec<Finding> {
    let open = checks.iter().filter(|check| check.judgement == Judgement::Open);
    let code = |limit| match limit {
        TyreLimit::Load => FindingCode::TyreLoadOpen,
        TyreLimit::Speed => FindingCode::TyreSpeedOpen,
        TyreLimit::Rim => FindingCode::TyreRimOpen,
        TyreLimit::Tube => FindingCode::TyreTubeOpen,
    };
    open.map(|check| note(code(check.limit), TyresFinding::Open { check: check.label.clone(), why: check.why.clone() }))
        .collect()
}

/// Cautions that stand on the page whatever it says.
pub(super) fn cautions() -> Vec<Message> {
    [TyresFinding::CautionMakers, TyresFinding::CautionSeating, TyresFinding::CautionRoom, TyresFinding::CautionNew]
        .map(Into::into)
        .to_vec()
}

pub(super) fn note(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Note, text)
}

pub(super) fn care(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Care, text)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(code: &str) -> TyreSize {
        TyreSize::read(code).unwrap()
    }

    #[test]
    fn the_mixtures_of_regulation_26_are_named_and_the_others_are_left_to_the_maker() {
        let weight = |front: &str, rear: &str| on_mixing(&size(front), &size(rear)).map(|found| found.weight);
        let (cross, belted, radial) = ("110/90-18", "110/90B18", "110/90R18");
        assert_eq!(weight(radial, cross), Some(Weight::Care));
        assert_eq!(weight(radial, belted), Some(Weight::Care));
        assert_eq!(weight(belted, cross), Some(Weight::Care));
        assert_eq!(weight(cross, radial), Some(Weight::Note));
        assert_eq!(weight(belted, radial), Some(Weight::Note));
        assert_eq!(weight(cross, belted), Some(Weight::Note));
        assert_eq!(weight(cross, cross), None);
        let said = |front: &str, rear: &str| on_mixing(&size(front), &size(rear)).unwrap().text.english();
        assert!(said(radial, cross).starts_with("Radial in front and cross-ply behind: forbidden in Great Britain"));
        assert!(said(belted, radial).starts_with("Bias-belted in front and radial behind: fit them together only"));
    }

    #[test]
    fn another_size_asks_for_the_papers_and_lower_ratings_for_care() {
        let codes = |standard: &str, proposed: &str| {
            let found = on_standard(End::Rear, &size(standard), &size(proposed));
            found.into_iter().map(|found| found.code.as_str()).collect::<Vec<_>>()
        };
        assert_eq!(codes("3.00-18", "3.25-18"), ["tyre.rear.other-size"]);
        assert_eq!(codes("3.00-18 52P", "3.00-18 47P"), ["tyre.rear.rating-lower"]);
        assert_eq!(codes("3.00-18 47S", "3.00-18 47P"), ["tyre.rear.rating-lower"]);
        assert_eq!(codes("3.00-18", "3.00-18 47P").len(), 0);
    }
}
