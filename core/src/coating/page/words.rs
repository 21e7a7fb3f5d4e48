//! How a cure is said: the reason in one sentence, moments and hours, and the working.

use super::ask::{Air, CureAnswer};
use crate::coating::formulas::{
    Activation, ActivationFrom, ClimateLog, CurePace, CureRate, DewPoint, HoursAtRate, Pace, SurfaceMargin,
    USUAL_ACTIVATION, USUAL_REFERENCE, hours_between,
};
use crate::quantity::{Difference, Line, Source, Standing, WorkLine, Working};
use crate::ready_made::source_of;
use crate::record::first_hours;
use crate::units::Unit;

/// Why it takes as long as it takes: “31 h on the can at 20 °C; 53 h here at 13 °C”.
pub(crate) fn reason(sheet: &CureAnswer, mean_celsius: Option<f64>) -> String {
    let (left, at) = (hours(sheet.left_hours_reference), sheet.at_celsius);
    let end =
        if sheet.product.full_cure_hours.is_some() { "Fully cured" } else { "The last time on the sheet is over" };
    if sheet.left_hours_reference <= 0.0 {
        return format!("{end}: {} on the can at {at:.0} °C.", hours(sheet.product.end_hours().unwrap_or_default()));
    }
    if sheet.stands_still {
        let lowest = sheet.product.lowest_celsius.unwrap_or_default();
        let here = match sheet.left_hours_here {
            Some(here) => format!("; {} here with the warmer hours to come", hours(here)),
            None => String::new(),
        };
        return format!(
            "Stands still at {:.0} °C, the can asks for {lowest:.0} °C; {left} at {at:.0} °C are left{here}.",
            sheet.celsius_now
        );
    }
    match (sheet.left_hours_here, mean_celsius) {
        (Some(here), Some(mean)) => format!("{left} on the can at {at:.0} °C; {} here at {mean:.0} °C.", hours(here)),
        _ => format!("{left} on the can at {at:.0} °C; no end in sight here at {:.0} °C.", sheet.celsius_now),
    }
}

/// Hours as one says them.
pub(crate) fn hours(hours: f64) -> String {
    if hours < 1.0 {
        format!("{:.0} min", hours * 60.0)
    } else if hours < 9.95 {
        format!("{} h", (hours * 10.0).round() / 10.0)
    } else {
        format!("{hours:.0} h")
    }
}

/// The line on the rate now; warmer than a limit counts as the limit.
fn on_rate(sheet: &CureAnswer, pace: &Pace) -> Option<WorkLine> {
    let label = "Hours on the can for an hour here, now";
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
    let left = Difference { from: age.min(end_hours), to: end_hours };
    let ahead = sheet.left_hours_here.and_then(|here| {
        let on_can = sheet.left_hours_reference;
        HoursAtRate { hours: on_can, rate: here / on_can }
            .line("Left here, at the mean of the hours here for one on the can to come")
    });
    let lines = [
        HoursAtRate { hours, rate }.line("Equivalent age now, at the mean rate since it went on"),
        left.line("Left on the can").map(|line| line.measured_in(Unit::Hour)),
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
    activation.line("Activation temperature of the sheet")
}

/// How the answer was worked out.
pub(crate) fn working(sheet: &CureAnswer, pace: &Pace, climate: &ClimateLog, air: &Air) -> Working {
    let mut lines = Vec::from_iter(on_rate(sheet, pace));
    lines.extend(on_age(sheet, pace, climate.now_ms()));
    lines.extend(on_activation(sheet));
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
    Working { lines, sources, range: range(sheet, pace, climate).into() }
}

/// Where it holds and what was taken for granted.
fn range(sheet: &CureAnswer, pace: &Pace, climate: &ClimateLog) -> String {
    let mut said = vec![
        "About 0 to 40 °C; nothing below the lowest temperature of the can, and no faster than at".to_owned()
            + &format!(" {:.0} °C.", pace.no_faster_from()),
        climate.basis(),
    ];
    match sheet.activation_from {
        ActivationFrom::TwoTemperatures => said.push(format!(
            "Activation temperature {:.0} K from the two temperatures of the sheet.",
            sheet.activation_kelvin
        )),
        ActivationFrom::Entered => {}
        ActivationFrom::Assumed => said.push(format!("Assumed: activation temperature {USUAL_ACTIVATION:.0} K.")),
    }
    if sheet.product.at_celsius.is_none() {
        said.push(format!(
            "Assumed: the times hold at {USUAL_REFERENCE:.0} °C, the standard climate for paints (ISO 3270, second-hand)."
        ));
    }
    said.join(" ")
}
