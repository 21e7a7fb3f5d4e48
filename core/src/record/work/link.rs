//! Which job puts something right.

use std::collections::BTreeMap;

use layshaft_wire::wire;

use super::job::{Job, JobState};
use super::reason::JobReason;

/// A job, as it is named by what it puts right.
#[wire]
pub struct JobLink {
    /// Its id.
    pub job: String,
    /// What is done.
    pub title: String,
    /// How far it is.
    pub state: JobState,
    /// When it was done, milliseconds since 1970 (UTC).
    pub done_ms: Option<i64>,
}

/// The job that puts this right: one that is not done yet, else the one that was done last.
///
/// ```
/// use std::collections::BTreeMap;
/// use layshaft_core::record::{Job, JobReason, JobState, job_for};
/// let horn = JobReason::Item { pack: "gb".to_owned(), item: "horn".to_owned() };
/// let job = |state, done_ms| Job { state, done_ms, reasons: vec![horn.clone()], ..Job::default() };
/// let mut jobs = BTreeMap::from([("old".to_owned(), job(JobState::Done, Some(5)))]);
/// assert_eq!(job_for(&jobs, &horn).unwrap().job, "old");
/// jobs.insert("new".to_owned(), job(JobState::Open, None));
/// assert_eq!(job_for(&jobs, &horn).unwrap().job, "new");
/// ```
pub fn job_for(jobs: &BTreeMap<String, Job>, reason: &JobReason) -> Option<JobLink> {
    jobs_with(jobs, |own| own.same_as(reason)).max_by_key(|link| (link.state != JobState::Done, link.done_ms))
}

/// The jobs that have such a reason.
pub(crate) fn jobs_with(
    jobs: &BTreeMap<String, Job>,
    such: impl Fn(&JobReason) -> bool,
) -> impl Iterator<Item = JobLink> {
    let found = jobs.iter().filter(move |(_, job)| job.reasons.iter().any(&such));
    found.map(|(id, job)| JobLink { job: id.clone(), title: job.title.clone(), state: job.state, done_ms: job.done_ms })
}
