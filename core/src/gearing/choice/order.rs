//! The order of the pairs: the best first, the same on every device.

use std::cmp::Ordering;

use super::{SprocketGoal, SprocketPair};
use crate::gearing::message::SprocketChoiceMessage;
use crate::quantity::Judgement;

/// The order in words, as it is shown beside the list.
pub(super) fn in_words(goal: Option<&SprocketGoal>) -> SprocketChoiceMessage {
    match goal {
        Some(SprocketGoal::Speedometer) => SprocketChoiceMessage::OrderSpeedometer,
        Some(_) => SprocketChoiceMessage::OrderGoal,
        None => SprocketChoiceMessage::OrderFitted,
    }
}

/// Compares two pairs by the order in words. No two pairs are equal: the teeth decide last.
pub(super) fn better_first(goal: Option<&SprocketGoal>, a: &SprocketPair, b: &SprocketPair) -> Ordering {
    let turns =
        |pair: &SprocketPair| pair.hunting.as_ref().map_or((0, 0), |hunting| (hunting.front_turns, hunting.rear_turns));
    place(a.judgement)
        .cmp(&place(b.judgement))
        .then_with(|| band(goal, a).cmp(&band(goal, b)))
        .then_with(|| away(a).total_cmp(&away(b)))
        .then_with(|| (b.chain_stays == Some(true)).cmp(&(a.chain_stays == Some(true))))
        .then_with(|| turns(b).cmp(&turns(a)))
        .then_with(|| b.front_teeth.cmp(&a.front_teeth))
        .then_with(|| a.rear_teeth.cmp(&b.rear_teeth))
}

fn place(judgement: Judgement) -> u8 {
    match judgement {
        Judgement::Fine => 0,
        Judgement::Open => 1,
        Judgement::Outside => 2,
    }
}

/// Where the speedometer is the goal: inside the band, not known, outside.
fn band(goal: Option<&SprocketGoal>, pair: &SprocketPair) -> u8 {
    if goal != Some(&SprocketGoal::Speedometer) {
        return 0;
    }
    match pair.speedometer.as_ref().and_then(|shift| shift.in_band) {
        Some(true) => 0,
        None => 1,
        Some(false) => 2,
    }
}

/// Distance from the goal, or from what is fitted.
fn away(pair: &SprocketPair) -> f64 {
    pair.off_goal_percent.unwrap_or(pair.speed_change_percent).abs()
}
