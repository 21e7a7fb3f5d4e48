//! How a cure is said: the reason in one sentence, moments and hours, and the working.

use super::ask::{Air, CureAnswer};
use crate::coating::formulas::{ActivationFrom, ClimateLog, DewPoint, Pace, SurfaceMargin, USUAL_REFERENCE};
use crate::coating::message::CureMessage;
use crate::message::{Duration, Joint, Measure, Message};
use crate::quantity::{Evaluate, Source, Standing, WorkLine, Working};
use crate::ready_made::source_of;
use crate::units::Unit;

/// Why it takes as long as it takes: “31 h on the can at 20 °C; 53 h here at 13 °C”.
pub(crate) fn reason(sheet: &CureAnswer, mean_celsius: Option<f64>) -> Message {
    let (left, at) = (on_can(sheet.left_hours_reference), Unit::Celsius.of(sheet.at_celsius));
    let now = Unit::Celsius.of(sheet.celsius_now);
    let here = sheet.left_hours_here.map(Duration::hours);
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

/// A time of the can as cans give it: minutes below an hour, from ten hours on whole ones.
pub(crate) fn on_can(hours: f64) -> Measure {
    if hours < 1.0 {
        Unit::Minute.of(hours * 60.0)
    } else {
        Unit::Hour.of(if hours < 9.95 { hours } else { hours.round() })
    }
}

/// How the answer was worked out.
pub(crate) fn working(sheet: &CureAnswer, pace: &Pace, climate: &ClimateLog, air: &Air) -> Working {
    let (now, at, q) = (sheet.celsius_now, pace.at_celsius, pace.activation_kelvin);
    let rate_equation = if pace.stands_still(now) {
        format!("nothing below {:.0} °C", sheet.product.lowest_celsius.unwrap_or_default())
    } else {
        let counted = now.min(pace.no_faster_from());
        format!("exp(-{q:.0} K x (1/{:.1} K - 1/{:.1} K))", counted + 273.15, at + 273.15)
    };
    let end_hours = sheet.product.end_hours().unwrap_or_default();
    let mut lines = vec![
        WorkLine::new("Hours on the can for an hour here, now", rate_equation, pace.rate(now), Unit::None),
        WorkLine::new("Equivalent age now", "sum of rate x time since it went on", sheet.equivalent_hours, Unit::Hour),
        WorkLine::new(
            "Left on the can",
            format!("{end_hours:.1} h - {:.1} h", sheet.equivalent_hours),
            sheet.left_hours_reference,
            Unit::Hour,
        ),
    ];
    if let Some(here) = sheet.left_hours_here {
        lines.push(WorkLine::new("Left here", "until the sum of rate x time has grown by that", here, Unit::Hour));
    }
    if let (ActivationFrom::TwoTemperatures, Some(second), Some(hours)) =
        (sheet.activation_from, sheet.product.second_celsius, sheet.product.second_hours)
    {
        let equation = format!("ln(t1/t2) / (1/T1 - 1/T2), second point {hours} h at {second:.0} °C");
        lines.push(WorkLine::new("Activation temperature of the sheet", equation, q, Unit::Kelvin));
    }
    let mut sources = vec![
        source_of(&sheet.product),
        Source::new(
            "Equivalent age: ASTM C1074, written for concrete; that it holds for paint is an assumption",
            Standing::Memory,
        ),
    ];
    if let Some(humidity) = air.humidity.filter(|_| sheet.dew_point_celsius.is_some()) {
        let (celsius, surface_celsius) = (air.celsius, air.surface_celsius);
        lines.extend(DewPoint { celsius, humidity }.line("Dew point of the air"));
        lines.extend(SurfaceMargin { celsius, humidity, surface_celsius }.line("Surface above the dew point"));
        sources.push(Source::new(
            "Dew point: Magnus form with the figures of WMO-No. 8, Annex 4.B, as restated in a maker's manual",
            Standing::SecondHand,
        ));
        sources.push(Source::new(
            "Surface 3 K above the dew point, humidity below 85 %: ISO 8502-4 (guidance) and ISO 12944-7, as restated",
            Standing::SecondHand,
        ));
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
    Message::joined(Joint::Sentences, said.into_iter().flatten().collect())
}
