//! What a job asks of the hours in which it is done, and of the air.

use layshaft_wire::message;

use crate::message::Measure;

/// One thing that a job asks for, as a part of a sentence.
#[message("plan")]
pub(crate) enum PlanAskedMessage {
    /// When it is done: by daylight.
    ByDaylight,
    /// When it is done: with a second pair of hands.
    WithHelper,
    /// When it is done: while noise may be made.
    OutsideQuietHours,
    /// When it is done: not colder than this.
    AtLowest { celsius: Measure },
    /// When it is done: not warmer than this.
    AtHighest { celsius: Measure },
    /// When it is done: not damper than this.
    AtDampest { humidity: Measure },
    /// What it needs: so many degrees or more.
    NeedsLowest { celsius: Measure },
    /// What it needs: so many degrees or less.
    NeedsHighest { celsius: Measure },
    /// What it needs: so much humidity or less.
    NeedsDampest { humidity: Measure },
}
