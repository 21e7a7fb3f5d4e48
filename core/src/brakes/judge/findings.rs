//! What is worth saying about a brake: what is missing, what lies outside common practice, what the rules ask for.

use super::compare::{BrakeChange, judge_ratio};
use super::line::{BrakeLine, USUAL_CLEARANCE_MM, USUAL_PAD_FRICTION};
use crate::brakes::formulas::StoppingLine;
use crate::brakes::message::BrakesFinding;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Weight};
use crate::record::{Brake, End};
use crate::units::{GRAVITY, Unit};

/// Lever travel beyond which little is left before the bar, mm. Common practice, no source.
const LONG_LEVER_MM: f64 = 30.0;
/// Force that a hand, and a foot, may need in a type approval test, N: Directive 93/14/EEC (from memory).
pub(crate) const HAND_NEWTONS: f64 = 200.0;
/// See [`HAND_NEWTONS`].
pub(crate) const FOOT_NEWTONS: f64 = 350.0;

/// Findings on a hydraulic brake that is looked at.
pub(crate) fn on_line(brake: &Brake, line: &BrakeLine, road_friction: f64) -> Vec<Finding> {
    let mut found = Vec::new();
    if line.lever_ratio.is_none() {
        found.push(note(FindingCode::BrakeMissingLeverRatio, BrakesFinding::MissingLeverRatio));
    }
    if brake.pad_friction.is_none() {
        let (least, most) = (Unit::None.of(USUAL_PAD_FRICTION.0), Unit::None.of(USUAL_PAD_FRICTION.1));
        found.push(note(FindingCode::BrakeFrictionOpen, BrakesFinding::FrictionOpen { least, most }));
    }
    if brake.pad_clearance_mm.is_none() {
        let clearance = Unit::Millimetre.of(USUAL_CLEARANCE_MM);
        found.push(note(FindingCode::BrakeClearanceUsual, BrakesFinding::ClearanceUsual { clearance }));
    }
    if line.effective_radius_mm.is_none() {
        found.push(note(FindingCode::BrakeMissingDisc, BrakesFinding::MissingDisc));
    }
    if let Some(travel) = line.lever_travel_mm.map(|mm| mm + line.hose_travel_mm.unwrap_or(0.0))
        && travel > LONG_LEVER_MM
    {
        let travel = Unit::Millimetre.of(travel);
        found.push(care(FindingCode::BrakeLongLever, BrakesFinding::LongLever { travel }));
    }
    if let Some(most) = line.deceleration_most
        && most > road_friction * GRAVITY
    {
        let beyond = BrakesFinding::BeyondGrip {
            force: Unit::Newton.of(line.lever_newtons),
            deceleration: Unit::MetreSecondSquared.of(most),
            grip: Unit::None.of(road_friction),
            allowed: Unit::MetreSecondSquared.of(road_friction * GRAVITY),
        };
        found.push(note(FindingCode::BrakeBeyondGrip, beyond));
    }
    found
}

/// Finding on the hydraulic ratio; only hand brakes have a common band.
pub(crate) fn on_ratio(end: End, ratio: f64) -> Option<Finding> {
    let (judgement, why) = judge_ratio(ratio);
    (end == End::Front && judgement == Judgement::Outside)
        .then(|| care(FindingCode::BrakeRatioUncommon, BrakesFinding::RatioUncommon { why }))
}

/// Findings on the comparison with standard.
pub(crate) fn on_change(change: Option<&BrakeChange>) -> Vec<Finding> {
    let Some(change) = change else {
        return vec![note(FindingCode::BrakeStandardUnknown, BrakesFinding::StandardUnknown)];
    };
    change.taken.iter().map(|taken| note(FindingCode::BrakeTakenUnchanged, taken.clone())).collect()
}

/// Finding on what the brake reaches against the line of the Directive.
pub(crate) fn on_stopping(line: &BrakeLine, lines: &[StoppingLine]) -> Option<Finding> {
    let law = lines.first()?;
    let (least, most) = line.deceleration_least.zip(line.deceleration_most)?;
    let (force, asked) = (Unit::Newton.of(line.lever_newtons), Unit::MetreSecondSquared.of(law.deceleration));
    let label = law.label.clone();
    if most < law.deceleration {
        let reached = Unit::MetreSecondSquared.of(most);
        Some(care(FindingCode::BrakeBelowLine, BrakesFinding::BelowLine { force, reached, line: label, asked }))
    } else if least < law.deceleration {
        Some(note(FindingCode::BrakeMayMissLine, BrakesFinding::MayMissLine { force, line: label, asked }))
    } else {
        None
    }
}

/// Cautions that stand on the page whatever it says.
pub(crate) fn cautions() -> Vec<Message> {
    [BrakesFinding::CautionRoad, BrakesFinding::CautionMechanic, BrakesFinding::CautionWet].map(Into::into).to_vec()
}

pub(crate) fn note(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Note, text)
}

pub(crate) fn care(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Care, text)
}
