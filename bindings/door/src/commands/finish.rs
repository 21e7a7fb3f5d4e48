//! Finishing a job: the work, the clock of its coat, its parts and how it went are one fact of one moment. And opening it again.

use layshaft_core::changes::{Edit, edits};
use layshaft_core::error::{Refusal, Refused};
use layshaft_core::record::{Coat, Job, JobState, Part, PartState, Stay, StayPlace, went_on};

use super::process::check_has_no_coats_to_come;
use super::{change, changed};
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{FinishJob, ReopenJob, StartClock};
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for FinishJob {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let job: Job = bench.record(&self.id)?;
        let done = job.clone().done(call.moment.now_ms, self.minutes_taken, self.note.clone())?;
        let mut writing = changed(bench, &self.id, &done);
        for part in &self.parts_fitted {
            writing.extend(fitted(bench, &job, part)?);
        }
        match &self.start_clock {
            None => Ok(Writing::of(writing)),
            Some(clock) => {
                check_has_no_coats_to_come(bench, &self.id, call.moment)?;
                writing.extend(edits(call.id, &clock.coat(&self.id, &job, call)?, None));
                Ok(Writing::making(call.id, writing))
            }
        }
    }
}

/// A part of the job goes on the bike.
fn fitted(bench: &Bench, job: &Job, id: &str) -> Result<Vec<Edit>, Refusal> {
    let part: Part = bench.record(id)?;
    if !job.parts.iter().any(|own| own == id) {
        let reason = DoorMessage::NotItsPart { job: job.title.clone(), part: part.title }.into();
        return Err(Refused::Conflict { field: "partsFitted".to_owned(), reason }.into());
    }
    change(bench, id, |part: Part| Part { state: PartState::Fitted, ..part })
}

impl StartClock {
    /// The coat that starts to cure.
    fn coat(&self, id: &str, job: &Job, call: &Call) -> Result<Coat, Refusal> {
        let applied_ms = went_on(self.started_ms, call.moment)?;
        let place = self.place.filter(|place| *place != StayPlace::Garage || self.celsius.is_some());
        let stays = place.map(|place| Stay { from_ms: applied_ms, place, celsius: self.celsius }).into_iter().collect();
        let coat = Coat {
            title: self.title.clone().unwrap_or_else(|| job.title.clone()),
            product: self.product.clone(),
            applied_ms,
            job: Some(id.to_owned()),
            stays,
            ..Coat::default()
        };
        Ok(coat.checked()?)
    }
}

impl Act for ReopenJob {
    /// What the finishing said of the job is unsaid. A coat stays on, whatever becomes of the job, and so does a part.
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let unsaid = |job: Job| Job {
            state: JobState::Open,
            done_ms: None,
            steps_done: 0,
            begun_ms: None,
            minutes_taken: None,
            note: None,
            ..job
        };
        let running =
            bench.bike.coats.values().filter(|coat| coat.job.as_ref() == Some(&self.id) && coat.ended_ms.is_none());
        let notes = running.map(|coat| DoorMessage::ClockGoesOn { coat: coat.title.clone() }.into()).collect();
        Ok(Writing { notes, ..Writing::of(change(bench, &self.id, unsaid)?) })
    }
}
