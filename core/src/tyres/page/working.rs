//! The working of the tyre page: every equation with its numbers, and where it comes from.

use crate::quantity::{Source, Standing, WorkLine, Working};
use crate::record::{TyreSize, date_source, decade_source};
use crate::tyres::age::{TyreAge, age_source};
use crate::tyres::checks::{TyreCheck, TyreLimit};
use crate::tyres::compare::TyreChange;
use crate::tyres::message::{TyresMessage, TyresSource};
use crate::tyres::reading::TyreReading;
use crate::tyres::wheel::tyre_source;
use crate::units::Unit;

/// The lines on one tyre.
pub(crate) fn on_tyre(size: &TyreSize, reading: &TyreReading) -> Vec<WorkLine> {
    let rim = size.rim_code;
    let (least, most) = (reading.outer_diameter_least_mm, reading.outer_diameter_most_mm);
    let height = |diameter: f64| (diameter - 25.4 * f64::from(rim)) / 2.0;
    let mut lines = Vec::new();
    if least < most {
        for (label, diameter) in [("Outer diameter, least", least), ("Outer diameter, most", most)] {
            let equation = format!("25.4 × {rim} + 2 × {:.2} mm", height(diameter));
            lines.push(WorkLine::new(label, equation, diameter, Unit::Millimetre));
        }
    } else {
        let equation = format!("25.4 × {rim} + 2 × {:.2} mm", height(most));
        lines.push(WorkLine::new("Outer diameter", equation, most, Unit::Millimetre));
    }
    let circumference = if reading.measured {
        "roll-out".to_owned()
    } else {
        format!("π × {:.1} mm, or by the ratio to a tyre that was rolled out", reading.outer_diameter_mm)
    };
    lines.push(WorkLine::new("Rolling circumference", circumference, reading.circumference_mm, Unit::Millimetre));
    let turns = format!("1 000 000 / {:.1} mm", reading.circumference_mm);
    lines.push(WorkLine::new("Turns in a kilometre", turns, reading.turns_per_km, Unit::None));
    lines
}

/// The lines on the change against standard.
pub(crate) fn on_change(change: &TyreChange) -> Vec<WorkLine> {
    let (before, after) = (change.diameter_before_mm, change.diameter_after_mm);
    let (rolled, rolls) = (change.circumference_before_mm, change.circumference_after_mm);
    let mut lines = vec![
        WorkLine::new(
            "Axle higher than as made",
            format!("({after:.1} − {before:.1}) / 2"),
            change.ride_height_mm,
            Unit::Millimetre,
        ),
        WorkLine::new(
            "Circumference against as made",
            format!("({rolls:.1} / {rolled:.1} − 1) × 100"),
            change.circumference_percent,
            Unit::Percent,
        ),
    ];
    lines.extend(change.speedometer_percent.map(|shift| {
        let equation = format!("({rolled:.1} / {rolls:.1} − 1) × 100");
        WorkLine::new("Speedometer against as made, by this tyre alone", equation, shift, Unit::Percent)
    }));
    lines
}

/// The lines on load and speed that are left.
pub(crate) fn on_checks(checks: &[TyreCheck]) -> Vec<WorkLine> {
    let known = checks.iter().filter(|check| matches!(check.limit, TyreLimit::Load | TyreLimit::Speed));
    known
        .filter_map(|check| {
            let equation = format!("{} − {:.0}", check.allowed_to?, check.actual?);
            Some(WorkLine::new(&format!("{}: left", check.label), equation, check.margin?, check.unit))
        })
        .collect()
}

/// The lines on the age.
pub(crate) fn on_age(age: &TyreAge) -> Vec<WorkLine> {
    let line = |week: &crate::tyres::age::TyreWeek| {
        let label = format!("Age, if made in week {} of {}, years", week.week, week.year);
        WorkLine::new(&label, format!("days since {} / 365.25", week.from_day), week.age_years, Unit::None)
    };
    age.weeks.iter().map(line).collect()
}

/// The whole working.
pub(crate) fn working(lines: Vec<WorkLine>, measured: bool, checks: &[TyreCheck]) -> Working {
    let mut sources = vec![
        tyre_source(measured),
        Source::new(TyresSource::Comparison, Standing::Computed),
        date_source(),
        decade_source(),
        age_source(),
    ];
    sources.extend(checks.iter().map(|check| check.source.clone()));
    Working { lines, sources, range: TyresMessage::Range.into() }
}
