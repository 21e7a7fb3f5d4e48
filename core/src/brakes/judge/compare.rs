//! A pair of master cylinder and caliper against the standard one: what the hand feels.
//!
//! For the same braking force the effort goes with the inverse of lever ratio, hydraulic ratio, radius and friction; the
//! travel goes with lever ratio and hydraulic ratio. More of the one is less of the other.

use layshaft_wire::wire;

use super::line::BrakeLine;
use crate::bounds;
use crate::brakes::formulas::hydraulics;
use crate::brakes::message::{BrakesFinding, BrakesMessage, BrakesSource};
use crate::message::Message;
use crate::quantity::{Judgement, Source, Standing, formula, within};
use crate::units::Unit;

/// Hydraulic ratios of single-disc hand brakes that are commonly met, pistons counted on one side.
/// Common practice, no source.
pub const COMMON_RATIOS: (f64, f64) = (8.0, 15.0);
/// Changes smaller than this are not felt, per cent. Common practice, no source.
const NOT_FELT_PERCENT: f64 = 5.0;

/// Change of force at the lever for the same braking, per cent.
///
/// `Δ = (i₁ · R₁ · r₁ / (i₂ · R₂ · r₂) − 1) · 100`
///
/// - `i` lever ratio, `R` hydraulic ratio: pure numbers; `r` effective radius, mm; 1 before, 2 after
///
/// Source: Pascal and balance of moments; computed. Range: the same pads; all above zero.
///
/// ```
/// // 2 × 27 mm on 14 mm instead of 38.1 mm on 12.7 mm, same lever, same radius.
/// use layshaft_core::brakes::{effort_change, hydraulic_ratio};
/// let (before, after) = (hydraulic_ratio(12.7, 1, 38.1), hydraulic_ratio(14.0, 2, 27.0));
/// assert!((effort_change((1.0, before, 1.0), (1.0, after, 1.0)) - 20.988).abs() < 5e-4);
/// ```
pub fn effort_change(before: (f64, f64, f64), after: (f64, f64, f64)) -> f64 {
    ((before.0 * before.1 * before.2) / (after.0 * after.1 * after.2) - 1.0) * 100.0
}

/// Change of lever travel until the pads touch, per cent.
///
/// `Δ = (i₂ · R₂ · c₂ / (i₁ · R₁ · c₁) − 1) · 100`, `c` running clearance of a pad, mm; else as [`effort_change`].
///
/// Source: the same volume at both ends; computed. Range: no air, stiff hose.
///
/// ```
/// use layshaft_core::brakes::{hydraulic_ratio, travel_change};
/// let (before, after) = (hydraulic_ratio(12.7, 1, 38.1), hydraulic_ratio(14.0, 2, 27.0));
/// assert!((travel_change((1.0, before, 0.15), (1.0, after, 0.15)) + 17.347).abs() < 5e-4);
/// ```
pub fn travel_change(before: (f64, f64, f64), after: (f64, f64, f64)) -> f64 {
    ((after.0 * after.1 * after.2) / (before.0 * before.1 * before.2) - 1.0) * 100.0
}

/// The proposed pair against the standard one.
#[wire]
pub struct BrakeChange {
    /// Hydraulic ratio before.
    pub ratio_before: f64,
    /// Hydraulic ratio after.
    pub ratio_after: f64,
    /// Force at the lever for the same braking, per cent against standard; positive is harder.
    pub effort_percent: f64,
    /// Lever travel until the pads touch, per cent against standard; positive is longer.
    pub travel_percent: f64,
    /// The ratio against common practice.
    pub judgement: Judgement,
    /// Why it is judged so.
    pub why: Message,
    /// What it feels like.
    pub feel: Message,
    /// What was taken as unchanged because it is not known.
    pub taken: Option<Message>,
}

/// The proposed pair and the standard one as numbers. Lever ratio and radius that are unknown on one side count as unchanged.
pub(crate) fn swap(standard: &BrakeLine, proposed: &BrakeLine) -> BrakeSwap {
    let pair = |one: Option<f64>, other: Option<f64>| one.zip(other).unwrap_or((1.0, 1.0));
    let (lever_ratio, new_lever_ratio) = pair(standard.lever_ratio, proposed.lever_ratio);
    let (effective_radius_mm, new_effective_radius_mm) =
        pair(standard.effective_radius_mm, proposed.effective_radius_mm);
    BrakeSwap {
        lever_ratio,
        hydraulic_ratio: standard.hydraulic_ratio,
        effective_radius_mm,
        pad_clearance_mm: standard.pad_clearance_mm,
        new_lever_ratio,
        new_hydraulic_ratio: proposed.hydraulic_ratio,
        new_effective_radius_mm,
        new_pad_clearance_mm: proposed.pad_clearance_mm,
    }
}

impl BrakeSwap {
    /// Changes of force and of travel at the lever.
    fn changes(&self) -> (f64, f64) {
        let (levers, ratios) =
            ((self.lever_ratio, self.new_lever_ratio), (self.hydraulic_ratio, self.new_hydraulic_ratio));
        let effort = effort_change(
            (levers.0, ratios.0, self.effective_radius_mm),
            (levers.1, ratios.1, self.new_effective_radius_mm),
        );
        let travel =
            travel_change((levers.0, ratios.0, self.pad_clearance_mm), (levers.1, ratios.1, self.new_pad_clearance_mm));
        (effort, travel)
    }
}

