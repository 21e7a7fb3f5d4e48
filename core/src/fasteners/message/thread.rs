//! Families of threads, what tells a thread apart, and what is said when one is looked for.

use layshaft_wire::message;

use crate::message::{List, Measure};

/// A family of threads, a hint, or a sentence about which thread it is.
#[message("fasteners-thread")]
pub(crate) enum ThreadMessage {
    /// ISO metric, coarse pitch.
    FamilyMetricCoarse,
    /// ISO metric, fine pitch.
    FamilyMetricFine,
    /// Old Japanese pitches.
    FamilyOldJis,
    /// Unified coarse.
    FamilyUnc,
    /// Unified fine.
    FamilyUnf,
    /// British Standard Whitworth.
    FamilyWhitworth,
    /// British Standard Fine.
    FamilyBsf,
    /// British cycle thread.
    FamilyCycle,
    /// Hint: M6.
    HintMetricSix,
    /// Hint: M8.
    HintMetricEight,
    /// Hint: M10 × 1.25.
    HintMetricTen,
    /// Hint: M12 × 1.25.
    HintMetricTwelve,
    /// Hint: M10 × 1.
    HintBanjo,
    /// Hint: M14 × 1.25.
    HintPlug,
    /// Hint: old Japanese pitches.
    HintOldJis,
    /// Hint: Whitworth.
    HintWhitworth,
    /// Hint: British Standard Fine.
    HintBsf,
    /// Hint: cycle thread.
    HintCycle,
    /// No thread fits.
    None,
    /// Several threads fit.
    Several { threads: List },
    /// The property class is not known.
    MissingClass,
    /// There is no table of heads for it.
    MissingSeat { thread: String },
    /// The chosen thread is far from what was measured.
    NotNear { thread: String },
    /// The pitch is given in several ways.
    PitchOneWay,
    /// The pitch leaves no core.
    NoCore { pitch: Measure, diameter: Measure },
    /// The nut thread is wider than the screw.
    NutTooWide { flank: Measure, diameter: Measure },
    /// Where the tables come from.
    Source,
}
