//! The answer of the cure page, and of each running cure on *Today*.

use super::ask::{Air, Subject};
use super::{findings, words};
use crate::bounds;
use crate::coating::formulas::{
    ClimateLog, Milestone, Pace, activation_of, ages_at, dew_point, horizon_ms, hours_between, when_reached,
};
use crate::coating::judge::on_hold;
use crate::coating::message::CoatingMessage;
use crate::coating::{CureAnswer, CureAsk, CurePoint};
use crate::error::Refused;
use crate::message::{FieldMessage, Message};
use crate::quantity::{Finding, Working};
use crate::record::{Bike, CureState, Product, Stay};
use crate::time::Moment;

/// Points of the curve beside the first.
const CURVE_STEPS: i64 = 40;
/// How long a cured coat that nobody ended is still shown, and how far a curve runs that has no end: hours.
const LINGERS_HOURS: f64 = 7.0 * 24.0;
/// Equivalent hours within which a milestone counts as reached: moments are whole milliseconds.
const WITHIN_HOURS: f64 = 1e-6;

/// The cure page for a coat of the bike, or for a product that would be put on now.
///
/// Refused: neither or both of them, an id that the bike does not have, a sheet that [`Product::checked`] refuses, a
/// number outside its range.
pub fn cure_answer(bike: &Bike, ask: &CureAsk, moment: &Moment) -> Result<CureAnswer, Refused> {
    bounds::TEMPERATURE.check_known(ask.celsius)?;
    bounds::HUMIDITY.check_known(ask.humidity)?;
    bounds::BAKE_TEMPERATURE
        .named("surfaceCelsius", FieldMessage::TemperatureOfTheSurface)
        .check_known(ask.surface_celsius)?;
    let climate = ClimateLog::of(bike, moment);
    let subject = subject(bike, ask, climate.now_ms())?;
    let climate = climate.with_stays(&subject.stays);
    let climate = match ask.celsius {
        Some(celsius) => climate.with_from_now(celsius),
        None => climate,
    };
    let here = Air::of(&climate);
    let air = Air {
        humidity: ask.humidity.or(here.humidity),
        surface_celsius: ask.surface_celsius.unwrap_or(here.celsius),
        ..here
    };
    Ok(lay_out(subject, &climate, &air, moment))
}

/// The cures that are running: not ended, and cured for no longer than seven days. The next to end comes first.
pub fn running_cures(bike: &Bike, moment: &Moment) -> Vec<CureAnswer> {
    let climate = ClimateLog::of(bike, moment);
    let now_ms = climate.now_ms();
    let mut running: Vec<(i64, ClimateLog, Subject)> = bike
        .coats
        .iter()
        .filter(|(_, coat)| coat.ended_ms.is_none())
        .filter_map(|(id, coat)| Subject::of_coat(bike, id, coat).ok())
        .map(|subject| {
            let climate = climate.with_stays(&subject.stays);
            (end_ms(&subject, &climate).unwrap_or(i64::MAX), climate, subject)
        })
        .filter(|(end_ms, _, _)| hours_between(*end_ms, now_ms) <= LINGERS_HOURS)
        .collect();
    running.sort_by_key(|(end_ms, _, _)| *end_ms);
    running.into_iter().map(|(_, climate, subject)| lay_out(subject, &climate, &Air::of(&climate), moment)).collect()
}

/// What to look at before a product goes on here and now: first what speaks against it, then the rest (moisture, heat,
/// the caution of the product).
pub(crate) fn before_it_goes_on(
    product: &Product,
    climate: &ClimateLog,
    moment: &Moment,
) -> (Vec<Finding>, Vec<Finding>) {
    let subject = Subject::of_product(product.clone(), climate.now_ms());
    let sheet = lay_out(subject, climate, &Air::of(climate), moment);
    sheet.findings.into_iter().filter(findings::is_before).partition(findings::is_against)
}

/// What speaks against putting a product on at a moment, where the part stands then: too cold to cure, too damp, the
/// surface too near the dew point. Empty when nothing does that is known.
pub fn against_it(bike: &Bike, product: &Product, stays: &[Stay], moment: &Moment) -> Vec<Finding> {
    before_it_goes_on(product, &ClimateLog::of(bike, moment).with_stays(stays), moment).0
}

/// When the clock of a coat ends.
fn end_ms(subject: &Subject, climate: &ClimateLog) -> Option<i64> {
    let end_hours = subject.product.end_hours()?;
    let reached = when_reached(&Pace::of(&subject.product), subject.applied_ms, &[end_hours], climate);
    reached.into_iter().next().flatten()
}

fn subject(bike: &Bike, ask: &CureAsk, now_ms: i64) -> Result<Subject, Refused> {
    match (&ask.coat, &ask.product) {
        (Some(id), None) => match bike.coats.get(id) {
            Some(coat) => Subject::of_coat(bike, id, coat),
            None => Err(Refused::Unknown { what: CoatingMessage::Coat.into(), id: id.clone() }),
        },
        (None, Some(product)) => Ok(Subject::of_product(product.clone().checked()?, now_ms)),
        (Some(_), Some(_)) => {
            Err(Refused::Conflict { field: "product".to_owned(), reason: CoatingMessage::NotCoatAndProduct.into() })
        }
        (None, None) => Err(Refused::Missing {
            field: "product".to_owned(),
            label: CoatingMessage::Product.into(),
            help: CoatingMessage::ChooseCoatOrProduct.into(),
        }),
    }
}

