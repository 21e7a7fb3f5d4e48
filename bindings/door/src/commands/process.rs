//! Paint jobs in several coats: laying the next coat, sanding when the window closed.

use layshaft_core::changes::edits;
use layshaft_core::coating::{ProcessAnswer, ProcessAsk, ProcessState, against_it, process_answer, process_of_job};
use layshaft_core::error::{Refusal, Refused};
use layshaft_core::message::{ListStyle, Message};
use layshaft_core::record::{Coat, Process, Product, Stay, StayPlace, went_on};
use layshaft_core::time::Moment;

use super::change;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{EndProcess, LayCoat, SandCoat};
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for LayCoat {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let process: Process = bench.record(&self.process)?;
        let applied_ms = went_on(self.applied_ms, call.moment)?;
        let sheet = sheet_at(bench, &self.process, applied_ms, call.moment)?;
        let Some(number) = sheet.steps.iter().position(|step| step.next) else {
            return conflict("process", DoorMessage::AllOn);
        };
        if !self.anyway.unwrap_or_default() {
            match sheet.state {
                ProcessState::TooSoon => return conflict("appliedMs", sheet.sentence),
                ProcessState::SandFirst => return conflict("process", sheet.sentence),
                _ => {}
            }
        }
        check_order(bench, &self.process, &sheet, applied_ms)?;
        let planned = process.steps.get(number).and_then(|step| step.product.clone());
        if planned.is_none() {
            return Ok(Writing::of(change(bench, &self.process, |process| decal_on(process, number, applied_ms))?));
        }
        let (below, stays) = topmost(bench, &self.process).unzip();
        let product = self.product.clone().or(planned).unwrap_or_default();
        if !self.anyway.unwrap_or_default() {
            check_air(bench, &product, stays.as_deref().unwrap_or_default(), applied_ms, call.moment)?;
        }
        let coat = Coat {
            title: process.title.clone(),
            product,
            applied_ms,
            job: process.job.clone(),
            process: Some(self.process.clone()),
            step: u32::try_from(number).ok(),
            stays: stays.map(|stays| carried_on(&stays, applied_ms)).unwrap_or_default(),
            ..Coat::default()
        };
        let mut writing = edits(call.id, &coat.checked()?, None);
        if let Some(below) = below {
            writing.extend(change(bench, &below, |coat: Coat| Coat { ended_ms: Some(applied_ms), ..coat })?);
        }
        Ok(Writing::making(call.id, writing))
    }
}

impl Act for SandCoat {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let sheet = sheet_at(bench, &self.process, call.moment.now_ms, call.moment)?;
        match sheet.state {
            ProcessState::Open | ProcessState::SandFirst | ProcessState::Sanded => {}
            ProcessState::TooSoon => {
                return conflict(
                    "process",
                    Message::joined(ListStyle::Sentences, vec![DoorMessage::TooSoft.into(), sheet.sentence]),
                );
            }
            _ => return conflict("process", DoorMessage::NothingToSand),
        }
        let sanded = |process: Process| Process { sanded_ms: Some(call.moment.now_ms), ..process };
        Ok(Writing::of(change(bench, &self.process, sanded)?))
    }
}

impl Act for EndProcess {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let ended = |process: Process| Process { ended_ms: Some(call.moment.now_ms), ..process };
        Ok(Writing::of(change(bench, &self.process, ended)?))
    }
}

/// Refuses a clock of its own to a job whose coats are still to come: each coat that is noted starts its clock.
pub(super) fn check_has_no_coats_to_come(bench: &Bench, job: &str, moment: &Moment) -> Result<(), Refusal> {
    match process_of_job(&bench.bike, job, moment).and_then(|sheet| sheet.steps.into_iter().find(|step| step.next)) {
        Some(next) => conflict("job", DoorMessage::CoatsToCome { next: next.name }),
        None => Ok(()),
    }
}

fn conflict<T>(field: &str, reason: impl Into<Message>) -> Result<T, Refusal> {
    Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() }.into())
}

/// The paint job as it stood at a moment.
fn sheet_at(bench: &Bench, process: &str, now_ms: i64, moment: &Moment) -> Result<ProcessAnswer, Refusal> {
    let ask = ProcessAsk { process: Some(process.to_owned()), plan: None };
    Ok(process_answer(&bench.bike, &ask, &Moment { now_ms, zone: moment.zone.clone() })?)
}

/// Refuses a coat that would lie under one that is on already.
fn check_order(bench: &Bench, process: &str, sheet: &ProcessAnswer, applied_ms: i64) -> Result<(), Refusal> {
    bench.record::<Process>(process)?;
    match sheet.steps.iter().filter_map(|step| step.laid_ms).max() {
        Some(last_ms) if applied_ms < last_ms => conflict("appliedMs", DoorMessage::BeforeWhatLiesBelow),
        _ => Ok(()),
    }
}

/// Refuses a coat in air that is too cold or too damp for it.
fn check_air(
    bench: &Bench,
    product: &Product,
    stays: &[Stay],
    applied_ms: i64,
    moment: &Moment,
) -> Result<(), Refusal> {
    let then = Moment { now_ms: applied_ms, zone: moment.zone.clone() };
    let against = against_it(&bench.bike, product, stays, &then);
    if against.is_empty() {
        return Ok(());
    }
    let reasons = against.into_iter().map(|finding| finding.text).collect();
    conflict("process", Message::joined(ListStyle::Sentences, reasons))
}

fn decal_on(mut process: Process, number: usize, on_ms: i64) -> Process {
    if let Some(step) = process.steps.get_mut(number) {
        step.done_ms = Some(on_ms);
    }
    process
}

/// The topmost coat of a paint job with its stays.
fn topmost(bench: &Bench, process: &str) -> Option<(String, Vec<Stay>)> {
    let of_it = bench.bike.coats.iter().filter(|(_, coat)| coat.process.as_deref() == Some(process));
    let top = of_it.max_by_key(|(_, coat)| (coat.step, coat.applied_ms));
    top.map(|(id, coat)| (id.clone(), coat.stays.clone()))
}

/// The part stays where it is when the next coat goes on.
fn carried_on(stays: &[Stay], applied_ms: i64) -> Vec<Stay> {
    let now = stays.iter().filter(|stay| stay.from_ms <= applied_ms).max_by_key(|stay| stay.from_ms);
    let elsewhere = now.filter(|stay| stay.place != StayPlace::Garage);
    elsewhere.map(|stay| Stay { from_ms: applied_ms, ..stay.clone() }).into_iter().collect()
}
