//! The answer about a process: which coat is next, from when and until when, and what has to wait.

use super::cure::mean_celsius;
use super::process_words::{self, Next, Window};
use crate::coating::formulas::{ClimateLog, Pace, hours_between};
use crate::coating::judge::{OnHold, Paint, Walked, all_cured_ms, on_hold, paint_needs, together, walk};
use crate::coating::message::CoatingMessage;
use crate::coating::{ProcessAnswer, ProcessAsk, ProcessState, StepAnswer};
use crate::error::Refused;
use crate::message::Message;
use crate::record::{Bike, JobState, Layer, Process, ProcessStep, area_of, laid};
use crate::time::Moment;

/// The window for what goes on a paint, on the can and here, in one sentence.
fn window(below: &Paint, layer: Layer) -> Option<Message> {
    let product = below.product;
    let (from_hours, from_ms) = match layer {
        Layer::Decal => {
            let handle = product.handle_hours.or(product.touch_dry_hours).unwrap_or_default();
            (below.opening_hours()?.max(handle), below.bears_decal_ms())
        }
        _ => (below.opening_hours()?, below.opens_ms()),
    };
    let until_ms = below.shuts_ms();
    let here = |at_ms| hours_between(below.on_ms, at_ms);
    Some(process_words::window(&Window {
        below: below.name,
        at_celsius: Pace::of(product).at_celsius,
        on_can: (from_hours, product.recoat_to_hours),
        here: (from_ms.map(here), until_ms.map(here)),
        celsius_here: until_ms.or(from_ms).and_then(|end_ms| mean_celsius(&below.climate, below.on_ms, end_ms)),
        lowest_celsius: product.lowest_celsius,
    }))
}

/// A step with its window, as the page shows it.
fn shown(step: &ProcessStep, walked: &Walked, next: bool) -> StepAnswer {
    StepAnswer {
        name: step.name.clone(),
        layer: step.layer,
        product: step.product.as_ref().map(|product| product.name.clone()),
        coat: walked.coat.map(|(id, _)| id.clone()),
        laid_ms: walked.laid_ms,
        from_ms: walked.from_ms.filter(|from_ms| *from_ms > i64::MIN),
        until_ms: walked.below.as_ref().and_then(Paint::shuts_ms),
        reason: walked.below.as_ref().and_then(|paint| window(paint, step.layer)),
        next,
    }
}

/// The page of a process, or of a plan that would begin now.
///
/// Refused: neither or both of them, an id that the bike does not have, a plan that [`Process::checked`] refuses.
pub fn process_answer(bike: &Bike, ask: &ProcessAsk, moment: &Moment) -> Result<ProcessAnswer, Refused> {
    match (&ask.process, &ask.plan) {
        (Some(id), None) => match bike.processes.get(id) {
            Some(process) => Ok(lay_out(bike, Some(id), process.clone().checked()?, moment)),
            None => Err(Refused::Unknown { what: CoatingMessage::Process.into(), id: id.clone() }),
        },
        (None, Some(plan)) => Ok(lay_out(bike, None, plan.clone().checked()?, moment)),
        (Some(_), Some(_)) => {
            Err(Refused::Conflict { field: "plan".to_owned(), reason: CoatingMessage::NotProcessAndPlan.into() })
        }
        (None, None) => Err(Refused::Missing {
            field: "process".to_owned(),
            label: CoatingMessage::ProcessField.into(),
            help: CoatingMessage::ChooseProcessOrPlan.into(),
        }),
    }
}

/// The paint jobs that are under way: not ended, not waiting for their job to begin, and cured for no longer than seven days.
/// The next to do something for comes first.
pub fn running_processes(bike: &Bike, moment: &Moment) -> Vec<ProcessAnswer> {
    const LINGERS_MS: i64 = 7 * 24 * 3_600_000;
    let mut sheets: Vec<ProcessAnswer> = not_ended(bike, moment)
        .filter(|sheet| !sheet.stands_by(bike))
        .filter(|sheet| {
            let cured_ms = sheet.cured_ms.filter(|_| sheet.state == ProcessState::Cured);
            cured_ms.is_none_or(|cured_ms| moment.now_ms.saturating_sub(cured_ms) <= LINGERS_MS)
        })
        .collect();
    sheets.sort_by_key(|sheet| {
        let next = sheet.steps.iter().find(|step| step.next);
        (next.is_none(), next.and_then(|step| step.until_ms).unwrap_or(i64::MAX), sheet.cured_ms)
    });
    sheets
}

/// The paint jobs that are neither ended nor cured, begun or not.
pub(crate) fn unfinished_processes(bike: &Bike, moment: &Moment) -> Vec<ProcessAnswer> {
    not_ended(bike, moment).filter(|sheet| sheet.state != ProcessState::Cured).collect()
}

/// The coats that a job is done in; none once that paint job was ended.
pub fn process_of_job(bike: &Bike, job: &str, moment: &Moment) -> Option<ProcessAnswer> {
    let of_it = |process: &Process| process.job.as_deref() == Some(job) && process.ended_ms.is_none();
    let (id, process) = bike.processes.iter().find(|(_, process)| of_it(process))?;
    Some(lay_out(bike, Some(id), process.clone().checked().ok()?, moment))
}

