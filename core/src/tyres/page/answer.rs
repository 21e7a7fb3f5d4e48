//! The answer of the tyre page: one wheel, with the tyre as made, the one that is on it and the one that would be.

use layshaft_wire::wire;

use super::working;
use crate::bounds;
use crate::error::Refused;
use crate::message::{FieldMessage, Message};
use crate::quantity::{Finding, FindingCode, Judgement, Working};
use crate::record::{Bike, End, Spec, TyreSize, Wheel};
use crate::time::Moment;
use crate::tyres::age::{TyreAge, tyre_age};
use crate::tyres::checks::{TyreCheck, tyre_checks};
use crate::tyres::compare::{TyreChange, compare_tyres};
use crate::tyres::derived::size_of;
use crate::tyres::findings::{self, note};
use crate::tyres::message::TyresFinding;
use crate::tyres::reading::{TyreReading, tyre_reading};
use crate::tyres::wheel::rolling_pair;

/// What to work out. What is left out is taken from the fitted bike, or is as said.
#[wire(lenient)]
pub struct TyreAsk {
    /// Which wheel; left out: the rear one.
    pub end: Option<End>,
    /// What would be fitted; fields left out are as fitted now, but another tyre brings its own date and roll-out.
    pub wheel: Option<Wheel>,
    /// Top speed of the bike, km/h; left out: as derived, where drag area, mass and power are known.
    pub top_speed_kmh: Option<f64>,
}

