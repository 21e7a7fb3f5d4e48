//! A walk through the coats of a paint job, from the lowest up: what is on stays as it is, the rest is foreseen.

use crate::coating::formulas::{ClimateLog, Pace, cure_end_ms, when_reached};
use crate::record::{Bike, Coat, Layer, Process, Product, Stay, laid};

/// The coats of a paint job that are on, each with its step and its id, lowest first.
pub(crate) type CoatsOn<'a> = [(usize, &'a String, &'a Coat)];

/// Paint at some point of a paint job, laid or foreseen.
#[derive(Clone)]
pub(crate) struct Paint<'a> {
    /// Name of its step.
    pub(crate) name: &'a str,
    /// From which can.
    pub(crate) product: &'a Product,
    /// When it goes on, milliseconds since 1970 (UTC).
    pub(crate) on_ms: i64,
    /// The air that it cures in.
    pub(crate) climate: ClimateLog,
}

impl Paint<'_> {
    /// When it has come as far as so many hours on the can.
    pub(crate) fn reaches(&self, hours: Option<f64>) -> Option<i64> {
        when_reached(&Pace::of(self.product), self.on_ms, &[hours?], &self.climate).into_iter().next().flatten()
    }

    /// Hours on the can until the next coat may go on: by its window, else when it may be touched or handled.
    pub(crate) fn opening_hours(&self) -> Option<f64> {
        let product = self.product;
        let known = product.recoat_from_hours.or(product.touch_dry_hours).or(product.handle_hours);
        known.or(product.end_hours())
    }

    pub(crate) fn opens_ms(&self) -> Option<i64> {
        self.reaches(self.opening_hours())
    }

    /// From when a decal may lie on it: it has to bear a finger, and the next coat has to be allowed.
    pub(crate) fn bears_decal_ms(&self) -> Option<i64> {
        let opens_ms = self.opens_ms()?;
        let handle = self.product.handle_hours.or(self.product.touch_dry_hours);
        Some(opens_ms.max(self.reaches(handle).unwrap_or(opens_ms)))
    }

    pub(crate) fn shuts_ms(&self) -> Option<i64> {
        self.reaches(self.product.recoat_to_hours)
    }

    pub(crate) fn cured_ms(&self) -> Option<i64> {
        cure_end_ms(self.product, self.on_ms, &self.climate)
    }
}

/// A step as the walk finds it.
pub(crate) struct Walked<'a> {
    /// The coat that is on, with its id.
    pub(crate) coat: Option<(&'a String, &'a Coat)>,
    /// When it was laid.
    pub(crate) laid_ms: Option<i64>,
    /// From when it may be laid; none when that cannot be known, the beginning of time where nothing keeps it.
    pub(crate) from_ms: Option<i64>,
    /// The paint below it.
    pub(crate) below: Option<Paint<'a>>,
    /// Its own paint.
    pub(crate) own: Option<Paint<'a>>,
}

/// Goes through the steps from the lowest up, as seen at the “now” of the air: what is to come goes on as early as it may.
pub(crate) fn walk<'a>(on: &CoatsOn<'a>, process: &'a Process, climate: &ClimateLog) -> Vec<Walked<'a>> {
    let now_ms = climate.now_ms();
    let coat_of = |step: usize| on.iter().rev().find(|(of, _, _)| *of == step);
    let mut walked: Vec<Walked> = Vec::new();
    let mut below: Option<Paint> = None;
    let mut stays: &[Stay] = &[];
    // When the step before was laid, or is foreseen; none when that cannot be known.
    let mut before_ms = Some(i64::MIN);
    for (number, step) in process.steps.iter().enumerate() {
        let opens_ms = match (&below, step.layer) {
            (None, _) => Some(i64::MIN),
            (Some(paint), Layer::Decal) => paint.bears_decal_ms(),
            (Some(paint), _) => paint.opens_ms(),
        };
        let from_ms = opens_ms.zip(before_ms).map(|(opens_ms, before_ms)| opens_ms.max(before_ms));
        let coat = coat_of(number).map(|(_, id, coat)| (*id, *coat));
        let laid_ms = match step.product {
            None => step.done_ms,
            Some(_) => coat.map(|(_, coat)| coat.applied_ms),
        };
        let at_ms = laid_ms.or(from_ms.map(|from_ms| from_ms.max(now_ms)));
        if let Some((_, coat)) = coat {
            stays = &coat.stays;
        }
        let used = coat.map(|(_, coat)| &coat.product).or(step.product.as_ref());
        let own = used.zip(at_ms).map(|(product, on_ms)| Paint {
            name: &step.name,
            product,
            on_ms,
            climate: climate.with_stays(stays),
        });
        before_ms = at_ms;
        walked.push(Walked { coat, laid_ms, from_ms, below: below.clone(), own: own.clone() });
        if step.product.is_some() {
            below = own;
        }
    }
    walked
}

/// When every coat of a walk is cured; none when that cannot be known.
pub(crate) fn all_cured_ms(process: &Process, walked: &[Walked]) -> Option<i64> {
    let coats: Vec<&Paint> = walked.iter().filter_map(|step| step.own.as_ref()).collect();
    if coats.len() < process.steps.iter().filter(|step| step.product.is_some()).count() {
        return None;
    }
    // Of the coats from one can only the last to go on has to be reckoned: in the same air it is cured last.
    let cures_last = |at: usize, coat: &Paint| {
        !coats
            .iter()
            .skip(at + 1)
            .any(|over| over.product == coat.product && over.on_ms >= coat.on_ms && over.climate == coat.climate)
    };
    let last = coats.iter().enumerate().filter(|(at, coat)| cures_last(*at, coat));
    last.map(|(_, coat)| coat.cured_ms()).collect::<Option<Vec<i64>>>()?.into_iter().max()
}

/// A paint job with coats to come: when they are cured depends on when the next of them goes on.
#[derive(Clone, Debug, PartialEq)]
pub struct CoatsToCome {
    process: Process,
    on: Vec<(usize, String, Coat)>,
}

impl CoatsToCome {
    /// The coats of a paint job of a bike.
    pub(crate) fn of(bike: &Bike, id: &str, process: &Process) -> CoatsToCome {
        let on = laid(id, bike.coats.iter()).into_iter().map(|(step, id, coat)| (step, id.clone(), coat.clone()));
        CoatsToCome { process: process.clone(), on: on.collect() }
    }

    /// When all of them are cured, milliseconds since 1970 (UTC): the next goes on at an instant or as soon after it as it may,
    /// each of the others as early as it may, and the last not before the work ends. None when that cannot be known.
    pub(crate) fn cured_ms(&self, from_ms: i64, work_ends_ms: i64, climate: &ClimateLog) -> Option<i64> {
        let climate = climate.clone().seen_at(from_ms);
        let on: Vec<(usize, &String, &Coat)> = self.on.iter().map(|(step, id, coat)| (*step, id, coat)).collect();
        let walked = walk(&on, &self.process, &climate);
        let last = walked.iter().rev().find(|step| step.laid_ms.is_none()).and_then(|step| step.own.as_ref());
        let held = match last.filter(|last| last.on_ms < work_ends_ms) {
            Some(last) => Some(Paint { on_ms: work_ends_ms, ..last.clone() }.cured_ms()?),
            None => None,
        };
        all_cured_ms(&self.process, &walked).map(|cured_ms| held.map_or(cured_ms, |held_ms| held_ms.max(cured_ms)))
    }
}
