//! A drum brake of the bike: where its cam lever stands, and what its shoes make of the force.

use layshaft_wire::wire;

use super::findings::{care, note};
use crate::bounds;
use crate::brakes::formulas::{cam_angle, cam_torque, shoe_range};
use crate::brakes::message::{BrakesFinding, BrakesMessage};
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement};
use crate::record::Brake;
use crate::units::Unit;

/// Angle with the brake on beyond which a cam lever is taken to stand wrong, degrees. Common practice, no source.
pub const MOST_APPLIED_DEGREES: f64 = 100.0;

/// A drum brake.
#[wire]
pub struct DrumState {
    /// Length of the cam lever, mm.
    pub cam_arm_mm: Option<f64>,
    /// Angle between rod and cam lever at rest, degrees.
    pub rest_degrees: Option<f64>,
    /// The same with the brake on, degrees.
    pub applied_degrees: Option<f64>,
    /// How far the cam turns, degrees.
    pub cam_turn_degrees: Option<f64>,
    /// Leverage with the brake on, per cent of the best there is.
    pub leverage_percent: Option<f64>,
    /// Torque at the cam for 100 N in the rod, N m.
    pub cam_torque_nm: Option<f64>,
    /// Whether the lever stands where it should with the brake on.
    pub judgement: Judgement,
    /// Why.
    pub why: Option<Message>,
    /// Both shoes lead.
    pub twin_leading: bool,
    /// Least drum force over force at one shoe tip.
    pub shoe_factor_least: f64,
    /// Greatest drum force over force at one shoe tip.
    pub shoe_factor_most: f64,
    /// How the pointer beside the cam is read.
    pub pointer: Message,
}

/// The drum of a brake. Cam lever and its angle give the leverage once the travel of the rod is known.
pub fn drum_state(brake: &Brake, rod_travel_mm: Option<f64>) -> Result<DrumState, Refused> {
    let brake = brake.clone().checked()?;
    bounds::ROD_TRAVEL.check_known(rod_travel_mm)?;
    let applied = match (brake.cam_degrees, rod_travel_mm, brake.cam_arm_mm) {
        (Some(rest), Some(travel), Some(arm)) => Some(cam_angle(rest, travel, arm)?),
        _ => None,
    };
    let twin_leading = brake.twin_leading == Some(true);
    let (least, most) = shoe_range(brake.pad_friction, twin_leading)?;
    let (judgement, why) = judge(applied);
    Ok(DrumState {
        cam_arm_mm: brake.cam_arm_mm,
        rest_degrees: brake.cam_degrees,
        applied_degrees: applied,
        cam_turn_degrees: applied.zip(brake.cam_degrees).map(|(applied, rest)| applied - rest),
        leverage_percent: applied.map(|degrees| degrees.to_radians().sin() * 100.0),
        cam_torque_nm: applied.zip(brake.cam_arm_mm).map(|(degrees, arm)| cam_torque(100.0, arm, degrees)),
        judgement,
        why: why.map(Into::into),
        twin_leading,
        shoe_factor_least: least,
        shoe_factor_most: most,
        pointer: BrakesMessage::Pointer.into(),
    })
}

fn judge(applied: Option<f64>) -> (Judgement, Option<BrakesMessage>) {
    let Some(degrees) = applied else { return (Judgement::Open, None) };
    let angle = Unit::Degree.of(degrees);
    if degrees > MOST_APPLIED_DEGREES {
        (Judgement::Outside, Some(BrakesMessage::CamPastSquare { angle }))
    } else {
        (Judgement::Fine, Some(BrakesMessage::CamSquare { angle }))
    }
}

/// Findings on a drum.
pub(crate) fn findings(drum: &DrumState) -> Vec<Finding> {
    let mut found = Vec::new();
    if drum.applied_degrees.is_none() {
        found.push(note(FindingCode::BrakeMissingCam, BrakesFinding::MissingCam));
    }
    if let (Judgement::Outside, Some(why)) = (drum.judgement, &drum.why) {
        found.push(care(FindingCode::BrakeCamOver, BrakesFinding::CamOver { why: why.clone() }));
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::BrakeKind;

    fn drum() -> Brake {
        Brake {
            brake: Some(BrakeKind::Drum),
            rotor_mm: Some(130.0),
            cam_arm_mm: Some(70.0),
            cam_degrees: Some(60.0),
            ..Brake::default()
        }
    }

    #[test]
    fn a_lever_that_comes_square_is_fine_and_one_past_it_is_not() {
        let fine = drum_state(&drum(), Some(25.0)).unwrap();
        assert_eq!(fine.judgement, Judgement::Fine);
        assert!((fine.cam_turn_degrees.unwrap() - 21.786).abs() < 1e-3 && fine.leverage_percent.unwrap() > 98.0);
        let over = drum_state(&Brake { cam_degrees: Some(95.0), ..drum() }, Some(25.0)).unwrap();
        assert_eq!(over.judgement, Judgement::Outside);
        assert!(findings(&over).iter().any(|found| found.code.as_str() == "brake.cam-over"));
    }

    #[test]
    fn without_its_measures_a_drum_is_open_but_its_shoes_have_a_range() {
        let open = drum_state(&Brake { cam_arm_mm: None, ..drum() }, Some(25.0)).unwrap();
        assert_eq!((open.judgement, open.applied_degrees), (Judgement::Open, None));
        assert!(open.shoe_factor_least < open.shoe_factor_most);
        let twin = drum_state(&Brake { twin_leading: Some(true), ..drum() }, None).unwrap();
        assert!(twin.shoe_factor_least > open.shoe_factor_least && twin.shoe_factor_most > open.shoe_factor_most);
    }
}
