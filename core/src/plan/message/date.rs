//! What holds the ready date.

use layshaft_wire::message;

use crate::message::{Duration, List, Message};
use crate::time::{Day, LocalTime};

/// What holds the ready date, or why there is none.
#[message("plan")]
pub(crate) enum PlanDateMessage {
    /// Nothing is planned yet.
    NoJobs,
    /// Nothing is left to do or to wait for.
    AllDone,
    /// There is no date, for no reason that a finding names.
    NoDate,
    /// There is no date, for a reason that a finding names.
    NoDateBecause { finding: Message },
    /// There is no date, since jobs found no bench time.
    NoDateNoRoom { jobs: usize },
    /// A wait holds the date; whether a parcel is waited for as well.
    WaitHolds { title: String, wait: Message, until: LocalTime, parcels: bool },
    /// A parcel holds the date; whether something cures as well.
    ParcelHolds { part: String, day: Day, waits: bool },
    /// A job that cannot be done in all bench time holds the date.
    HoursHold { job: String, asked: List },
    /// The work that is left holds the date.
    BenchTimeHolds { work: Duration, week: Duration },
}
