//! What never fits into the bench time, and what would help.

use layshaft_wire::message;

use crate::message::{Duration, List};
use crate::time::Day;

/// Why a job can never be placed, or what would help.
#[message("plan")]
pub(crate) enum PlanNeverFitsMessage {
    /// No bench time is of the kind that the job asks for.
    NoOwnTime { job: String, asked: List },
    /// What would help: a helper.
    SayHelper,
    /// What would help: another place, or other bench time.
    BetterAir { asked: List },
    /// What would help: other bench time.
    MoreOwnTime { asked: List },
    /// What is assumed, as no bench time is set.
    NowAssumed,
    /// The job is done in one go and is longer than every stretch of bench time.
    NoStretch { job: String, work: Duration, longest: Duration, day: Day },
    /// The same for a job that cannot be done in all bench time.
    NoOwnStretch { job: String, work: Duration, longest: Duration, day: Day, asked: List },
    /// Two jobs never lie as close together as they must.
    LimitNeverKept { job: String, before: String, limit: Duration },
    /// Why: the wait between them alone is too long.
    WaitTooLong,
    /// What would help: one stretch for both.
    StretchForBoth { both: Duration },
    /// The same for jobs that cannot be done in all bench time.
    OwnStretchForBoth { both: Duration, asked: List },
    /// Several jobs never lie as close together as they must.
    LimitsNeverKept { jobs: List },
    /// A job in such a list.
    Quoted { job: String },
    /// What must soon follow a job cannot be planned.
    LimitWaits { job: String, follower: String },
}
