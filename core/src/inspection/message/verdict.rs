//! Answers, readings against limits, and what follows from the bike.

use layshaft_wire::message;

use crate::message::{Measure, Message};
use crate::record::Equipment;

/// A sentence of the inspection, or how a value lies against a limit.
#[message("inspection")]
pub(crate) enum InspectionMessage {
    /// Kind of thing: an inspection pack.
    Pack,
    /// The bike names a pack that is not here.
    PackNotHere { pack: String, place: String, caution: String },
    /// Nothing fails and nothing is unknown.
    Ready { fails: u32, unknowns: u32, passes: u32 },
    /// Something fails or is unknown.
    NotReady { fails: u32, unknowns: u32, passes: u32 },
    /// No item fails, but the bike has a stopper.
    NotReadyStopper { fails: u32, unknowns: u32, passes: u32 },
    /// What was answered before a job put it right.
    LookAgain { job: String },
    /// An item that forbids riding.
    NotMet { item: String, reason: Message },
    /// Asked of younger machines.
    FromYear { from: Measure, year: Measure },
    /// Asked of older machines.
    ToYear { to: Measure, year: Measure },
    /// Asked of larger machines.
    AboveDisplacement { above: Measure, displacement: Measure },
    /// Both brakes are drums.
    NoHydraulicBrake,
    /// Both brakes are discs.
    NoMechanicalBrake,
    /// Both brakes are drums.
    NoAntiLock,
    /// The supply has no battery.
    NoBattery,
    /// The engine has two strokes.
    TwoStroke,
    /// The lamps are entered, and none is an indicator.
    NoIndicators,
    /// What the owner says that the bike does not have.
    NotFitted { equipment: Equipment },
    /// The answer was given in the walk-through of another place.
    AnsweredElsewhere { place: String },
    /// Asked though the year is not known.
    YearUnknown,
    /// First used in the year in which the rule begins.
    YearBegins { year: Measure },
    /// First used in the last year of the rule.
    YearEnds { year: Measure },
    /// Asked though the displacement is not known.
    DisplacementUnknown,
    /// Answered: not checked.
    NotChecked,
    /// Not answered.
    NotCheckedYet,
    /// Measured and said not to apply.
    MeasuredAndNotApplying,
    /// Answered: does not apply.
    DoesNotApply,
    /// Answered: good.
    Good,
    /// Answered: not good.
    NotGood,
    /// Answered good where a reading is needed.
    GoodNotMeasured { limit: Message },
    /// Not measured yet.
    NotMeasured { limit: Message },
    /// A reading that cannot be.
    MeasureAgain { reason: Message },
    /// A reading against its limit.
    Reading { against: Message },
    /// The same, but the answer was: not good.
    ReadingNotGood { against: Message },
    /// Measured and found good, without a limit.
    MeasuredGood { value: Measure },
    /// Measured without a limit, and not judged.
    MeasuredUnjudged { value: Measure },
    /// Worked out, against a limit.
    WorkedOutAgainst { against: Message },
    /// Worked out, judged by the bike itself.
    WorkedOut { label: Message, value: Measure },
    /// The same, and why.
    WorkedOutWhy { label: Message, value: Measure, why: Message },
    /// Answered good where what was worked out fails.
    GoodWithoutReading,
    /// Nothing can be worked out.
    TooLittleKnown,
    /// A value below the least.
    Below { value: Measure, limit: Measure },
    /// A value above the most.
    Above { value: Measure, limit: Measure },
    /// A value between both ends.
    Within { value: Measure, min: Measure, max: Measure },
    /// A value that keeps the least.
    KeepsLeast { value: Measure, limit: Measure },
    /// A value that keeps the most.
    KeepsMost { value: Measure, limit: Measure },
    /// A value without a limit.
    Unlimited { value: Measure },
    /// A limit with both ends.
    LimitBetween { min: Measure, max: Measure },
    /// The least.
    LimitLeast { limit: Measure },
    /// The most.
    LimitMost { limit: Measure },
    /// No limit.
    LimitNone,
}
