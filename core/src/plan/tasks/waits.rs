//! Waits: when the time that passes after a job is over. A wait has fixed hours, or it is the full cure of a coating,
//! which runs on the temperature of the place.

use std::cell::RefCell;
use std::collections::BTreeMap;

use crate::bounds;
use crate::coating::{ClimateLog, CoatsToCome, cure_end_ms};
use crate::ready_made::typical_product;
use crate::record::{Bike, Coat, Product, Wait};
use crate::time::{HOUR_MS, Moment};

/// How long a wait lasts.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum WaitRule {
    /// Nothing is waited for.
    None,
    /// Fixed time, milliseconds.
    Fixed(i64),
    /// Full cure of a product.
    Cure(Box<Product>),
    /// Coats to come, which take so many milliseconds of work: their windows, then the full cure of them all.
    Coats(Box<CoatsToCome>, i64),
    /// Until an instant.
    Until(i64),
    /// Neither hours nor a product with a full cure are known.
    Unknown,
}

impl WaitRule {
    /// The rule of a job's wait.
    pub(crate) fn of(wait: Option<&Wait>, bike: &Bike) -> WaitRule {
        let Some(wait) = wait else { return WaitRule::None };
        let product = wait.product.as_ref().and_then(|name| product_named(bike, name));
        if let Some(product) = product.filter(|product| product.full_cure_hours.is_some()) {
            return WaitRule::Cure(Box::new(product));
        }
        match wait.hours.and_then(|hours| bounds::WAIT_HOURS.check(hours).ok()) {
            Some(hours) => WaitRule::Fixed(hours_ms(hours)),
            None => WaitRule::Unknown,
        }
    }
}

/// Reckons when waits are over, each cure from the same moment only once.
pub(crate) struct Clockwork {
    climate: ClimateLog,
    known: RefCell<BTreeMap<(usize, i64), Option<i64>>>,
}

impl Clockwork {
    /// The clockwork for the place where the bike stands.
    pub(crate) fn of(bike: &Bike, moment: &Moment) -> Clockwork {
        Clockwork { climate: ClimateLog::of(bike, moment), known: RefCell::default() }
    }

    /// Temperature and humidity of the place.
    pub(crate) fn climate(&self) -> &ClimateLog {
        &self.climate
    }

    /// The same without what it has reckoned so far.
    pub(crate) fn anew(&self) -> Clockwork {
        Clockwork { climate: self.climate.clone(), known: RefCell::default() }
    }

    /// When a wait that begins at an instant is over; none when that cannot be known.
    pub(crate) fn over_ms(&self, rule: &WaitRule, begins_ms: i64) -> Option<i64> {
        match rule {
            WaitRule::None => Some(begins_ms),
            WaitRule::Fixed(long_ms) => Some(begins_ms.saturating_add(*long_ms)),
            WaitRule::Unknown => None,
            WaitRule::Cure(product) => self.cured_ms(product, begins_ms),
            WaitRule::Coats(coats, work_ms) => {
                coats.cured_ms(begins_ms.saturating_sub(*work_ms), begins_ms, &self.climate)
            }
            WaitRule::Until(until_ms) => Some(begins_ms.max(*until_ms)),
        }
    }

    /// The same for a task of a plan, whose cure from the same instant is asked for again and again.
    pub(crate) fn over_ms_of(&self, task: usize, rule: &WaitRule, begins_ms: i64) -> Option<i64> {
        if !matches!(rule, WaitRule::Cure(_) | WaitRule::Coats(..)) {
            return self.over_ms(rule, begins_ms);
        }
        let mut known = self.known.borrow_mut();
        *known.entry((task, begins_ms)).or_insert_with(|| self.over_ms(rule, begins_ms))
    }

    /// How long the wait of a task lasts that begins at an instant, milliseconds; nothing where that cannot be known.
    pub(crate) fn long_ms_of(&self, task: usize, rule: &WaitRule, begins_ms: i64) -> i64 {
        self.over_ms_of(task, rule, begins_ms).map_or(0, |over_ms| over_ms - begins_ms)
    }

    /// When a coat that is on is fully cured, or was when its clock was ended.
    pub(crate) fn coat_over_ms(&self, coat: &Coat) -> Option<i64> {
        coat.ended_ms.or_else(|| coat.cured_ms(&self.climate))
    }

    fn cured_ms(&self, product: &Product, applied_ms: i64) -> Option<i64> {
        cure_end_ms(product, applied_ms, &self.climate)
    }
}

/// The data of a product by its name: from the last coat of it on this bike, else from the typical sheets.
fn product_named(bike: &Bike, name: &str) -> Option<Product> {
    let named = |product: &Product| product.name.trim().eq_ignore_ascii_case(name.trim());
    let coats = bike.coats.values().filter(|coat| named(&coat.product));
    let last = coats.max_by_key(|coat| coat.applied_ms).map(|coat| coat.product.clone());
    last.or_else(|| typical_product(name))
}

/// Hours as whole milliseconds.
pub(crate) fn hours_ms(hours: f64) -> i64 {
    (hours * HOUR_MS as f64).round() as i64
}
