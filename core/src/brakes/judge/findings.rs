//! What is worth saying about a brake: what is missing, what lies outside common practice, what the rules ask for.

use super::compare::{BrakeChange, judge_ratio};
use super::line::{BrakeLine, USUAL_CLEARANCE_MM, USUAL_PAD_FRICTION};
use crate::brakes::formulas::StoppingLine;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Weight};
use crate::record::{Brake, End};

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
        found.push(note(
            FindingCode::BrakeMissingLeverRatio,
            "The lever ratio is not known, so pressure and braking cannot be worked out. Measure from the pivot to the middle of \
             two fingers, and from the pivot to where the lever pushes the piston; divide the one by the other.",
        ));
    }
    if brake.pad_friction.is_none() {
        let (least, most) = USUAL_PAD_FRICTION;
        found.push(note(
            FindingCode::BrakeFrictionOpen,
            format!("The friction of the pads is not known; {least} to {most} is common, so the braking is a range."),
        ));
    }
    if brake.pad_clearance_mm.is_none() {
        found.push(note(
            FindingCode::BrakeClearanceUsual,
            format!(
                "Lever travel is reckoned with a running clearance of {USUAL_CLEARANCE_MM} mm a pad, as is common."
            ),
        ));
    }
    if line.effective_radius_mm.is_none() {
        found.push(note(
            FindingCode::BrakeMissingDisc,
            "The disc is not known: enter its diameter, or the effective radius.",
        ));
    }
    if let Some(travel) = line.lever_travel_mm.map(|mm| mm + line.hose_travel_mm.unwrap_or(0.0))
        && travel > LONG_LEVER_MM
    {
        found.push(care(
            FindingCode::BrakeLongLever,
            format!(
                "The lever travels {travel:.0} mm before it brakes hard. Try with the engine off that it never touches the bar, hot \
                 and with worn pads as well."
            ),
        ));
    }
    if let Some(most) = line.deceleration_most
        && most > road_friction * crate::units::GRAVITY
    {
        found.push(note(
            FindingCode::BrakeBeyondGrip,
            format!(
                "{:.0} N at the lever would slow the machine by up to {most:.1} m/s²; a grip of {road_friction} allows {:.1}. The \
                 wheel locks before that.",
                line.lever_newtons,
                road_friction * crate::units::GRAVITY
            ),
        ));
    }
    found
}

/// Finding on the hydraulic ratio; only hand brakes have a common band.
pub(crate) fn on_ratio(end: End, ratio: f64) -> Option<Finding> {
    let (judgement, why) = judge_ratio(ratio);
    (end == End::Front && judgement == Judgement::Outside).then(|| {
        care(
            FindingCode::BrakeRatioUncommon,
            format!("Hydraulic ratio of the front brake: {why}. Common practice, no source; the maker's pairing wins."),
        )
    })
}

/// Findings on the comparison with standard.
pub(crate) fn on_change(change: Option<&BrakeChange>) -> Vec<Finding> {
    let Some(change) = change else {
        return vec![note(
            FindingCode::BrakeStandardUnknown,
            "The brake as made is not known well enough to compare with: enter its master cylinder and pistons.",
        )];
    };
    change.taken.iter().map(|taken| note(FindingCode::BrakeTakenUnchanged, taken.clone())).collect()
}

/// Finding on what the brake reaches against the line of the Directive.
pub(crate) fn on_stopping(line: &BrakeLine, lines: &[StoppingLine]) -> Option<Finding> {
    let law = lines.first()?;
    let (least, most) = line.deceleration_least.zip(line.deceleration_most)?;
    let hand = line.lever_newtons;
    if most < law.deceleration {
        Some(care(
            FindingCode::BrakeBelowLine,
            format!(
                "With {hand:.0} N at the lever it reaches {most:.1} m/s² at best; “{}” asks for {:.1}.",
                law.label, law.deceleration
            ),
        ))
    } else if least < law.deceleration {
        Some(note(
            FindingCode::BrakeMayMissLine,
            format!(
                "With {hand:.0} N at the lever and poor pads it may stay below the {:.1} m/s² of “{}”.",
                law.deceleration, law.label
            ),
        ))
    } else {
        None
    }
}

/// Cautions that stand on the page whatever it says.
pub(crate) fn cautions() -> Vec<String> {
    [
        "Never test brakes on a public road. First try at walking pace on private, dry, level ground.",
        "Brake work follows the maker's manual; have it looked at by a licensed mechanic before you ride.",
        "Figures are for one brake alone on dry tarmac; a wet or dusty road allows half and less.",
    ]
    .map(str::to_owned)
    .to_vec()
}

pub(crate) fn note(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Note, text)
}

pub(crate) fn care(code: FindingCode, text: impl Into<Message>) -> Finding {
    Finding::new(code, Weight::Care, text)
}
