//! How a cure is said: the reason in one sentence, moments and hours, and the working.

use super::ask::{Air, CureAnswer};
use crate::coating::formulas::{
    ActivationFrom, ClimateLog, DewPoint, Pace, SurfaceMargin, USUAL_ACTIVATION, USUAL_REFERENCE,
};
use crate::quantity::{Line, Source, Standing, WorkLine, Working};
use crate::ready_made::source_of;
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
