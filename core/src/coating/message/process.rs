//! What is said about a paint job: the next coat and its window, and what happens when the window closes unused.

use layshaft_wire::message;

use crate::message::{Measure, Message};
use crate::time::LocalTime;

/// A sentence about a paint job.
#[message("coating-process")]
pub(crate) enum ProcessMessage {
    /// A window on the can.
    Can { from: Measure, until: Measure },
    /// A window on the can without an end.
    CanFrom { from: Measure },
    /// The window on the can and here.
    Window { below: String, at: Measure, can: Message, celsius: Measure, here: Message },
    /// The window on the can alone.
    WindowOnCan { below: String, at: Measure, can: Message },
    /// The window on the can, and nothing cures here.
    WindowTooCold { below: String, at: Measure, can: Message, lowest: Measure },
    /// The window on the can, and no end here.
    WindowWithoutEnd { below: String, at: Measure, can: Message },
    /// Nothing is on yet.
    Ready { coat: String },
    /// Nothing is on yet, and the air is bad.
    ReadyBadAir { coat: String },
    /// The coat below is not ready.
    TooSoon { coat: String, from: LocalTime, below: String },
    /// The coat below will not be ready.
    NeverSoon { coat: String, below: String },
    /// The next may go on.
    Open { coat: String },
    /// The next may go on for some time.
    OpenUntil { coat: String, until: LocalTime },
    /// The next is due, but the air is bad.
    OpenBadAir { coat: String },
    /// The next is due for some time, but the air is bad.
    OpenUntilBadAir { coat: String, until: LocalTime },
    /// The window closed unused.
    SandFirst { below: String, coat: String },
    /// The window closed unused at a moment.
    SandFirstSince { below: String, coat: String, since: LocalTime },
    /// Sanded: the next may go on.
    Sanded { coat: String },
    /// Sanded, but the air is bad.
    SandedBadAir { coat: String },
    /// All coats are on.
    AllOn { cured: LocalTime },
    /// All coats are on, and no end is known.
    AllOnWithoutEnd,
    /// All coats are cured.
    Cured,
    /// The next coat would not hold.
    TooLate,
    /// The next coat would not hold since a moment.
    TooLateSince { since: LocalTime },
    /// A decal lies on top: sand beside it.
    SpareDecal,
    /// A decal lies on bare colour.
    DecalOnColour { decal: String },
    /// The sheet names no end of the window.
    WindowUnknown { product: String },
}
