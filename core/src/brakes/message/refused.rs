//! What the brakes cannot be worked out with.

use layshaft_wire::message;

use crate::message::{List, Measure};

/// A reason, label or help of a refusal.
#[message("brakes-refused")]
pub(crate) enum BrakesRefused {
    /// The bore.
    LabelMaster,
    /// The pistons.
    LabelPistons,
    /// The size of one.
    LabelPiston,
    /// Where to enter them.
    EnterOnBike,
    /// A drum asked for its hydraulic line.
    DrumHasNoLine,
    /// A piston too wide for its disc.
    PistonTooWide { piston: Measure, disc: Measure },
    /// An odd number of pistons in a fixed caliper.
    OddPistons { in_all: u32 },
    /// A rod pulled too far.
    RodTooFar { arm: Measure, travel: Measure, rest: Measure },
    /// A shoe that locks by itself.
    ShoeLocks { friction: Measure },
    /// A stop that is all reaction.
    AllReaction { reaction: Measure, way: Measure, distance: Measure },
    /// A line of the Directive.
    LabelDirectiveLine,
    /// A line that nobody wrote.
    NoSuchLine { name: String, lines: List },
    /// The boiling points of a grade.
    LabelBoiling { grade: String },
    /// A grade without any.
    NoBoiling,
}
