//! How a cure is said: the reason in one sentence, moments and hours, and the working.

use super::ask::{Air, CureAnswer};
use crate::coating::formulas::{
    Activation, ActivationFrom, ClimateLog, CurePace, CureRate, DewPoint, HoursAtRate, Pace, SurfaceMargin,
    USUAL_REFERENCE, hours_between,
};
use crate::coating::message::{CoatingWorking, CureMessage};
use crate::message::{ListStyle, Measure, Message};
use crate::quantity::{Difference, Line, Source, Standing, WorkLine, Working};
use crate::ready_made::source_of;
use crate::record::first_hours;
use crate::units::Unit;

/// Why it takes as long as it takes: “31 h on the can at 20 °C; 53 h here at 13 °C”.
pub(crate) fn reason(sheet: &CureAnswer, mean_celsius: Option<f64>) -> Message {
    let (left, at) = (on_can(sheet.left_hours_reference), Unit::Celsius.of(sheet.at_celsius));
    let now = Unit::Celsius.of(sheet.celsius_now);
    let here = sheet.left_hours_here.map(on_can);
    if sheet.left_hours_reference <= 0.0 {
        let on_can = on_can(sheet.product.end_hours().unwrap_or_default());
        return match sheet.product.full_cure_hours {
            Some(_) => CureMessage::Done { on_can, at },
            None => CureMessage::LastTimeOver { on_can, at },
        }
        .into();
    }
    if sheet.stands_still {
        let lowest = Unit::Celsius.of(sheet.product.lowest_celsius.unwrap_or_default());
        return match here {
            Some(here) => CureMessage::StandsStillNow { now, lowest, left, at, here },
            None => CureMessage::StandsStill { now, lowest, left, at },
        }
        .into();
    }
    match here.zip(mean_celsius) {
        Some((here, mean)) => CureMessage::Left { left, at, here, mean: Unit::Celsius.of(mean) },
        None => CureMessage::LeftWithoutEnd { left, at, now },
    }
    .into()
}

/// A time as cans give it: minutes below an hour, from ten hours on whole ones.
pub(crate) fn on_can(hours: f64) -> Measure {
    if hours < 1.0 {
        Unit::Minute.of(hours * 60.0)
    } else {
        Unit::Hour.of(if hours < 9.95 { hours } else { hours.round() })
    }
}

/// The line on the rate now; warmer than a limit counts as the limit.
fn on_rate(sheet: &CureAnswer, pace: &Pace) -> Option<WorkLine> {
    let label = CoatingWorking::Rate;
    let celsius = sheet.celsius_now.min(pace.no_faster_from());
    let (at_celsius, activation_kelvin) = (pace.at_celsius, pace.activation_kelvin);
    match pace.lowest_celsius {
        Some(lowest_celsius) => CurePace { celsius, lowest_celsius, at_celsius, activation_kelvin }.line(label),
        None => CureRate { celsius, at_celsius, activation_kelvin }.line(label),
    }
}

/// The lines on what is done and what is left, at the mean rate of the time behind and of the time ahead.
fn on_age(sheet: &CureAnswer, pace: &Pace, now_ms: i64) -> Vec<WorkLine> {
    let (age, end_hours) = (sheet.equivalent_hours, sheet.product.end_hours().unwrap_or_default());
    let hours = hours_between(sheet.applied_ms, now_ms).max(0.0);
    let rate = if hours > 0.0 { age / hours } else { pace.rate(sheet.celsius_now) };
    let left = Difference { start: age.min(end_hours), end: end_hours };
    let ahead = sheet.left_hours_here.and_then(|here| {
        let on_can = sheet.left_hours_reference;
        HoursAtRate { hours: on_can, rate: here / on_can }.line(CoatingWorking::LeftHere)
    });
    let lines = [
        HoursAtRate { hours, rate }.line(CoatingWorking::Age),
        left.line(CoatingWorking::LeftOnCan).map(|line| line.measured_in(Unit::Hour)),
        ahead,
    ];
    lines.into_iter().flatten().collect()
}

/// The line on the activation temperature, where the sheet gives two temperatures.
fn on_activation(sheet: &CureAnswer) -> Option<WorkLine> {
    let product = Some(&sheet.product).filter(|_| sheet.activation_from == ActivationFrom::TwoTemperatures)?;
    let activation = Activation {
        hours: first_hours(product)?,
        celsius: product.at_celsius?,
        other_hours: product.second_hours?,
        other_celsius: product.second_celsius?,
    };
    activation.line(CoatingWorking::Activation)
}

/// How the answer was worked out.
pub(crate) fn working(sheet: &CureAnswer, pace: &Pace, climate: &ClimateLog, air: &Air) -> Working {
    let mut lines = Vec::from_iter(on_rate(sheet, pace));
    lines.extend(on_age(sheet, pace, climate.now_ms()));
    lines.extend(on_activation(sheet));
    let mut sources = vec![source_of(&sheet.product), Source::new(CureMessage::SourceAge, Standing::Memory)];
    if let Some(humidity) = air.humidity.filter(|_| sheet.dew_point_celsius.is_some()) {
        let (celsius, surface_celsius) = (air.celsius, air.surface_celsius);
        lines.extend(DewPoint { celsius, humidity }.line(CoatingWorking::DewPoint));
        lines.extend(SurfaceMargin { celsius, humidity, surface_celsius }.line(CoatingWorking::SurfaceMargin));
        sources.push(Source::new(CureMessage::SourceDewPoint, Standing::SecondHand));
        sources.push(Source::new(CureMessage::SourceDry, Standing::SecondHand));
    }
    Working { lines, sources, range: range(sheet, pace, climate) }
}

/// Where it holds and what was taken for granted.
fn range(sheet: &CureAnswer, pace: &Pace, climate: &ClimateLog) -> Message {
    let activation = Unit::Kelvin.of(sheet.activation_kelvin);
    let activation = match sheet.activation_from {
        ActivationFrom::TwoTemperatures => Some(CureMessage::RangeActivation { activation }),
        ActivationFrom::Entered => None,
        ActivationFrom::Assumed => Some(CureMessage::RangeActivationAssumed { activation }),
    };
    let reference = CureMessage::RangeReferenceAssumed { celsius: Unit::Celsius.of(USUAL_REFERENCE) };
    let said = [
        Some(CureMessage::Range { celsius: Unit::Celsius.of(pace.no_faster_from()) }.into()),
        Some(climate.basis()),
        activation.map(Message::from),
        sheet.product.at_celsius.is_none().then(|| reference.into()),
    ];
    Message::joined(ListStyle::Sentences, said.into_iter().flatten().collect())
}