fn lay_out(subject: Subject, climate: &ClimateLog, air: &Air, moment: &Moment) -> CureAnswer {
    let pace = Pace::of(&subject.product);
    let (applied_ms, now_ms) = (subject.applied_ms, climate.now_ms());
    let age = ages_at(&pace, applied_ms, &[now_ms], climate).last().copied().unwrap_or_default();
    let milestones = milestones(&subject, &pace, age, climate);
    let state = milestones.iter().rev().find(|milestone| milestone.reached).map_or(CureState::Wet, |last| last.state);
    let end_hours = subject.product.end_hours().unwrap_or_default();
    let end_ms = milestones.iter().find(|milestone| milestone.hours == end_hours).and_then(|end| end.due_ms);
    let left_hours_reference = (end_hours - age).max(0.0);
    let done = left_hours_reference <= WITHIN_HOURS;
    let mut sheet = CureAnswer {
        coat: subject.coat.clone(),
        title: subject.title.clone(),
        product: subject.product.clone(),
        applied_ms,
        state,
        equivalent_hours: age,
        percent: if done { 100.0 } else { 100.0 * age / end_hours },
        milestones,
        left_hours_reference: if done { 0.0 } else { left_hours_reference },
        left_hours_here: end_ms.map(|end_ms| hours_between(now_ms.max(applied_ms), end_ms).max(0.0)),
        celsius_now: climate.celsius_at(now_ms),
        at_celsius: pace.at_celsius,
        stands_still: !done && pace.stands_still(climate.celsius_at(now_ms)),
        activation_kelvin: pace.activation_kelvin,
        activation_from: activation_of(&subject.product).1,
        stay: subject.stays.iter().rev().find(|stay| stay.from_ms <= now_ms).cloned(),
        on_hold: Vec::new(),
        process: subject.process.clone(),
        reason: Message::as_entered(String::new()),
        dew_point_celsius: air.humidity.map(|humidity| dew_point(air.celsius, humidity)),
        curve: curve(&pace, applied_ms, end_ms, climate),
        findings: Vec::new(),
        working: Working { lines: Vec::new(), sources: Vec::new(), range: Message::as_entered(String::new()) },
    };
    let mean_celsius = end_ms.and_then(|end_ms| mean_celsius(climate, now_ms.max(applied_ms), end_ms));
    sheet.reason = words::reason(&sheet, mean_celsius);
    if !done && subject.coat.is_some() {
        let handle = sheet.milestones.iter().find(|milestone| milestone.state == CureState::Handle);
        let touch = (handle.is_some_and(|handle| !handle.reached), handle.and_then(|handle| handle.due_ms));
        let cured_ms = end_ms.filter(|_| subject.product.full_cure_hours.is_some());
        sheet.on_hold = on_hold(subject.product.product, subject.part, touch, cured_ms);
    }
    sheet.findings = findings::of_cure(&sheet, &subject, &pace, climate, air, &moment.zone);
    sheet.working = words::working(&sheet, &pace, climate, air);
    sheet
}

fn milestones(subject: &Subject, pace: &Pace, age: f64, climate: &ClimateLog) -> Vec<Milestone> {
    let stages = subject.product.stages();
    let hours: Vec<f64> = stages.iter().map(|(_, hours)| *hours).collect();
    let due = when_reached(pace, subject.applied_ms, &hours, climate);
    let milestone = |((state, hours), due_ms)| Milestone { state, hours, due_ms, reached: age + WITHIN_HOURS >= hours };
    stages.into_iter().zip(due).map(milestone).collect()
}

/// The curve in even steps of time; without an end it runs a week past now.
fn curve(pace: &Pace, applied_ms: i64, end_ms: Option<i64>, climate: &ClimateLog) -> Vec<CurePoint> {
    let week_ms = (LINGERS_HOURS * crate::units::HOUR_MS) as i64;
    let open_end_ms = applied_ms.max(climate.now_ms()).saturating_add(week_ms).min(horizon_ms(applied_ms, climate));
    let to_ms = end_ms.unwrap_or(open_end_ms);
    let span_ms = to_ms.saturating_sub(applied_ms);
    let moments: Vec<i64> = (0..=CURVE_STEPS)
        .map(|step| if step == CURVE_STEPS { to_ms } else { applied_ms.saturating_add(span_ms / CURVE_STEPS * step) })
        .collect();
    let ages = ages_at(pace, applied_ms, &moments, climate);
    let point = |(at_ms, equivalent_hours)| CurePoint { at_ms, equivalent_hours, celsius: climate.celsius_at(at_ms) };
    moments.into_iter().zip(ages).map(point).collect()
}

/// Mean temperature of a stretch of time, °C; none when it has no length.
pub(crate) fn mean_celsius(climate: &ClimateLog, from_ms: i64, to_ms: i64) -> Option<f64> {
    let whole = hours_between(from_ms, to_ms);
    let sum: f64 =
        climate.spells(from_ms, to_ms).map(|spell| spell.celsius * hours_between(spell.from_ms, spell.to_ms)).sum();
    (whole > 0.0).then(|| sum / whole)
}

#[cfg(test)]
mod tests;
