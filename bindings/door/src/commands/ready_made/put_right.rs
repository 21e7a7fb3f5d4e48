//! What was found becomes a job: the ready-made one, or a plain one with how to see that it is right again.

use layshaft_core::changes::{Edit, edits};
use layshaft_core::check::cut_to_title;
use layshaft_core::error::{Refusal, Refused};
use layshaft_core::ready_made::{NeededPart, ReadyMade, ready_made};
use layshaft_core::record::{Bike, Job, JobReason, JobState, job_for};
use layshaft_core::ripple::propose;
use layshaft_core::units::Unit;

use super::placing::Placing;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::PutRight;
use crate::commands::change;
use crate::commands::jobs::last_rank;
use crate::found::{Work, nameless, parts_for, work_on};
use crate::message::DoorMessage;
use crate::write::Writing;

/// Hands-on time where nobody has an estimate, minutes: an assumption of ours, which the answer says.
const ASSUMED_MINUTES: f64 = 60.0;

impl Act for PutRight {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let work = work_on(&bench.bike, &self.reason)?;
        let build = Bike { fitted: propose(&bench.bike, &self.proposals)?, ..bench.bike.clone() };
        if let Some(open) = job_for(&bench.bike.jobs, &self.reason).filter(|job| job.state != JobState::Done) {
            let reason = DoorMessage::PutRightAlready { job: open.title }.into();
            return Err(Refused::Conflict { field: "reason".to_owned(), reason }.into());
        }
        match &work.ready_made {
            None => self.plain(bench, call, work),
            Some(ready) => match open_like(bench, ready) {
                Some((id, job)) => {
                    let notes = vec![DoorMessage::TakesOn { job: job.title.clone() }.into()];
                    Ok(Writing { notes, ..Writing::making(id, self.for_this(bench, id)?) })
                }
                None => self.known(bench, &build, call, ready),
            },
        }
    }
}

/// A job of the bike that was made from this ready-made one and is not done.
pub(super) fn open_like<'a>(bench: &'a Bench, ready: &ReadyMade) -> Option<(&'a String, &'a Job)> {
    let like = |job: &Job| job.state != JobState::Done && job.ready_made.as_ref() == Some(&ready.id);
    bench.bike.jobs.iter().find(|(_, job)| like(job))
}

impl PutRight {
    /// A job that is there has one reason more, and waits for what was wanted for it.
    fn for_this(&self, bench: &Bench, id: &str) -> Result<Vec<Edit>, Refusal> {
        let mut wanted = parts_for(&bench.bike, &self.reason);
        change(bench, id, |job: Job| {
            wanted.retain(|part| !job.parts.contains(part));
            let reasons = [job.reasons, self.reasons()].concat();
            Job { reasons, parts: [job.parts, wanted].concat(), ..job }
        })
    }

    fn known(&self, bench: &Bench, build: &Bike, call: &Call, ready: &ReadyMade) -> Result<Writing, Refusal> {
        let known = ready_made();
        let mut placing = Placing::among(build, &known);
        let parts = parts_for(&bench.bike, &self.reason);
        let job = Job { reasons: self.reasons(), parts, ..ready.job.clone() };
        let needs = self.needs(&bench.bike, build, ready);
        placing.add(call.id.to_owned(), &ReadyMade { job, needs, ..ready.clone() });
        let (notes, edits) = (placing.notes(), placing.edits(bench)?);
        Ok(Writing { notes, ..Writing::making(call.id, edits) })
    }

    /// The parts that the job asks for. A change asks only for what it changes.
    fn needs(&self, bike: &Bike, build: &Bike, ready: &ReadyMade) -> Vec<NeededPart> {
        let changed = |need: &&NeededPart| self.proposals.is_empty() || need.differs(bike, build);
        ready.needs.iter().filter(changed).cloned().collect()
    }

    fn plain(&self, bench: &Bench, call: &Call, work: Work) -> Result<Writing, Refusal> {
        let named = || work.title.entered().map(str::to_owned);
        let title = cut_to_title(&self.title.clone().or_else(named).ok_or_else(nameless)?);
        let (rank, hands_on_minutes) = (last_rank(&bench.bike.jobs), work.minutes.unwrap_or(ASSUMED_MINUTES));
        let (steps, parts) = (work.proof, parts_for(&bench.bike, &self.reason));
        let reasons = self.reasons();
        let job = Job { title, rank, hands_on_minutes, steps, parts, reasons, ..Job::default() }.checked()?;
        let assumed = DoorMessage::MinutesAssumed { minutes: Unit::Minute.of(hands_on_minutes) };
        let notes = if work.minutes.is_none() { vec![assumed.into()] } else { Vec::new() };
        Ok(Writing { notes, ..Writing::making(call.id, edits(call.id, &job, None)) })
    }

    fn reasons(&self) -> Vec<JobReason> {
        vec![self.reason.clone()]
    }
}
