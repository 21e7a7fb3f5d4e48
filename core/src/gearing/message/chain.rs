//! The chain by itself: on a sprocket of another size, worn, and slack.

use layshaft_wire::message;

use crate::message::{Measure, Message};
use crate::record::End;

/// How a chain meets a sprocket of another size.
#[message("chain-mesh")]
pub(crate) enum ChainMeshMessage {
    /// The pitches differ.
    ClimbsOut { chain: String, sprocket: String, pins: Measure, teeth: Measure },
    /// Rollers too thick.
    RidesHigh { chain: String, sprocket: String, rollers: Measure, gaps: Measure },
    /// Teeth too wide.
    TooWide { chain: String, sprocket: String, plates: Measure, teeth: Measure },
    /// Rollers too thin.
    Loose { chain: String, sprocket: String, rollers: Measure, gaps: Measure },
    /// Teeth too narrow.
    Wanders { chain: String, sprocket: String, plates: Measure, teeth: Measure },
    /// It wears.
    Badly { end: End, why: Message },
    /// It comes off.
    Never { end: End, why: Message },
}

/// Wear and slack.
#[message("chain-wear")]
pub(crate) enum ChainWearMessage {
    /// A limit of the owner's.
    LimitEntered,
    /// The limit of manuals.
    LimitManuals,
    /// The limit of chain makers.
    LimitChainMakers,
    /// The limit of a large sprocket.
    LimitLargeSprocket { teeth: u32 },
    /// Judged by the manual.
    ByManual { limit: Measure },
    /// At the last limit there is.
    RenewedAt { limit: Measure },
    /// Below every common limit.
    BelowBoth { manuals: Measure, makers: Measure },
    /// Between the common limits.
    Between { manuals: Measure, makers: Measure },
    /// Nothing measured.
    NotMeasured,
    /// Nothing measured, as a finding.
    Unknown,
    /// A job was done on the chain since it was measured.
    MeasureAgain { job: String },
    /// Worn out.
    WornOut { percent: Measure, why: Message },
    /// Perhaps worn out.
    PerhapsWornOut { percent: Measure, why: Message },
    /// Less than new.
    ShorterThanNew { percent: Measure },
    /// The axle has no place for it.
    BeyondAdjuster { distance: Measure },
    /// Hands off.
    CautionHands,
    /// Slack by the manual.
    CautionSlack,
    /// A clip.
    CautionClip,
    /// A rivet.
    CautionRivet,
    /// No joint at all.
    CautionEndless,
    /// A sealed chain.
    CautionSealed,
    /// A plain chain.
    CautionPlain,
    /// Where the page holds.
    Range,
    /// Slack below the manual's least.
    SlackLess { tightest: Measure, least: Measure },
    /// Slack above its most.
    SlackMore { tightest: Measure, most: Measure },
    /// The manual's slack is not known.
    SlackUnknown,
    /// Slack that differs too much.
    SlackUneven { spread: Measure, width: Measure },
    /// Slack as it should be.
    SlackFine { least: Measure, most: Measure },
    /// One reading alone.
    SlackOneReading,
    /// The finding on slack below the least.
    TooTight { tightest: Measure, least: Measure },
    /// The finding on slack above the most.
    TooSlack { tightest: Measure, most: Measure },
    /// The finding on slack that differs.
    TightSpot { spread: Measure, width: Measure },
    /// The finding where the manual's slack is not known.
    RangeOpen,
    /// The finding on one reading.
    ReadingOpen,
}
