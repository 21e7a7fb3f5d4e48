//! What is worth saying about a tyre: beside the other one, beside the standard one, and by its own checks.

use super::checks::{TyreCheck, TyreLimit};
use super::reading::carcass;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Weight};
use crate::record::{Construction, End, SpeedSymbol, Tube, TyreSize, Wheel};

/// The end as a mark and in words.
pub(super) fn name(end: End) -> (&'static str, &'static str) {
    match end {
        End::Front => ("front", "Front"),
        End::Rear => ("rear", "Rear"),
    }
}

/// Findings on checks that fail.
pub(super) fn on_checks(end: End, checks: &[TyreCheck]) -> Vec<Finding> {
    let (_, label) = name(end);
    let failed = checks.iter().filter(|check| check.judgement == Judgement::Outside);
    failed.map(|check| care(failed_code(end, check.limit), format!("{label} tyre: {}.", check.why))).collect()
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
    let pair = format!("{} in front and {} behind", carcass(front.construction), carcass(rear.construction));
    match (front.construction, rear.construction) {
        (front, rear) if front == rear => None,
        (Radial, Diagonal | BiasBelted) | (BiasBelted, Diagonal) => Some(care(
            FindingCode::TyreMixed,
            format!(
                "{pair}: forbidden in Great Britain on machines above 30 mph (Construction and Use Regulations 1986, regulation 26(2) \
                 to (3), read), and unsteady anywhere. Fit tyres of one build."
            ),
        )),
        _ => Some(note(
            FindingCode::TyreMixed,
            format!(
                "{pair}: fit them together only where the maker of the machine or the tyres says so (common practice)."
            ),
        )),
    }
}

/// The tyre against the one as made.
pub(super) fn on_standard(end: End, standard: &TyreSize, proposed: &TyreSize) -> Vec<Finding> {
    let (_, label) = name(end);
    let (other_size, rating_lower) = match end {
        End::Front => (FindingCode::TyreFrontOtherSize, FindingCode::TyreFrontRatingLower),
        End::Rear => (FindingCode::TyreRearOtherSize, FindingCode::TyreRearRatingLower),
    };
    let mut found = Vec::new();
    if !standard.same_dimensions(proposed) {
        found.push(note(
            other_size,
            format!(
                "{label} tyre {proposed} instead of {standard}: look whether the papers allow it. A wrong size can fail an inspection \
                 (Directive 2014/45/EU, Annex I, 5.2.3 (a), read)."
            ),
        ));
    }
    let index = |size: &TyreSize| size.service.map(|service| service.load_index);
    let speed = |size: &TyreSize| size.speed().and_then(SpeedSymbol::kmh);
    let lower =
        [(index(standard).zip(index(proposed)), "load index"), (speed(standard).zip(speed(proposed)), "speed symbol")];
    for (pair, what) in lower {
        if pair.is_some_and(|(before, after)| after < before) {
            found.push(care(
                rating_lower,
                format!("{label} tyre {proposed}: its {what} is lower than that of {standard}, as made."),
            ));
        }
    }
    found
}

/// Marks of tube and tubeless that ask for a word, though nothing is wrong yet.
pub(super) fn on_marks(size: &TyreSize, wheel: &Wheel) -> Option<Finding> {
    match (size.tube, wheel.tube, wheel.spoked) {
        (Some(Tube::Tubeless), Some(true), _) => Some(note(
            FindingCode::TyreTubeInTubeless,
            "A tube in a tyre marked TL: common on spoked rims, but only where the tyre's maker allows it; it runs hotter.",
        )),
        (Some(Tube::Tubeless), None, Some(true)) => Some(care(
            FindingCode::TyreTubelessOnSpokes,
            "A tyre marked TL on a spoked rim: fit a tube, unless the rim is made for tubeless tyres.",
        )),
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
    open.map(|check| note(code(check.limit), format!("{}: {}.", check.label, check.why))).collect()
}

/// Cautions that stand on the page whatever it says.
pub(super) fn cautions() -> Vec<String> {
    [
        "The makers of machine and tyre and your papers decide what may be fitted; this page only reckons.",
        "Seating a tyre can kill: never beyond the pressure on the sidewall, wheel behind a guard, hands away from the rim. Let a \
         tyre fitter do it where in doubt.",
        "With a larger tyre, press the suspension right down and turn the wheel: nothing may touch, hot and with the chain at the \
         front of its adjuster as well.",
        "New tyres are slippery: ride the first 100 km or so gently.",
    ]
    .map(str::to_owned)
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
