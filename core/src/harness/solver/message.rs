//! What is said of a circuit that was worked out.

use layshaft_wire::message;

use crate::message::Measure;

/// What is said of an operating point.
#[message("harness")]
pub(crate) enum SolverMessage {
    /// A fuse blows.
    FuseBlows { fuse: String, times: Measure },
    /// A wire carries too much.
    WireOverloaded { wire: String, carries: Measure, allowed: Measure },
    /// A relay chatters.
    RelayChatters { relay: String },
    /// A flasher does not flash.
    FlasherTooLittleLoad { flasher: String },
    /// A point did not come to rest.
    NotSettled { point: String, by: Measure },
    /// A bad joint did not come to rest.
    NotSettledAtJoint { by: Measure },
}
