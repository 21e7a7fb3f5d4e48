//! The answer about a process: which coat is next, from when and until when, and what has to wait.

use super::cure::mean_celsius;
use super::process_words::{self, Next, Window};
use crate::coating::formulas::{ClimateLog, Pace, cure_end_ms, hours_between, when_reached};
use crate::coating::judge::{OnHold, on_hold, paint_needs, together};
use crate::coating::message::CoatingMessage;
use crate::coating::{ProcessAnswer, ProcessAsk, ProcessState, StepAnswer};
use crate::error::Refused;
use crate::message::Message;
use crate::record::{Bike, Layer, Process, Product, Stay, area_of, laid};
use crate::time::Moment;

/// The topmost paint at some point of the process.
#[derive(Clone)]
struct Below<'a> {
    name: &'a str,
    product: &'a Product,
    on_ms: i64,
    climate: ClimateLog,
}

impl Below<'_> {
    /// When it has come as far as so many hours on the can.
    fn reaches(&self, hours: Option<f64>) -> Option<i64> {
        when_reached(&Pace::of(self.product), self.on_ms, &[hours?], &self.climate).into_iter().next().flatten()
    }

    /// Hours on the can until the next coat may go on: by its window, else when it may be touched or handled.
    fn opening_hours(&self) -> Option<f64> {
        let product = self.product;
        let known = product.recoat_from_hours.or(product.touch_dry_hours).or(product.handle_hours);
        known.or(product.end_hours())
    }

    fn opens_ms(&self) -> Option<i64> {
        self.reaches(self.opening_hours())
    }

    /// From when a decal may lie on it: it has to bear a finger, and the next coat has to be allowed.
    fn bears_decal_ms(&self) -> Option<i64> {
        let opens_ms = self.opens_ms()?;
        let handle = self.product.handle_hours.or(self.product.touch_dry_hours);
        Some(opens_ms.max(self.reaches(handle).unwrap_or(opens_ms)))
    }

    fn shuts_ms(&self) -> Option<i64> {
        self.reaches(self.product.recoat_to_hours)
    }

    /// The window for what goes on it, on the can and here, in one sentence.
    fn window(&self, layer: Layer) -> Option<Message> {
        let product = self.product;
        let (from_hours, from_ms) = match layer {
            Layer::Decal => {
                let handle = product.handle_hours.or(product.touch_dry_hours).unwrap_or_default();
                (self.opening_hours()?.max(handle), self.bears_decal_ms())
            }
            _ => (self.opening_hours()?, self.opens_ms()),
        };
        let until_ms = self.shuts_ms();
        let here = |at_ms| hours_between(self.on_ms, at_ms);
        Some(process_words::window(&Window {
            below: self.name,
            at_celsius: Pace::of(product).at_celsius,
            on_can: (from_hours, product.recoat_to_hours),
            here: (from_ms.map(here), until_ms.map(here)),
            celsius_here: until_ms.or(from_ms).and_then(|end_ms| mean_celsius(&self.climate, self.on_ms, end_ms)),
            lowest_celsius: product.lowest_celsius,
        }))
    }
}

/// A step as the walk through the process finds it.
struct Walked<'a> {
    sheet: StepAnswer,
    /// The paint below it.
    below: Option<Below<'a>>,
    /// Its own paint, laid or foreseen.
    own: Option<Below<'a>>,
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

