//! What the tyres cannot be worked out with.

use layshaft_wire::message;

use crate::time::Day;

/// A reason, label or help of a refusal.
#[message("tyres-refused")]
pub(crate) enum TyresRefused {
    /// A week that is still to come.
    StillToCome { code: String, today: Day },
    /// The size.
    LabelSize,
    /// Where it is read.
    EnterSize,
    /// The other size.
    LabelNewSize,
    /// Both sizes.
    LabelSizes,
    /// Both are needed.
    EnterBothSizes,
    /// The rating.
    LabelRating,
    /// How it is written.
    EnterRating,
}
