//! Tests of the tyre page on the invented demo bike.

use super::*;
use crate::tyres::checks::TyreLimit;
use crate::tyres::sample::demo_bike;

/// 26 November 2026, noon.
/// The page with the top speed that gearing derives.
fn of(bike: &Bike, ask: &TyreAsk) -> Result<TyreAnswer, Refused> {
    tyre_answer(bike, ask, &moment(), |spec| crate::gearing::derived_top_speed(bike, spec))
}

fn moment() -> Moment {
    Moment { now_ms: 1_795_694_400_000, ..Moment::default() }
}

fn sheet(bike: &Bike, ask: &TyreAsk) -> TyreAnswer {
    of(bike, ask).unwrap()
}

fn with(wheel: Wheel) -> TyreAsk {
    TyreAsk { wheel: Some(wheel), ..TyreAsk::default() }
}

fn codes(sheet: &TyreAnswer) -> Vec<&str> {
    sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
}

fn tyre(code: &str) -> Wheel {
    Wheel { tyre: Some(code.to_owned()), ..Wheel::default() }
}

#[test]
fn as_it_stands_the_rear_tyre_changes_nothing_and_is_too_old() {
    let sheet = sheet(&demo_bike(), &TyreAsk { top_speed_kmh: Some(112.0), ..TyreAsk::default() });
    let change = sheet.change.as_ref().unwrap();
    assert_eq!((change.ride_height_mm, change.circumference_percent), (0.0, 0.0));
    assert_eq!(change.speedometer_percent, Some(0.0));
    assert_eq!(sheet.fitted, sheet.proposed);
    let margins: Vec<_> = sheet.checks.iter().map(|check| (check.limit, check.margin, check.judgement)).collect();
    assert_eq!(margins[0], (TyreLimit::Load, Some(82.0), Judgement::Fine));
    assert_eq!(margins[1], (TyreLimit::Speed, Some(38.0), Judgement::Fine));
    assert_eq!((margins[2].2, margins[3].2), (Judgement::Open, Judgement::Fine));
    let age = sheet.age.as_ref().unwrap();
    assert_eq!(age.weeks.iter().map(|week| week.year).collect::<Vec<_>>(), [1994, 1984, 1974]);
    assert_eq!(codes(&sheet), ["tyre.rim-open", "tyre.age"]);
    assert!(!sheet.cautions.is_empty() && sheet.working.lines.len() >= 8);
    let labels: Vec<String> = sheet.working.lines.iter().map(|line| line.label.english()).collect();
    assert!(labels.iter().any(|said| said == "Load on the tyre: left"), "{labels:#?}");
    assert!(labels.iter().any(|said| said.starts_with("Age, if made in week ") && said.ends_with(" of 1994, years")));
}

#[test]
fn another_tyre_brings_neither_the_old_date_nor_the_old_roll_out() {
    let mut bike = demo_bike();
    bike.fitted.rear_wheel.circumference_mm = Some(1880.0);
    let sheet = sheet(&bike, &with(tyre("110/90-18 61H")));
    assert_eq!(sheet.age, None);
    let proposed = sheet.proposed.as_ref().unwrap();
    // Scaled from the roll-out by 655.2 mm against 609.6 mm.
    assert!((proposed.circumference_mm - 1880.0 * 655.2 / 609.6).abs() < 1e-9 && !proposed.measured);
    let change = sheet.change_from_fitted.as_ref().unwrap();
    assert!((change.circumference_percent - (655.2 / 609.6 - 1.0) * 100.0).abs() < 1e-9);
    assert!((change.speedometer_percent.unwrap() - (609.6 / 655.2 - 1.0) * 100.0).abs() < 1e-9);
    assert!((change.ride_height_mm - 22.8).abs() < 1e-9);
    assert!(codes(&sheet).contains(&"tyre.rear.other-size") && codes(&sheet).contains(&"tyre.rear.tube"));
}

#[test]
fn the_front_tyre_of_this_bike_does_not_touch_the_speedometer() {
    let ask = TyreAsk { end: Some(End::Front), ..with(tyre("3.00-18 47P")) };
    let sheet = sheet(&demo_bike(), &ask);
    assert_eq!(sheet.change.as_ref().unwrap().speedometer_percent, None);
    assert_eq!(sheet.end, End::Front);
}

#[test]
fn an_unknown_tyre_says_what_to_read_and_unknown_is_never_fine() {
    let sheet = sheet(&Bike::default(), &TyreAsk::default());
    assert_eq!(codes(&sheet), ["tyre.unknown"]);
    assert!(sheet.proposed.is_none() && sheet.checks.is_empty() && sheet.change.is_none() && sheet.age.is_none());
    let bare = of(&Bike::default(), &with(tyre("3.00-18"))).unwrap();
    assert!(bare.checks.iter().all(|check| check.judgement == Judgement::Open), "{:#?}", bare.checks);
}

#[test]
fn a_mixed_pair_is_found_from_either_end() {
    let front = TyreAsk { end: Some(End::Front), ..with(tyre("90/90R18")) };
    assert!(codes(&sheet(&demo_bike(), &front)).contains(&"tyre.mixed"));
    assert!(codes(&sheet(&demo_bike(), &with(tyre("90/90R18")))).contains(&"tyre.mixed"));
}

#[test]
fn bad_input_names_its_field() {
    let field = |ask: TyreAsk| match of(&demo_bike(), &ask) {
        Err(
            Refused::OutOfRange { field, .. }
            | Refused::NotANumber { field, .. }
            | Refused::Unreadable { field, .. }
            | Refused::Conflict { field, .. },
        ) => field,
        other => panic!("{other:?}"),
    };
    assert_eq!(field(with(tyre("fat"))), "tyre");
    assert_eq!(field(with(Wheel { date_code: Some("5402".into()), ..Wheel::default() })), "dateCode");
    assert_eq!(field(with(Wheel { date_code: Some("0140".into()), ..Wheel::default() })), "dateCode");
    assert_eq!(field(with(Wheel { axle_load_kg: Some(-1.0), ..Wheel::default() })), "axleLoadKg");
    assert_eq!(field(with(Wheel { rim_width_inch: Some(f64::NAN), ..Wheel::default() })), "rimWidthInch");
    assert_eq!(field(with(Wheel { circumference_mm: Some(1.0), ..Wheel::default() })), "circumferenceMm");
    assert_eq!(field(with(Wheel { tube_sizes: vec!["fat".into()], ..Wheel::default() })), "tubeSizes");
    assert_eq!(field(TyreAsk { top_speed_kmh: Some(900.0), ..TyreAsk::default() }), "topSpeedKmh");
}

#[test]
fn a_date_ahead_on_the_bike_is_said_and_stops_nothing() {
    let mut bike = demo_bike();
    bike.fitted.rear_wheel.date_code = Some("0140".into());
    let sheet = sheet(&bike, &TyreAsk::default());
    assert!(sheet.age.is_none() && codes(&sheet).contains(&"tyre.date-unlikely"));
}
