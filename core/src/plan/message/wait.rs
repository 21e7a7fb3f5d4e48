//! What passes without hands, and what keeps a job from beginning.

use layshaft_wire::message;

use crate::message::{Message, choices};
use crate::record::WorkSpot;

choices! { WorkSpot; }

/// The name of a wait that the owner has not named, or what a job waits for.
#[message("plan")]
pub(crate) enum PlanWaitMessage {
    /// A coat cures, or the product that it is of.
    Cures { what: String },
    /// The coats of a paint job cure.
    CoatsCure,
    /// More coats of a paint job have to go on.
    CoatsToCome,
    /// The next coat may not go on yet.
    NextCoatWaits,
    /// Something stands in a spot.
    SpotIsTaken { spot: WorkSpot },
    /// A job waits for the coat that the next one goes onto.
    CoatBelowDries,
    /// A job waits for a spot in which another job has left something.
    SpotTakenBy { spot: WorkSpot, job: String },
    /// A job waits for the wait after another job.
    WaitAfter { job: String, wait: Message },
}
