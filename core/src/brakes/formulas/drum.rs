//! The drum brake: angle of the cam lever, and what leading and trailing shoes make of the cam's force.
//!
//! Balance of moments about the pivot of a shoe, its lining taken as pressing in the middle. Real linings, wear and
//! adjustment spread the result widely, so it is a range.

use super::sources::drums;
use crate::bounds;
use crate::brakes::message::BrakesRefused;
use crate::error::Refused;
use crate::quantity::{formula, within};
use crate::units::Unit;

/// Angle between rod and cam lever after the rod has been pulled, degrees.
///
/// `cos φ = cos φ₀ − s / L`
///
/// - `φ₀` angle at rest, degrees; `s` travel of the rod, mm; `L` length of the cam lever, mm
///
/// Below 90° the lever still gains leverage, at 90° it has the most, beyond it loses. Refused where the rod would be pulled
/// further than the lever can follow. Source: geometry; computed. Range: rod long against the lever, so that it keeps its
/// direction.
///
/// ```
/// let applied = layshaft_core::brakes::cam_angle(60.0, 25.0, 70.0).unwrap();
/// assert!((applied - 81.786).abs() < 1e-3);
/// assert!(layshaft_core::brakes::cam_angle(60.0, 150.0, 70.0).is_err());
/// ```
pub fn cam_angle(rest_degrees: f64, rod_travel_mm: f64, cam_arm_mm: f64) -> Result<f64, Refused> {
    let cosine = rest_degrees.to_radians().cos() - rod_travel_mm / cam_arm_mm;
    if cosine < -1.0 {
        return Err(Refused::Conflict {
            field: "rodTravelMm".to_owned(),
            reason: BrakesRefused::RodTooFar {
                arm: Unit::Millimetre.of(cam_arm_mm),
                travel: Unit::Millimetre.of(rod_travel_mm),
                rest: Unit::Degree.of(rest_degrees),
            }
            .into(),
        });
    }
    Ok(cosine.acos().to_degrees())
}

/// Torque at the cam, N m: `T = F · L · sin φ / 1000`, `F` pull of the rod in N, `L` in mm, `φ` as in [`cam_angle`].
///
/// Source: balance of moments; computed. Range: as there.
///
/// ```
/// assert!((layshaft_core::brakes::cam_torque(400.0, 70.0, 90.0) - 28.0).abs() < 1e-12);
/// ```
pub fn cam_torque(rod_newtons: f64, cam_arm_mm: f64, degrees: f64) -> f64 {
    rod_newtons * cam_arm_mm * degrees.to_radians().sin() / 1000.0
}

/// What shoes make of the force at their tips: drum force over force at one tip, pure numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShoeFactors {
    /// One leading shoe.
    pub leading: f64,
    /// One trailing shoe.
    pub trailing: f64,
    /// One leading and one trailing shoe, both tips pressed with the same force (a floating cam, linings not yet bedded in).
    pub equal_force: f64,
    /// One leading and one trailing shoe on a fixed cam, worn until both linings press alike.
    pub equal_wear: f64,
    /// Two leading shoes.
    pub twin_leading: f64,
}

/// Shoe factors from friction and geometry.
///
/// `l = μ·h / (b − μ·r)`, `t = μ·h / (b + μ·r)`; together `l + t`, after bedding in `4·l·t / (l + t)`, twin leading `2·l`
///
/// - `μ` friction of the lining; `r` radius of the drum; `b` distance of the pivot from the middle of the drum; `h` distance
///   of the cam from the pivot; lengths in one and the same unit
///
/// Refused where the leading shoe would lock by itself (`μ·r ≥ b`). Source: balance of moments about the pivot, lining as one
/// point in the middle; computed. A handbook gives 2.0 for leading and trailing and 3.0 for twin leading shoes at μ = 0.38
/// (from memory). Range: dry, round drum.
///
/// ```
/// let factors = layshaft_core::brakes::shoe_factors(0.38, 65.0, 50.0, 100.0).unwrap();
/// assert!((factors.equal_force - 2.0).abs() < 0.02 && (factors.twin_leading - 3.0).abs() < 0.01);
/// ```
pub fn shoe_factors(friction: f64, drum_radius: f64, pivot: f64, cam: f64) -> Result<ShoeFactors, Refused> {
    if friction * drum_radius >= pivot {
        return Err(Refused::Conflict {
            field: "padFriction".to_owned(),
            reason: BrakesRefused::ShoeLocks { friction: Unit::None.of(friction) }.into(),
        });
    }
    let leading = friction * cam / (pivot - friction * drum_radius);
    let trailing = friction * cam / (pivot + friction * drum_radius);
    Ok(ShoeFactors {
        leading,
        trailing,
        equal_force: leading + trailing,
        equal_wear: 4.0 * leading * trailing / (leading + trailing),
        twin_leading: 2.0 * leading,
    })
}

