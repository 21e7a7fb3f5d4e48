//! The working of the tyre page: every equation with its numbers, and where it comes from.

use crate::quantity::{Difference, Line, PercentChange, Source, Standing, WorkLine, Working};
use crate::record::{OuterDiameter, TyreSize, Wheel, YearsOfDays, date_source, decade_source};
use crate::tyres::age::{TyreAge, TyreWeek, age_source};
use crate::tyres::checks::{TyreCheck, TyreLimit};
use crate::tyres::compare::TyreChange;
use crate::tyres::formulas::{RideHeight, TurnsPerKilometre};
use crate::tyres::message::{TyresMessage, TyresSource, TyresWorking};
use crate::tyres::reading::TyreReading;
use crate::tyres::rolled::rolling_line;
use crate::tyres::wheel::tyre_source;
use crate::units::Unit;

/// The lines on one tyre; `other` is the wheel that it was scaled from where it was.
pub(crate) fn on_tyre(size: &TyreSize, reading: &TyreReading, other: &Wheel, wheel: &Wheel) -> Vec<WorkLine> {
    let (least, most) = size.heights_mm();
    let diameter = |label: TyresWorking, height_mm| OuterDiameter { rim_code: size.rim_code, height_mm }.line(label);
    let mut lines = Vec::new();
    if least < most {
        lines.extend(diameter(TyresWorking::DiameterLeast, least));
        lines.extend(diameter(TyresWorking::DiameterMost, most));
    } else {
        lines.extend(diameter(TyresWorking::Diameter, most));
    }
    let circumference_mm = reading.circumference_mm;
    lines.extend(rolling_line(false, other, wheel, (circumference_mm, reading.measured)));
    lines.extend(TurnsPerKilometre { circumference_mm }.line(TyresWorking::Turns));
    lines
}

/// The lines on the change against standard.
pub(crate) fn on_change(change: &TyreChange) -> Vec<WorkLine> {
    let axle = RideHeight { diameter_mm: change.diameter_before_mm, new_diameter_mm: change.diameter_after_mm };
    let (before, after) = (change.circumference_before_mm, change.circumference_after_mm);
    let mut lines = Vec::new();
    lines.extend(axle.line(TyresWorking::AxleHigher));
    lines.extend(PercentChange { before, after }.line(TyresWorking::CircumferenceChange));
    lines.extend(change.speedometer_percent.and_then(|_| {
        // A longer way for one turn shows less.
        let shift = PercentChange { before: after, after: before };
        shift.line(TyresWorking::SpeedometerChange)
    }));
    lines
}

/// The lines on load and speed that are left.
pub(crate) fn on_checks(checks: &[TyreCheck]) -> Vec<WorkLine> {
    let line = |check: &TyreCheck| {
        let label = match check.limit {
            TyreLimit::Load => TyresWorking::LoadLeft,
            TyreLimit::Speed => TyresWorking::SpeedLeft,
            TyreLimit::Rim | TyreLimit::Tube => return None,
        };
        let left = Difference { start: check.actual?, end: check.allowed_to? };
        Some(left.line(label)?.measured_in(check.unit))
    };
    checks.iter().filter_map(line).collect()
}

/// The lines on the age.
pub(crate) fn on_age(age: &TyreAge) -> Vec<WorkLine> {
    let line = |week: &TyreWeek| {
        let label = TyresWorking::Age { week: week.week, year: Unit::Year.of(week.year) };
        YearsOfDays { days: week.age_days }.line(label)
    };
    age.weeks.iter().filter_map(line).collect()
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
