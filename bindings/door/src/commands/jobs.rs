//! Jobs: adding, ordering, doing.

use std::collections::{BTreeMap, BTreeSet};

use layshaft_core::changes::{Edit, edits};
use layshaft_core::error::{Code, Refusal, Refused};
use layshaft_core::message::{List, ListStyle, Message};
use layshaft_core::record::{Job, JobState, Part};

use super::change;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{AddJob, BeginJob, ChangeJob, LackTool, PutJobAway, TickStep};
use crate::message::DoorMessage;
use crate::query::JobTool;
use crate::write::Writing;

/// The job when what it follows exists and it does not come to follow itself.
fn placed(bench: &Bench, id: &str, job: &Job) -> Result<Job, Refusal> {
    let job = job.clone().checked()?;
    for before in &job.after {
        bench.record::<Job>(before)?;
    }
    if let Some(through) = job.after.iter().find(|before| follows(&bench.bike.jobs, before, id)) {
        let title = bench.record::<Job>(through).map(|job| job.title).unwrap_or_default();
        return Err(Refused::Conflict {
            field: "after".to_owned(),
            reason: DoorMessage::CannotFollow { job: job.title.clone(), other: title }.into(),
        }
        .into());
    }
    Ok(job)
}

/// Whether `job` is `target` or follows it, near or far.
pub(super) fn follows(jobs: &BTreeMap<String, Job>, job: &str, target: &str) -> bool {
    let mut open = vec![job.to_owned()];
    let mut looked_at = BTreeSet::new();
    while let Some(next) = open.pop() {
        if next == target {
            return true;
        }
        if looked_at.insert(next.clone()) {
            open.extend(jobs.get(&next).map(|job| job.after.clone()).unwrap_or_default());
        }
    }
    false
}

/// A rank after all others.
pub(super) fn last_rank(jobs: &BTreeMap<String, Job>) -> f64 {
    jobs.values().map(|job| job.rank).fold(0.0, f64::max) + 1.0
}

impl Act for AddJob {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let job = Job { rank: last_rank(&bench.bike.jobs), ..placed(bench, call.id, &self.job.clone().into())? };
        Ok(Writing::making(call.id, edits(call.id, &job, None)))
    }
}

impl Act for ChangeJob {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let job = placed(bench, &self.id, &self.job)?;
        let shown = bench.bike.jobs.get(&self.id).map(|shown| &shown.after);
        // The order that goes through a job put away is kept, so that it holds again when that job comes back.
        let after = |stored: Job| if Some(&job.after) == shown { stored.after } else { job.after.clone() };
        Ok(Writing::of(change(bench, &self.id, |stored| Job { after: after(stored), ..job.clone() })?))
    }
}

impl Act for PutJobAway {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let away: Job = bench.record(&self.id)?;
        let named = |id: &String| bench.bike.jobs.get(id).map(|job| Message::as_entered(&job.title));
        let before: Vec<Message> =
            bench.bike.jobs.get(&self.id).into_iter().flat_map(|job| &job.after).filter_map(named).collect();
        let followers =
            bench.bike.jobs.iter().filter(|(_, job)| job.state != JobState::Done && job.after.contains(&self.id));
        let notes = followers.map(|(_, job)| match before.is_empty() {
            true => DoorMessage::FollowsNothing { job: job.title.clone(), away: away.title.clone() }.into(),
            false => {
                DoorMessage::FollowsNow { job: job.title.clone(), before: List(ListStyle::And, before.clone()) }.into()
            }
        });
        Ok(Writing { notes: notes.collect(), ..Writing::of(vec![Edit::gone::<Job>(&self.id, true)]) })
    }
}

impl Act for BeginJob {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(change(bench, &self.id, |job: Job| begun(job, call))?))
    }
}

impl Act for TickStep {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let job: Job = bench.record(&self.id)?;
        let most = u32::try_from(job.steps.len()).unwrap_or(u32::MAX);
        let steps_done = self.steps_done.min(most);
        let ticked = |job: Job| Job { steps_done, ..if steps_done > 0 { begun(job, call) } else { job } };
        Ok(Writing::of(change(bench, &self.id, ticked)?))
    }
}

/// An open job as it stands once somebody is at it. A job that was begun before keeps the moment of its beginning.
fn begun(job: Job, call: &Call) -> Job {
    match job.state {
        JobState::Open => Job { state: JobState::Begun, begun_ms: job.begun_ms.or(Some(call.moment.now_ms)), ..job },
        JobState::Begun | JobState::Done => job,
    }
}

impl Act for LackTool {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let job: Job = bench.record(&self.id)?;
        let tools = bench.tools_of(&job);
        match tools.iter().find(|tool| tool.name == self.tool.trim()) {
            None => {
                Err(Refusal::new(Code::Unknown, DoorMessage::NoSuchTool { job: job.title, tool: self.tool.clone() }))
            }
            Some(JobTool { part: Some(_), .. }) => {
                let reason = DoorMessage::ToolListed { tool: self.tool.clone() }.into();
                Err(Refused::Conflict { field: "tool".to_owned(), reason }.into())
            }
            Some(tool) => {
                let part = Part { title: tool.name.clone(), tool: Some(true), ..Part::default() }.checked()?;
                let needs = |job: Job| Job { parts: [job.parts, vec![call.id.to_owned()]].concat(), ..job };
                let mut writing = edits(call.id, &part, None);
                writing.extend(change(bench, &self.id, needs)?);
                Ok(Writing::making(call.id, writing))
            }
        }
    }
}
