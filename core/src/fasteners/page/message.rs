//! What the lines of the page's working give.

use layshaft_wire::message;

use super::ask::Lubrication;
use crate::message::{Measure, choices};

choices! { Lubrication; }

/// A line of the fastener page.
#[message("fasteners-working")]
pub(crate) enum FastenersWorking {
    /// Flank diameter.
    FlankDiameter,
    /// Stress area.
    StressArea,
    /// Proof load.
    ProofLoad,
    /// Load at which it breaks.
    BreakingLoad,
    /// Preload at the least friction.
    PreloadLeast { friction: Measure, lubrication: Lubrication },
    /// Torque there.
    TorqueLeast { friction: Measure, lubrication: Lubrication },
    /// Preload at the middle friction.
    PreloadMiddle { friction: Measure, lubrication: Lubrication },
    /// Torque there.
    TorqueMiddle { friction: Measure, lubrication: Lubrication },
    /// Preload at the greatest friction.
    PreloadMost { friction: Measure, lubrication: Lubrication },
    /// Torque there.
    TorqueMost { friction: Measure, lubrication: Lubrication },
    /// Engagement, the shorter rule.
    EngagementRule,
    /// Engagement so that the screw breaks first.
    ScrewBreaksFirst,
}
