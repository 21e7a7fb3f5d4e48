//! The coats of a job: which it is done in, chosen before the first is on. Coats without a job get the one that paints such a part.

use layshaft_core::changes::edits;
use layshaft_core::coating::{ProcessState, process_of_job, process_plan};
use layshaft_core::error::{Refusal, Refused};
use layshaft_core::ready_made::{ReadyMade, ready_made};
use layshaft_core::record::{Job, PaintedPart, Process, ProcessStep};

use super::placing::Placing;
use super::put_right::open_like;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::StartProcess;
use crate::commands::change;
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for StartProcess {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let process = self.process.clone().checked()?;
        let steps = process.steps.into_iter().map(|step| ProcessStep { done_ms: None, ..step }).collect();
        let fresh = Process { steps, sanded_ms: None, ended_ms: None, ..process };
        if let Some(job) = fresh.job.clone() {
            return given(bench, call, &job, fresh);
        }
        let known = ready_made();
        let Some(ready) = that_paints(&known, fresh.part) else {
            return Ok(Writing::making(call.id, edits(call.id, &fresh, None)));
        };
        match open_like(bench, ready).filter(|(id, _)| may_change(bench, call, id)) {
            Some((id, job)) => {
                let notes = vec![DoorMessage::HasTheseCoats { job: job.title.clone() }.into()];
                Ok(Writing { notes, ..given(bench, call, id, fresh)? })
            }
            None => {
                let (mut placing, job) = (Placing::among(&bench.bike, &known), format!("{}-job", call.id));
                placing.add(job.clone(), ready);
                placing.lay(call.id.to_owned(), Process { job: Some(job), ..fresh });
                let (mut notes, edits) = (placing.notes(), placing.edits(bench)?);
                notes.insert(0, DoorMessage::JobForCoats { job: ready.job.title.clone() }.into());
                Ok(Writing { notes, ..Writing::making(call.id, edits) })
            }
        }
    }
}

/// A job of the bike is done in these coats. Those that it had go, unless they are under way.
fn given(bench: &Bench, call: &Call, id: &str, fresh: Process) -> Result<Writing, Refusal> {
    let job: Job = bench.record(id)?;
    let fresh = Process { job: Some(id.to_owned()), ..fresh };
    let making = |id: &str| Writing::making(id, edits(id, &fresh, None));
    let Some(had) = process_of_job(&bench.bike, id, call.moment) else { return Ok(making(call.id)) };
    let Some(had_id) = &had.id else { return Ok(making(call.id)) };
    match had.state {
        ProcessState::Ready => Ok(Writing::making(had_id, change(bench, had_id, |_: Process| fresh.clone())?)),
        ProcessState::Cured => {
            let mut writing = edits(call.id, &fresh, None);
            let over = |process: Process| Process { ended_ms: Some(call.moment.now_ms), ..process };
            writing.extend(change(bench, had_id, over)?);
            Ok(Writing::making(call.id, writing))
        }
        _ => {
            let reason = DoorMessage::CoatsUnderWay { job: job.title }.into();
            Err(Refused::Conflict { field: "job".to_owned(), reason }.into())
        }
    }
}

/// Whether the coats of a job can still be chosen.
fn may_change(bench: &Bench, call: &Call, job: &str) -> bool {
    let had = process_of_job(&bench.bike, job, call.moment);
    had.is_none_or(|had| had.state == ProcessState::Ready)
}

/// The ready-made job that paints such a part; what none is made for is painted as a panel is.
fn that_paints(known: &[ReadyMade], part: PaintedPart) -> Option<&ReadyMade> {
    let paints = |part: PaintedPart| {
        let first = move |ready: &&ReadyMade| {
            ready.coats.first().and_then(|plan| process_plan(plan)).is_some_and(|plan| plan.part == part)
        };
        known.iter().find(first)
    };
    paints(part).or_else(|| paints(PaintedPart::SidePanel))
}