/// The tyre page.
#[wire]
pub struct TyreAnswer {
    /// Which wheel.
    pub end: End,
    /// The tyre as made, where it is known.
    pub standard: Option<TyreReading>,
    /// The tyre that is on it, where it is known.
    pub fitted: Option<TyreReading>,
    /// The tyre as asked, where it is known.
    pub proposed: Option<TyreReading>,
    /// As asked against as made.
    pub change: Option<TyreChange>,
    /// As asked against what is on it.
    pub change_from_fitted: Option<TyreChange>,
    /// Load, speed, rim and tube.
    pub checks: Vec<TyreCheck>,
    /// Top speed that the speed symbol was held against, km/h.
    pub top_speed_kmh: Option<f64>,
    /// How old it is, where its date code is known.
    pub age: Option<TyreAge>,
    /// What to mind whatever the numbers say.
    pub cautions: Vec<Message>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// Works the tyre page out. `moment` gives the day for the age; `top_speed` the top speed of a spec in km/h, where it can be
/// derived: what it takes is known on a page above the tyres.
///
/// Refused: a code, date code or number that cannot be accepted; a date code as asked that lies ahead. What is not known is
/// absent, and the checks say what they lack.
pub fn tyre_answer(
    bike: &Bike,
    ask: &TyreAsk,
    moment: &Moment,
    top_speed: impl Fn(&Spec) -> Option<f64>,
) -> Result<TyreAnswer, Refused> {
    let end = ask.end.unwrap_or(End::Rear);
    let (standard, fitted) = (wheel_at(&bike.standard, end), wheel_at(&bike.fitted, end));
    let proposed = match &ask.wheel {
        Some(over) => over.clone().over(fitted).checked()?,
        None => fitted.clone(),
    };
    let top = bounds::ROAD_SPEED
        .named("topSpeedKmh", FieldMessage::TopSpeed)
        .check_known(ask.top_speed_kmh)?
        .or_else(|| top_speed(&with_wheel(bike, end, &proposed)));
    let size = size_of(&proposed);
    let other = size_of(wheel_at(&bike.fitted, other_end(end)));

    let (reading_standard, reading_fitted, reading_proposed) = readings(standard, fitted, &proposed);
    let speedometer = bike.fitted.drive.speedometer.or(bike.standard.drive.speedometer);
    let change = compare_tyres(standard, &proposed, end, speedometer);
    let checks = size.as_ref().map(|size| tyre_checks(size, &proposed, top)).unwrap_or_default();
    let mut found = Vec::new();
    let age = age(ask, &proposed, moment, &mut found)?;
    found.extend(on_size(end, size.as_ref(), standard, other.as_ref(), &proposed, &checks));
    found.extend(age.iter().filter(|age| age.judgement != Judgement::Fine).map(|age| {
        let weigh = if age.judgement == Judgement::Outside { findings::care } else { note };
        weigh(FindingCode::TyreAge, age.advice.clone())
    }));

    let mut lines = Vec::new();
    let other = scaled_from(standard, fitted);
    lines.extend(
        size.iter()
            .zip(&reading_proposed)
            .flat_map(|(size, reading)| working::on_tyre(size, reading, other, &proposed)),
    );
    lines.extend(change.iter().flat_map(working::on_change));
    lines.extend(working::on_checks(&checks));
    lines.extend(age.iter().flat_map(working::on_age));
    Ok(TyreAnswer {
        end,
        working: working::working(lines, reading_proposed.as_ref().is_some_and(|reading| reading.measured), &checks),
        standard: reading_standard,
        fitted: reading_fitted,
        proposed: reading_proposed,
        change,
        change_from_fitted: compare_tyres(fitted, &proposed, end, speedometer),
        checks,
        top_speed_kmh: top,
        age,
        cautions: findings::cautions(),
        findings: found,
    })
}

fn wheel_at(spec: &Spec, end: End) -> &Wheel {
    match end {
        End::Front => &spec.front_wheel,
        End::Rear => &spec.rear_wheel,
    }
}

fn other_end(end: End) -> End {
    match end {
        End::Front => End::Rear,
        End::Rear => End::Front,
    }
}

/// The wheel that the proposed one is scaled from: a roll-out on what is fitted carries it, else the one as made does.
fn scaled_from<'a>(standard: &'a Wheel, fitted: &'a Wheel) -> &'a Wheel {
    let rolled_out = rolling_pair(standard, fitted).1.is_ok_and(|rolling| rolling.measured);
    if rolled_out { fitted } else { standard }
}

/// The three tyres said in words.
fn readings(
    standard: &Wheel,
    fitted: &Wheel,
    proposed: &Wheel,
) -> (Option<TyreReading>, Option<TyreReading>, Option<TyreReading>) {
    let (rolls_standard, rolls_fitted) = rolling_pair(standard, fitted);
    let rolls_proposed = rolling_pair(scaled_from(standard, fitted), proposed).1;
    let read = |wheel, rolling: Result<_, Refused>| size_of(wheel).map(|size| tyre_reading(&size, rolling.ok()));
    (read(standard, rolls_standard), read(fitted, rolls_fitted), read(proposed, rolls_proposed))
}

/// The fitted spec with that wheel.
fn with_wheel(bike: &Bike, end: End, wheel: &Wheel) -> Spec {
    let mut spec = bike.fitted.clone();
    match end {
        End::Front => spec.front_wheel = wheel.clone(),
        End::Rear => spec.rear_wheel = wheel.clone(),
    }
    spec
}

/// The age as asked, else of what is fitted. A date ahead is refused where it was asked, and said where it is on the bike.
fn age(ask: &TyreAsk, wheel: &Wheel, moment: &Moment, found: &mut Vec<Finding>) -> Result<Option<TyreAge>, Refused> {
    let Some(code) = wheel.date_code.as_deref() else { return Ok(None) };
    let asked = ask.wheel.as_ref().is_some_and(|asked| asked.date_code.is_some());
    match tyre_age(code, &moment.zone.day_text_at(moment.now_ms)) {
        Ok(age) => Ok(Some(age)),
        Err(refused) if asked => Err(refused),
        Err(refused) => {
            let unlikely = TyresFinding::DateUnlikely { reason: refused.message() };
            found.push(findings::care(FindingCode::TyreDateUnlikely, unlikely));
            Ok(None)
        }
    }
}

fn on_size(
    end: End,
    size: Option<&TyreSize>,
    standard: &Wheel,
    other: Option<&TyreSize>,
    wheel: &Wheel,
    checks: &[TyreCheck],
) -> Vec<Finding> {
    let Some(size) = size else {
        return vec![note(FindingCode::TyreUnknown, TyresFinding::Unknown)];
    };
    let mut found = findings::on_checks(end, checks);
    found.extend(size_of(standard).iter().flat_map(|standard| findings::on_standard(end, standard, size)));
    found.extend(other.and_then(|other| match end {
        End::Front => findings::on_mixing(size, other),
        End::Rear => findings::on_mixing(other, size),
    }));
    found.extend(findings::on_marks(size, wheel));
    found.extend(findings::on_open(checks));
    found
}

#[cfg(test)]
#[path = "answer_tests.rs"]
mod tests;