/// Pivot and cam of a usual drum as shares of its radius. Common practice, no source.
pub const USUAL_PIVOT_SHARE: f64 = 0.8;
/// Friction of drum linings, from worn and glazed to fresh. Common practice, no source.
pub const LINING_FRICTION: (f64, f64) = (0.3, 0.4);

/// Least and greatest friction of the linings: as entered, else the usual range.
pub(crate) fn lining_friction(entered: Option<f64>) -> (f64, f64) {
    entered.map_or(LINING_FRICTION, |known| (known, known))
}

/// Least and greatest shoe factor of a drum of usual proportions; the range is that of friction and bedding in.
///
/// Source: [`shoe_factors`] with the pivot at 0.8 of the radius and the cam opposite; proportions and friction common
/// practice. Range: drums with simple linings.
///
/// ```
/// use layshaft_core::brakes::shoe_range;
/// let (least, most) = shoe_range(None, false).unwrap();
/// assert!((least - 1.2).abs() < 1e-9 && (most - 2.1333).abs() < 1e-4);
/// ```
pub fn shoe_range(friction: Option<f64>, twin_leading: bool) -> Result<(f64, f64), Refused> {
    let (low, high) = lining_friction(friction);
    let of = |friction| shoe_factors(friction, 1.0, USUAL_PIVOT_SHARE, 2.0 * USUAL_PIVOT_SHARE);
    let (low, high) = (of(low)?, of(high)?);
    Ok(if twin_leading { (low.twin_leading, high.twin_leading) } else { (low.equal_wear, high.equal_force) })
}

formula! {
    /// Angle and torque of the cam lever of a drum brake.
    CamLever in Brakes, "φ = arccos(cos(φ₀) − s / L), T = F · L · sin(φ) / 1000"
    takes {
        /// Angle between rod and lever at rest, degrees.
        "φ₀" cam_degrees: f64 = within(&bounds::CAM_ANGLE);
        /// Travel of the rod, millimetres.
        "s" rod_travel_mm: f64 = within(&bounds::ROD_TRAVEL);
        /// Length of the lever, millimetres.
        "L" cam_arm_mm: f64 = within(&bounds::CAM_ARM);
        /// Pull of the rod, newtons.
        "F" rod_newtons: f64 = within(&bounds::ROD_PULL);
    }
    gives {
        /// Angle, brake on.
        angle "φ" Degree;
        /// Torque at the cam.
        torque "T" NewtonMetre;
    }
    from drums();
    it => cam_angle(it.cam_degrees, it.rod_travel_mm, it.cam_arm_mm)
        .map(|applied| [applied, cam_torque(it.rod_newtons, it.cam_arm_mm, applied)])
}

formula! {
    /// What leading and trailing shoes make of the force at their tips.
    DrumShoes in Brakes, "l = μ · h / (b − μ), t = μ · h / (b + μ), h = 2 · b"
    takes {
        /// Friction of the linings.
        "μ" pad_friction: f64 = within(&bounds::PAD_FRICTION);
        /// Pivot from the middle of the drum, share of its radius; the cam stands opposite.
        "b" pivot_share: f64 = within(&bounds::SHOE_SHARE);
    }
    gives {
        /// Both shoes, equal force.
        equal_force "l + t" None;
        /// Both shoes, bedded in.
        equal_wear "4 · l · t / (l + t)" None;
        /// Leading shoe.
        leading "l" None;
        /// Trailing shoe.
        trailing "t" None;
        /// Twin leading shoes.
        twin_leading "2 · l" None;
    }
    from drums();
    it => shoe_factors(it.pad_friction, 1.0, it.pivot_share, 2.0 * it.pivot_share)
        .map(|of| [of.equal_force, of.equal_wear, of.leading, of.trailing, of.twin_leading])
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn a_lining_that_would_lock_is_refused() {
        assert!(
            matches!(shoe_factors(0.8, 65.0, 50.0, 100.0), Err(Refused::Conflict { field, .. }) if field == "padFriction")
        );
    }

    proptest! {
        #[test]
        fn the_lever_turns_on_as_the_rod_is_pulled(rest in 30.0..80.0_f64, arm in 40.0..120.0_f64, share in 0.01..0.5_f64) {
            let travel = arm * share;
            let applied = cam_angle(rest, arm * share, arm).unwrap();
            prop_assert!(applied > rest && cam_angle(rest, 0.0, arm).unwrap() - rest < 1e-9);
            // The end of the lever has moved by the travel of the rod.
            let moved = arm * (rest.to_radians().cos() - applied.to_radians().cos());
            prop_assert!((moved - travel).abs() < 1e-9 * arm);
        }

        #[test]
        fn bedding_in_never_helps_and_leading_beats_trailing(friction in 0.1..0.6, pivot in 45.0..65.0) {
            let factors = shoe_factors(friction, 65.0, pivot, 2.0 * pivot).unwrap();
            prop_assert!(factors.leading > factors.trailing);
            prop_assert!(factors.equal_wear <= factors.equal_force + 1e-12);
            prop_assert!(factors.twin_leading > factors.equal_force);
        }
    }
}
