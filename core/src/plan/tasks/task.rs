//! A task: a job that can be planned, with all that a plan has to respect.

use super::resources::Takes;
use super::waits::WaitRule;
use crate::plan::hours::HoursAsked;
use crate::record::{Job, WorkSpot};
use crate::time::MINUTE_MS;

/// Sanding a coat whose window has closed takes so long: an assumption of ours, which is said where it counts.
pub(crate) const SANDING_MS: i64 = 30 * MINUTE_MS;

/// A job that can be planned.
#[derive(Clone, Debug)]
pub(crate) struct Task<'a> {
    /// The job's id.
    pub(crate) id: &'a str,
    /// The job.
    pub(crate) job: &'a Job,
    /// Hands-on time left, milliseconds.
    pub(crate) work_ms: i64,
    /// Tasks that must be done, with their waits over, before. Each stands earlier in the list of tasks.
    pub(crate) after: Vec<usize>,
    /// Not before this instant, whatever the other tasks do.
    pub(crate) not_before_ms: i64,
    /// The same without the parcels whose delivery varies.
    pub(crate) fixed_ms: i64,
    /// What sets that instant.
    pub(crate) set_by: ReleaseCause,
    /// The latest instant that a parcel or a running wait gives, also where it has passed.
    pub(crate) freed_ms: Option<i64>,
    /// The wait after it.
    pub(crate) wait: WaitRule,
    /// What it asks of the hours in which it is done.
    pub(crate) kind: HoursAsked,
    /// What it takes that there is only one of.
    pub(crate) takes: Takes,
    /// It is done in one stretch.
    pub(crate) in_one_go: bool,
    /// Tasks that it must begin after within a time from their end, milliseconds: a subset of `after`.
    pub(crate) within: Vec<(usize, i64)>,
    /// A task of the plan must begin within a time from its end.
    pub(crate) limits: bool,
    /// It must begin by then: what it follows is done, and its time limit runs.
    pub(crate) begin_by_ms: Option<i64>,
    /// It cannot be scheduled, now or later; a finding says why.
    pub(crate) never: bool,
}

/// What keeps work from beginning earlier.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum ReleaseCause {
    /// Nothing but today's date.
    Now,
    /// A part that is on its way, by its title.
    Part(String),
    /// The wait after a job that is done, by the job's id.
    Wait(String),
    /// The coat below, on what.
    Coat(String),
    /// A spot in which something stands, by the title of the job that put it there.
    Spot(WorkSpot, String),
}

impl Task<'_> {
    /// Takes as long as sanding more.
    pub(crate) fn sands(&mut self) {
        self.work_ms += SANDING_MS;
    }

    pub(crate) fn wait_for(&mut self, instant_ms: i64, holder: ReleaseCause) {
        self.freed_ms = self.freed_ms.max(Some(instant_ms));
        if instant_ms > self.not_before_ms {
            self.not_before_ms = instant_ms;
            self.set_by = holder;
        }
    }
}
