//! Sums of the tyres beyond the size itself: every input against its range, then the formula.

use super::figure::{Figure, figure};
use crate::error::Refused;
use crate::record::{End, SpeedSymbol, SpeedometerDrive, TyreSize, Wheel, load_kg};
use crate::time::check_day;
use crate::tyres::{compare_tyres, tyre_age};
use crate::units::Unit;

type Given = Result<Vec<Figure>, Refused>;

pub(super) fn change(tyre: &str, new_tyre: &str) -> Given {
    TyreSize::read(tyre)?;
    TyreSize::read(new_tyre).map_err(|refused| refused.named("newTyre", "New tyre size"))?;
    let wheel = |code: &str| Wheel { tyre: Some(code.to_owned()), ..Wheel::default() };
    let change = compare_tyres(&wheel(tyre), &wheel(new_tyre), End::Rear, Some(SpeedometerDrive::RearWheel))
        .ok_or_else(|| missing("the sizes", "enter both sizes"))?;
    let mut figures = vec![
        figure("rideHeight", change.ride_height_mm, Unit::Millimetre),
        figure("rideHeightLeast", change.ride_height_least_mm, Unit::Millimetre),
        figure("rideHeightMost", change.ride_height_most_mm, Unit::Millimetre),
        figure("diameterChange", change.diameter_percent, Unit::Percent),
        figure("turnsPerKm", change.turns_per_km_before, Unit::None),
        figure("newTurnsPerKm", change.turns_per_km_after, Unit::None),
    ];
    figures.extend(change.speedometer_percent.map(|shift| figure("speedometer", shift, Unit::Percent)));
    Ok(figures)
}

pub(super) fn rating(tyre: &str) -> Given {
    let size = TyreSize::read(tyre)?;
    let carries = size.service.and_then(|service| load_kg(service.load_index)).map(f64::from);
    let kmh = size.speed().and_then(SpeedSymbol::kmh).map(f64::from);
    let mut figures = Vec::new();
    figures.extend(carries.map(|kg| figure("load", kg, Unit::Kilogram)));
    figures.extend(kmh.map(|kmh| figure("speed", kmh, Unit::KilometreHour)));
    if figures.is_empty() {
        return Err(missing("Load index or speed symbol", "enter them after the size, as in 130/90-16 67H"));
    }
    Ok(figures)
}

pub(super) fn age(date_code: &str, day: &str) -> Given {
    check_day("day", "Day of asking", day)?;
    let age = tyre_age(date_code, day)?;
    let latest = age.weeks.first().map_or(0.0, |week| f64::from(week.year));
    let count = u32::try_from(age.weeks.len()).unwrap_or(0);
    Ok(vec![
        figure("leastYears", age.least_years, Unit::None),
        figure("mostYears", age.most_years, Unit::None),
        figure("latestYear", latest, Unit::Year),
        figure("decades", f64::from(count), Unit::None),
    ])
}

fn missing(label: &str, help: &str) -> Refused {
    Refused::Missing { field: "tyre".to_owned(), label: label.to_owned(), help: help.to_owned() }
}
