//! What is worth saying about a drive.

use layshaft_wire::message;

use crate::message::{List, Measure};
use crate::record::End;

/// A finding on gears, chain or speedometer.
#[message("gearing-finding")]
pub(crate) enum GearingFinding {
    /// Nothing to compare with.
    StandardUnknown,
    /// No engine speed limit.
    MissingRevLimit,
    /// Beyond that limit.
    BeyondLimit { speed: Measure, needed: Measure, limit: Measure },
    /// Teeth outside what the bike takes.
    OutsideTeeth { end: End, teeth: u32, least: u32, most: u32 },
    /// Fewer teeth than the bike takes.
    TooFewTeeth { end: End, teeth: u32, least: u32 },
    /// More teeth than the bike takes.
    TooManyTeeth { end: End, teeth: u32, most: u32 },
    /// A larger gearbox sprocket.
    FrontClearance { teeth: u32, standard: u32 },
    /// No chain size.
    MissingChainSize,
    /// No centre distance.
    MissingCentreDistance,
    /// Ends of the adjuster the wrong way round.
    AdjusterEndsSwapped,
    /// An odd count of links.
    OddCount { links: u32, fewer: u32, more: u32 },
    /// Not the chain on the bike.
    AnotherChain { links: u32, fitted: u32 },
    /// The axle outside the adjuster.
    Outside { links: u32, distance: Measure, from: Measure, to: Measure },
    /// The same where only the near end is known.
    OutsideNear { links: u32, distance: Measure, from: Measure },
    /// The same where only the far end is known.
    OutsideFar { links: u32, distance: Measure, to: Measure },
    /// Counts that would fit.
    CountsFit { counts: List },
    /// None would.
    NoCountFits,
    /// The reach of the adjuster is not known.
    MissingAdjuster,
    /// Little room for wear.
    LittleRoomForWear { room: Measure },
    /// The ends do not meet.
    CannotClose { apart: Measure },
    /// The ends of an endless chain do not meet.
    CannotCloseEndless { apart: Measure },
    /// Distance and chain disagree.
    DistanceDisagrees { links: u32, front: u32, rear: u32, reckoned: Measure, measured: Measure },
    /// What drives the speedometer is not known.
    MissingSpeedometer,
    /// How it shifts is not known.
    SpeedometerUnknown,
    /// It reads low.
    ReadsLow { shown: Measure },
    /// It reads too high.
    ReadsHigh { shown: Measure, most: Measure },
    /// It may read low.
    MayReadLow { shift: Measure },
    /// It may read too high.
    MayReadHigh { shift: Measure, shown: Measure, most: Measure },
    /// The size leaves the height open.
    HeightOpen { tyre: String, least: Measure, most: Measure, off: Measure },
    /// A size that is only near.
    NearestEquivalent { tyre: String },
}