formula! {
    /// What another master cylinder, caliper, lever or disc does to the hand.
    BrakeSwap in Brakes, "Δ = (i₁ · R₁ · r₁ / (i₂ · R₂ · r₂) − 1) · 100"
    takes {
        /// Lever ratio before.
        "i₁" lever_ratio: f64 = within(&bounds::LEVER_RATIO);
        /// Hydraulic ratio before.
        "R₁" hydraulic_ratio: f64 = within(&bounds::HYDRAULIC_RATIO);
        /// Effective radius before, millimetres.
        "r₁" effective_radius_mm: f64 = within(&bounds::EFFECTIVE_RADIUS);
        /// Clearance of a pad before, millimetres.
        "c₁" pad_clearance_mm: f64 = within(&bounds::PAD_CLEARANCE);
        /// Lever ratio after.
        "i₂" new_lever_ratio: f64 = within(&bounds::LEVER_RATIO);
        /// Hydraulic ratio after.
        "R₂" new_hydraulic_ratio: f64 = within(&bounds::HYDRAULIC_RATIO);
        /// Effective radius after, millimetres.
        "r₂" new_effective_radius_mm: f64 = within(&bounds::EFFECTIVE_RADIUS);
        /// Clearance of a pad after, millimetres.
        "c₂" new_pad_clearance_mm: f64 = within(&bounds::PAD_CLEARANCE);
    }
    gives {
        /// Force at the lever.
        effort "Δ" Percent;
        /// Travel of the lever.
        travel "(i₂ · R₂ · c₂ / (i₁ · R₁ · c₁) − 1) · 100" Percent;
    }
    from hydraulics();
    it => {
        let (effort, travel) = it.changes();
        Ok([Some(effort), Some(travel).filter(|percent| percent.is_finite())])
    }
}

/// Sets the proposed pair against the standard one. Lever ratio and radius that are unknown on one side count as unchanged.
pub fn compare(standard: &BrakeLine, proposed: &BrakeLine) -> BrakeChange {
    let (effort_percent, travel_percent) = swap(standard, proposed).changes();
    let no_lever_ratio = standard.lever_ratio.is_none() || proposed.lever_ratio.is_none();
    let no_radius = standard.effective_radius_mm.is_none() || proposed.effective_radius_mm.is_none();
    let taken = match (no_lever_ratio, no_radius) {
        (true, true) => Some(BrakesFinding::TakenBoth),
        (true, false) => Some(BrakesFinding::TakenLeverRatio),
        (false, true) => Some(BrakesFinding::TakenRadius),
        (false, false) => None,
    };
    let (judgement, why) = judge_ratio(proposed.hydraulic_ratio);
    BrakeChange {
        ratio_before: standard.hydraulic_ratio,
        ratio_after: proposed.hydraulic_ratio,
        effort_percent,
        travel_percent,
        judgement,
        why,
        feel: feel(effort_percent).into(),
        taken: taken.map(Into::into),
    }
}

/// A hydraulic ratio of a hand brake against common practice.
pub fn judge_ratio(ratio: f64) -> (Judgement, Message) {
    let said = Unit::None.of(ratio);
    let (least, most) = (Unit::None.of(COMMON_RATIOS.0), Unit::None.of(COMMON_RATIOS.1));
    if ratio < COMMON_RATIOS.0 {
        (Judgement::Outside, BrakesMessage::RatioBelow { ratio: said, least, most }.into())
    } else if ratio > COMMON_RATIOS.1 {
        (Judgement::Outside, BrakesMessage::RatioAbove { ratio: said, least, most }.into())
    } else {
        (Judgement::Fine, BrakesMessage::RatioUsual { least, most }.into())
    }
}

/// Where the band of common ratios comes from.
pub fn ratio_source() -> Source {
    Source::new(BrakesSource::CommonRatios, Standing::CommonPractice)
}

fn feel(effort_percent: f64) -> BrakesMessage {
    if effort_percent > NOT_FELT_PERCENT {
        BrakesMessage::FeelsFirmer
    } else if effort_percent < -NOT_FELT_PERCENT {
        BrakesMessage::FeelsLighter
    } else {
        BrakesMessage::FeelsAlike
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn what_the_hand_saves_in_force_it_pays_in_travel(before in 5.0..20.0, after in 5.0..20.0, lever in 3.0..8.0) {
            let effort = effort_change((lever, before, 100.0), (lever, after, 100.0));
            let travel = travel_change((lever, before, 0.15), (lever, after, 0.15));
            prop_assert!(((1.0 + effort / 100.0) * (1.0 + travel / 100.0) - 1.0).abs() < 1e-9);
        }
    }

    #[test]
    fn the_band_takes_its_ends_and_says_on_which_side_one_is() {
        assert_eq!(judge_ratio(8.0).0, Judgement::Fine);
        assert_eq!(judge_ratio(15.0).0, Judgement::Fine);
        assert!(judge_ratio(7.4).1.english().contains("wooden") && judge_ratio(16.0).1.english().contains("bar"));
    }
}
