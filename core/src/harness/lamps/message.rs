//! What is said of the indicators of a bike.

use layshaft_wire::message;

use crate::message::Measure;

/// What is said of the indicators.
#[message("harness-indicators")]
pub(crate) enum IndicatorMessage {
    /// A quantity: their rate.
    Rate,
    /// A quantity: the least of their band.
    RateLeast,
    /// A quantity: the most of their band.
    RateMost,
    /// A quantity: light of the other side.
    OtherSideLight,
    /// A quantity: light of the pilot.
    PilotLight,
    /// The flasher takes this load.
    RateFine,
    /// They do not flash, and why.
    StopsBecause { load: Measure, made: Measure },
    /// They flash too fast, and why.
    HurriesBecause { load: Measure, made: Measure },
    /// Both sides light.
    OtherSideLights,
    /// The other side stays dark.
    OtherSideDark,
    /// The pilot is seen.
    PilotSeen,
    /// It is not.
    PilotNotSeen,
    /// They do not flash, and what cures it.
    Stop { load: Measure, made: Measure },
    /// They flash too fast, and what cures it.
    TooFast { load: Measure, made: Measure },
    /// Both sides light together, and what cures it.
    BothSides,
    /// Where the light of pilot and other side comes from.
    SourcePilot,
}