/// The processes that run: not ended, and cured for no longer than seven days. The next to do something for comes first.
pub fn running_processes(bike: &Bike, moment: &Moment) -> Vec<ProcessAnswer> {
    const LINGERS_MS: i64 = 7 * 24 * 3_600_000;
    let open = bike.processes.iter().filter(|(_, process)| process.ended_ms.is_none());
    let mut sheets: Vec<ProcessAnswer> = open
        .filter_map(|(id, process)| Some(lay_out(bike, Some(id), process.clone().checked().ok()?, moment)))
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

fn lay_out(bike: &Bike, id: Option<&String>, process: Process, moment: &Moment) -> ProcessAnswer {
    let climate = ClimateLog::of(bike, moment);
    let now_ms = climate.now_ms();
    let walked = walk(bike, id, &process, &climate);
    let next = walked.iter().find(|step| step.sheet.next);
    let ends: Vec<Option<i64>> = walked
        .iter()
        .filter_map(|step| step.own.as_ref())
        .map(|own| cure_end_ms(own.product, own.on_ms, &own.climate))
        .collect();
    let foreseen = process.steps.iter().filter(|step| step.product.is_some()).count() == ends.len();
    let ends: Option<Vec<i64>> = ends.into_iter().collect();
    let cured_ms = ends.filter(|_| foreseen).and_then(|ends| ends.into_iter().max());
    let state = match next {
        Some(step) => state_of(step, &process, now_ms),
        None if cured_ms.is_some_and(|cured_ms| cured_ms <= now_ms) => ProcessState::Cured,
        None => ProcessState::AllOn,
    };
    let next_step = walked.iter().position(|step| step.sheet.next).and_then(|number| process.steps.get(number));
    // The next coat goes on where the part stands.
    let there = next.and_then(|step| step.below.as_ref()).map_or(&climate, |below| &below.climate);
    let (against, before) = next_step
        .and_then(|step| step.product.as_ref())
        .map(|product| super::cure::before_it_goes_on(product, there, moment))
        .unwrap_or_default();
    let said = Next {
        state,
        in_this_air: against.is_empty(),
        step: next.map(|step| &step.sheet),
        below: next.and_then(|step| step.below.as_ref()).map(|below| below.name),
        over_decal: over_decal(&walked),
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
        steps: walked.into_iter().map(|step| step.sheet).collect(),
        process,
    }
}

/// Goes through the steps from the lowest up: what is on stays as it is, the rest is foreseen as early as it may be.
fn walk<'a>(bike: &'a Bike, id: Option<&String>, process: &'a Process, climate: &ClimateLog) -> Vec<Walked<'a>> {
    let now_ms = climate.now_ms();
    let on = id.map(|id| laid(id, bike.coats.iter())).unwrap_or_default();
    let coat_of = |step: usize| on.iter().rev().find(|(of, _, _)| *of == step);
    let laid_ms = |step: usize| match process.steps.get(step) {
        Some(decal) if decal.product.is_none() => decal.done_ms,
        _ => coat_of(step).map(|(_, _, coat)| coat.applied_ms),
    };
    let next = process.next_step(|step| laid_ms(step).is_some());
    let mut walked: Vec<Walked> = Vec::new();
    let mut below: Option<Below> = None;
    let mut stays: Vec<Stay> = Vec::new();
    // When the step before was laid, or is foreseen; none when that cannot be known.
    let mut before_ms = Some(i64::MIN);
    for (number, step) in process.steps.iter().enumerate() {
        let opens_ms = match (&below, step.layer) {
            (None, _) => Some(i64::MIN),
            (Some(paint), Layer::Decal) => paint.bears_decal_ms(),
            (Some(paint), _) => paint.opens_ms(),
        };
        let from_ms = opens_ms.zip(before_ms).map(|(opens_ms, before_ms)| opens_ms.max(before_ms));
        let coat = coat_of(number);
        let at_ms = laid_ms(number).or(from_ms.map(|from_ms| from_ms.max(now_ms)));
        let sheet = StepAnswer {
            name: step.name.clone(),
            layer: step.layer,
            product: step.product.as_ref().map(|product| product.name.clone()),
            coat: coat.map(|(_, id, _)| (*id).clone()),
            laid_ms: laid_ms(number),
            from_ms: from_ms.filter(|from_ms| *from_ms > i64::MIN),
            until_ms: below.as_ref().and_then(Below::shuts_ms),
            reason: below.as_ref().and_then(|paint| paint.window(step.layer)),
            next: next == Some(number),
        };
        if let Some((_, _, coat)) = coat {
            stays.clone_from(&coat.stays);
        }
        let used = coat.map(|(_, _, coat)| &coat.product).or(step.product.as_ref());
        let own = used.zip(at_ms).map(|(product, on_ms)| Below {
            name: &step.name,
            product,
            on_ms,
            climate: climate.with_stays(&stays),
        });
        before_ms = at_ms;
        walked.push(Walked { sheet, below: below.clone(), own: own.clone() });
        if step.product.is_some() {
            below = own;
        }
    }
    walked
}

fn state_of(step: &Walked, process: &Process, now_ms: i64) -> ProcessState {
    let Some(below) = &step.below else { return ProcessState::Ready };
    let sanded = process.sanded_ms.is_some_and(|sanded_ms| (below.on_ms..=now_ms).contains(&sanded_ms));
    let passed = |at_ms: Option<i64>| at_ms.is_some_and(|at_ms| at_ms <= now_ms);
    match (passed(step.sheet.until_ms), passed(step.sheet.from_ms)) {
        (true, _) if sanded => ProcessState::Sanded,
        (true, _) => ProcessState::SandFirst,
        (false, true) => ProcessState::Open,
        (false, false) => ProcessState::TooSoon,
    }
}

/// Whether a decal lies bare, so that sanding has to spare it.
fn over_decal(walked: &[Walked]) -> bool {
    let on = walked.iter().rev().find(|step| step.sheet.laid_ms.is_some());
    on.is_some_and(|step| step.sheet.layer == Layer::Decal)
}

/// What waits for the coats that are on. While steps are still to come, it waits for the end of all of them.
fn holds(walked: &[Walked], process: &Process, all_ms: Option<Option<i64>>, now_ms: i64) -> Vec<OnHold> {
    let mut holds = Vec::new();
    for own in walked.iter().filter(|step| step.sheet.coat.is_some()).filter_map(|step| step.own.as_ref()) {
        let cured_ms = cure_end_ms(own.product, own.on_ms, &own.climate);
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
