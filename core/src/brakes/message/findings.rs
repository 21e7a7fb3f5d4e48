//! What is worth saying about a brake.

use layshaft_wire::message;

use crate::message::{Measure, Message};
use crate::record::End;

/// A finding or a caution of the brakes.
#[message("brakes-finding")]
pub(crate) enum BrakesFinding {
    /// The lever ratio is not known.
    MissingLeverRatio,
    /// The friction of the pads is not known.
    FrictionOpen { least: Measure, most: Measure },
    /// The clearance of the pads is the usual one.
    ClearanceUsual { clearance: Measure },
    /// The disc is not known.
    MissingDisc,
    /// The lever comes far.
    LongLever { travel: Measure },
    /// The wheel locks before the brake is used up.
    BeyondGrip { force: Measure, deceleration: Measure, grip: Measure, allowed: Measure },
    /// The ratio of a hand brake is outside common practice.
    RatioUncommon { why: Message },
    /// The brake as made is not known.
    StandardUnknown,
    /// The lever ratio is not known on one side of a comparison.
    TakenLeverRatio,
    /// The effective radius is not known on one side.
    TakenRadius,
    /// Neither is known.
    TakenBoth,
    /// It cannot reach what the rule asks for.
    BelowLine { force: Measure, reached: Measure, line: Message, asked: Measure },
    /// It may not reach it.
    MayMissLine { force: Measure, line: Message, asked: Measure },
    /// Parts that cannot go together.
    CannotBe { end: End, reason: Message },
    /// What the leverage of a drum needs.
    MissingCam,
    /// The cam lever stands past square.
    CamOver { why: Message },
    /// Two grades that mix.
    FluidMixed { poured: String, now: String },
    /// Two fluids that must never meet.
    FluidNeverMix { poured: String, now: String },
    /// Old fluid.
    FluidOld { years: Measure },
    /// Wet fluid.
    FluidWet { water: Measure },
    /// Where not to test.
    CautionRoad,
    /// Who has the last word.
    CautionMechanic,
    /// What the figures are for.
    CautionWet,
}
