//! Choosing sprockets.

use layshaft_wire::message;

use crate::message::Measure;

/// A finding, a caution or a description of the list of pairs.
#[message("sprocket-choice")]
pub(crate) enum SprocketChoiceMessage {
    /// The teeth looked through are assumed.
    LimitsAssumed { front_least: u32, front_most: u32, rear_least: u32, rear_most: u32 },
    /// No pair at all.
    NoneLeft,
    /// No pair inside the adjuster.
    NoneFits,
    /// The best is still off.
    GoalMissed { front: u32, rear: u32, off: Measure, over: bool },
    /// A wheel drives the speedometer.
    SpeedometerOnWheel,
    /// How it reads as made is not known.
    SpeedometerOpen,
    /// No pair keeps it inside the band.
    SpeedometerOutside,
    /// Hold it against the bike.
    CautionClearance,
    /// Renew together.
    CautionTogether,
    /// Papers.
    CautionPapers,
    /// The order of the list, where the speedometer is the goal.
    OrderSpeedometer,
    /// The order, with another goal.
    OrderGoal,
    /// The order without a goal.
    OrderFitted,
    /// Where the page holds.
    Range,
}
