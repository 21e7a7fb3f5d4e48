//! What the drive cannot be worked out with.

use layshaft_wire::message;

use crate::message::{List, Measure};

/// A reason, label or help of a refusal.
#[message("gearing-refused")]
pub(crate) enum GearingRefused {
    /// The gears.
    LabelGearRatios,
    /// Where they stand.
    EnterGearRatios,
    /// The chain size.
    LabelChainSize,
    /// Where it stands.
    ReadChainSize,
    /// A size that is not in the table.
    NotInTable { name: String, sizes: List },
    /// Sprockets that run into each other.
    SprocketsTouch { distance: Measure, front: u32, rear: u32, least: Measure },
    /// A chain that is too short.
    ChainTooShort { links: u32, front: u32, rear: u32, least: Measure },
    /// A length that no chain has.
    NoSuchLength { measured: Measure, pitches: u32, percent: Measure, size: String, new: Measure },
    /// The range of slack turned over.
    SlackRange,
    /// Too many readings of slack.
    SlackReadings { readings: usize, most: usize },
    /// Too many speeds.
    Cruises { speeds: usize, most: usize },
    /// Two ways of saying how the tyres roll.
    RollingTwice,
    /// Peaks in the wrong order.
    PeaksOrder { torque_at: Measure, power_at: Measure },
    /// Torque that is too small for the power.
    TorqueTooSmall { power: Measure, at: Measure, there: Measure, torque: Measure },
    /// Torque that is too large for the power.
    TorqueTooLarge { torque: Measure, at: Measure, there: Measure, power: Measure },
    /// A power without a speed.
    NoBalance { power: Measure, highest: Measure },
}