fn not_ended(bike: &Bike, moment: &Moment) -> impl Iterator<Item = ProcessAnswer> {
    let open = bike.processes.iter().filter(|(_, process)| process.ended_ms.is_none());
    open.filter_map(|(id, process)| Some(lay_out(bike, Some(id), process.clone().checked().ok()?, moment)))
}

impl ProcessAnswer {
    /// Whether it waits for its job to begin: nothing is on, and the job is open, or put away.
    pub fn stands_by(&self, bike: &Bike) -> bool {
        let waits = |job: &String| bike.jobs.get(job).is_none_or(|job| job.state == JobState::Open);
        self.state == ProcessState::Ready && self.process.job.as_ref().is_some_and(waits)
    }
}

fn lay_out(bike: &Bike, id: Option<&String>, process: Process, moment: &Moment) -> ProcessAnswer {
    let climate = ClimateLog::of(bike, moment);
    let now_ms = climate.now_ms();
    let on = id.map(|id| laid(id, bike.coats.iter())).unwrap_or_default();
    let walked = walk(&on, &process, &climate);
    let number = walked.iter().position(|step| step.laid_ms.is_none());
    let steps: Vec<StepAnswer> = process
        .steps
        .iter()
        .zip(&walked)
        .enumerate()
        .map(|(at, (step, walked))| shown(step, walked, number == Some(at)))
        .collect();
    let next = number.and_then(|number| steps.get(number).zip(walked.get(number)));
    let below = next.and_then(|(_, walked)| walked.below.as_ref());
    let cured_ms = all_cured_ms(&process, &walked);
    let state = match next {
        Some((sheet, _)) => state_of(sheet, below, &process, now_ms),
        None if cured_ms.is_some_and(|cured_ms| cured_ms <= now_ms) => ProcessState::Cured,
        None => ProcessState::AllOn,
    };
    // The next coat goes on where the part stands.
    let there = below.map_or(&climate, |below| &below.climate);
    let (against, before) = number
        .and_then(|number| process.steps.get(number)?.product.as_ref())
        .map(|product| super::cure::before_it_goes_on(product, there, moment))
        .unwrap_or_default();
    let said = Next {
        state,
        in_this_air: against.is_empty(),
        step: next.map(|(sheet, _)| sheet),
        below: below.map(|below| below.name),
        over_decal: over_decal(&steps),
        cured_ms,
    };
    let waits_for = |job: &crate::record::Job| process.job.as_ref().is_some_and(|id| job.after.contains(id));
    ProcessAnswer {
        id: id.cloned(),
        state,
        sentence: process_words::sentence(&said, &moment.zone),
        cured_ms,
        on_hold: holds(&walked, &process, next.is_some().then_some(cured_ms), now_ms),
        jobs_waiting: if state == ProcessState::Cured {
            Vec::new()
        } else {
            bike.jobs.values().filter(|job| waits_for(job)).map(|job| job.title.clone()).collect()
        },
        against,
        before,
        findings: process_words::findings(&said, &process, &moment.zone),
        square_metres: area_of(&process.surfaces).ok(),
        paint: paint_needs(&process),
        steps,
        process,
    }
}

fn state_of(step: &StepAnswer, below: Option<&Paint>, process: &Process, now_ms: i64) -> ProcessState {
    let Some(below) = below else { return ProcessState::Ready };
    let sanded = process.sanded_ms.is_some_and(|sanded_ms| (below.on_ms..=now_ms).contains(&sanded_ms));
    let passed = |at_ms: Option<i64>| at_ms.is_some_and(|at_ms| at_ms <= now_ms);
    match (passed(step.until_ms), passed(step.from_ms)) {
        (true, _) if sanded => ProcessState::Sanded,
        (true, _) => ProcessState::SandFirst,
        (false, true) => ProcessState::Open,
        (false, false) => ProcessState::TooSoon,
    }
}

/// Whether a decal lies bare, so that sanding has to spare it.
fn over_decal(steps: &[StepAnswer]) -> bool {
    let on = steps.iter().rev().find(|step| step.laid_ms.is_some());
    on.is_some_and(|step| step.layer == Layer::Decal)
}

/// What waits for the coats that are on. While steps are still to come, it waits for the end of all of them.
fn holds(walked: &[Walked], process: &Process, all_ms: Option<Option<i64>>, now_ms: i64) -> Vec<OnHold> {
    let mut holds = Vec::new();
    for own in walked.iter().filter(|step| step.coat.is_some()).filter_map(|step| step.own.as_ref()) {
        let cured_ms = own.cured_ms();
        let ahead = |at_ms: Option<i64>| at_ms.is_none_or(|at_ms| at_ms > now_ms);
        if !ahead(cured_ms) && all_ms.is_none() {
            continue;
        }
        let handle_ms = own.reaches(own.product.handle_hours);
        let handle = own.product.handle_hours.is_some() && ahead(handle_ms);
        let until_ms = all_ms.unwrap_or(cured_ms);
        holds = together(holds, on_hold(own.product.product, process.part, (handle, handle_ms), until_ms));
    }
    holds
}

#[cfg(test)]
mod tests;
