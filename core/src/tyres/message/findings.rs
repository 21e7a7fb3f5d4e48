//! What is worth saying about a tyre.

use layshaft_wire::message;

use crate::message::{Message, choices};
use crate::record::{Construction, End};

choices! { Construction; }

/// A finding or a caution of the tyres.
#[message("tyres-finding")]
pub(crate) enum TyresFinding {
    /// A check that fails.
    Failed { end: End, why: Message },
    /// A check for which something is not known.
    Open { check: Message, why: Message },
    /// A mixture that a regulation forbids.
    MixedForbidden { front: Construction, rear: Construction },
    /// Another mixture.
    Mixed { front: Construction, rear: Construction },
    /// Not the size as made.
    OtherSize { end: End, tyre: String, standard: String },
    /// A lower load index than as made.
    LoadIndexLower { end: End, tyre: String, standard: String },
    /// A lower speed symbol than as made.
    SpeedSymbolLower { end: End, tyre: String, standard: String },
    /// A tube in a tyre marked TL.
    TubeInTubeless,
    /// A tyre marked TL on wire spokes.
    TubelessOnSpokes,
    /// No tyre is known.
    Unknown,
    /// A date code that cannot be right.
    DateUnlikely { reason: Message },
    /// Who decides.
    CautionMakers,
    /// Seating a tyre.
    CautionSeating,
    /// Room round a larger tyre.
    CautionRoom,
    /// New tyres.
    CautionNew,
}
