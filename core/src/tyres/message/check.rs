//! Why a check of a tyre comes out as it does.

use layshaft_wire::message;

use crate::message::{List, Measure};

/// A label or a reason of a check.
#[message("tyres-check")]
pub(crate) enum TyreCheckMessage {
    /// The check of the load.
    LabelLoad,
    /// The check of the speed.
    LabelSpeed,
    /// The check of the rim.
    LabelRim,
    /// The check of the tube.
    LabelTube,
    /// No load index.
    NoLoadIndex,
    /// A load index that the table does not have.
    IndexOutsideTable { index: u32 },
    /// The load on the wheel is not known.
    LoadUnknown { allowed: Measure },
    /// It carries the load.
    Carries { allowed: Measure, load: Measure },
    /// It does not.
    Overloaded { allowed: Measure, load: Measure },
    /// No speed symbol.
    NoSpeedSymbol,
    /// The top speed is not known.
    TopSpeedUnknown { symbol: String },
    /// It is good for the top speed.
    FastEnough { symbol: String, limit: Measure, top: Measure },
    /// The marking says “more than”.
    MoreThan { limit: Measure },
    /// It is not good for the top speed.
    TooFast { symbol: String, limit: Measure, top: Measure },
    /// The width of the rim is not known.
    RimUnknown { least: Measure, most: Measure },
    /// The rim is uncommon.
    RimOutside { least: Measure, most: Measure, rim: Measure },
    /// The rim is common.
    RimInside { least: Measure, most: Measure, rim: Measure },
    /// Marked TT, and no tube.
    NeedsTube,
    /// Wire spokes, and no tube.
    SpokesLeak,
    /// Marked TL, and no tube.
    TubelessRim,
    /// No mark, and no tube.
    NoTube,
    /// Nobody knows whether there is a tube.
    TubeUnknown,
    /// Nobody knows what the tube is marked.
    TubeSizesUnknown,
    /// The tube fits.
    TubeFits { sizes: List },
    /// It does not.
    TubeWrong { sizes: List },
}
