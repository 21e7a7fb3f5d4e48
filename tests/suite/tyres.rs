//! A tyre at the door: looked at, tried, fitted, refused.

use layshaft_core::error::Code;
use layshaft_core::quantity::Judgement;
use layshaft_core::record::{End, Wheel};
use layshaft_core::ripple::{Proposal, RippleAsk};
use layshaft_core::tyres::TyreLimit;
use layshaft_door::Bench;
use layshaft_door::command::{FitTyre, LoadDemo};
use layshaft_door::query::{BareAsk, TyreAsk};

use crate::{English, SATURDAY, act, at};

fn wider() -> Wheel {
    Wheel { tyre: Some("3.25-18 59P".into()), tube_sizes: vec!["3.25-18".into()], ..Wheel::default() }
}

fn demo() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    bench
}

#[test]
fn the_demo_bike_shows_load_speed_and_age_of_both_tyres() {
    let bench = demo();
    let rear = bench.tyres(&TyreAsk::default(), &at(SATURDAY)).unwrap();
    let age = rear.age.as_ref().unwrap();
    assert!(age.least_years > 31.0 && age.weeks.len() == 3 && age.judgement == Judgement::Outside);
    let top = rear.top_speed_kmh.expect("the demo has drag area, mass and power");
    assert!((60.0..150.0).contains(&top), "{top}");
    for limit in [TyreLimit::Load, TyreLimit::Speed, TyreLimit::Tube] {
        let check = rear.checks.iter().find(|check| check.limit == limit).unwrap();
        assert_eq!(check.judgement, Judgement::Fine, "{limit:?}: {}", check.why);
    }
    let front = bench.tyres(&TyreAsk { end: Some(End::Front), ..TyreAsk::default() }, &at(SATURDAY)).unwrap();
    assert_eq!(front.age.unwrap().weeks[0].year, 2005);
}

#[test]
fn a_wider_tyre_shifts_what_rolls_on_it_and_asks_for_the_papers() {
    let bench = demo();
    let before: Vec<_> = bench.facts().collect();
    let proposals = vec![Proposal::Tyre { end: End::Rear, wheel: wider() }];
    let ripple = bench.ripple(&RippleAsk { proposals }, &at(SATURDAY)).unwrap();
    let after = |id: &str| {
        let found = ripple.shifts.iter().find(|shift| shift.quantity.id == id);
        found.unwrap_or_else(|| panic!("{id} is not among the shifts")).after
    };
    // 18 in and twice 3.25 in: 622.3 mm; index 59 is 243 kg, of which 118 kg are taken.
    assert!((after("tyre.rear.outer-diameter").unwrap() - 622.3).abs() < 1e-9);
    assert!((after("tyre.rear.load-margin").unwrap() - 125.0).abs() < 1e-9);
    assert_eq!(after("tyre.rear.made-year"), None, "the new tyre's date is not known");
    assert!((after("speedometer.shift").unwrap() - (609.6 / 622.3 - 1.0) * 100.0).abs() < 1e-9);
    assert!(ripple.new_findings.iter().any(|finding| finding.code.as_str() == "tyre.rear.other-size"));
    assert!(ripple.proposal.english().contains("3.25-18 59P"));
    for word in ["rear tyre 3.25-18 59P", "tube marked 3.25-18", "Never beyond the pressure"] {
        assert!(ripple.follows.iter().any(|text| text.english().contains(word)), "{word}: {:?}", ripple.follows);
    }
    assert_eq!(bench.facts().collect::<Vec<_>>(), before, "trying stores nothing");
}

#[test]
fn a_fitted_tyre_leaves_the_old_date_behind_and_the_standard_one_alone() {
    let mut bench = demo();
    act(&mut bench, FitTyre { end: End::Rear, wheel: wider() }, SATURDAY).unwrap();
    let bike = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    let (fitted, standard) = (&bike.fitted.rear_wheel, &bike.standard.rear_wheel);
    assert_eq!((fitted.tyre.as_deref(), standard.tyre.as_deref()), (Some("3.25-18 59P"), Some("3.00-18")));
    assert_eq!((fitted.date_code.as_deref(), fitted.tube_sizes.as_slice()), (None, ["3.25-18".to_owned()].as_slice()));
    assert_eq!((fitted.tube, fitted.axle_load_kg), (Some(true), Some(118.0)), "what was not said stays");
    let date = Wheel { date_code: Some("0526".into()), ..Wheel::default() };
    act(&mut bench, FitTyre { end: End::Rear, wheel: date }, SATURDAY).unwrap();
    let rear = bench.tyres(&TyreAsk::default(), &at(SATURDAY)).unwrap();
    assert_eq!(rear.age.unwrap().judgement, Judgement::Fine);
}

#[test]
fn what_cannot_be_a_tyre_is_refused_and_nothing_is_stored() {
    for (wheel, code, field) in [
        (Wheel { tyre: Some("fat".into()), ..Wheel::default() }, Code::Unreadable, "tyre"),
        (Wheel { date_code: Some("5402".into()), ..Wheel::default() }, Code::OutOfRange, "dateCode"),
        (Wheel { tube_sizes: vec!["round".into()], ..Wheel::default() }, Code::Unreadable, "tubeSizes"),
        (Wheel { axle_load_kg: Some(5000.0), ..Wheel::default() }, Code::OutOfRange, "axleLoadKg"),
        (Wheel { rim_width_inch: Some(f64::NAN), ..Wheel::default() }, Code::NotANumber, "rimWidthInch"),
    ] {
        let mut bench = demo();
        let before: Vec<_> = bench.facts().collect();
        let refusal = act(&mut bench, FitTyre { end: End::Rear, wheel }, SATURDAY).unwrap_err();
        assert_eq!((refusal.code, refusal.field.as_deref()), (code, Some(field)), "{}", refusal.message);
        assert_eq!(bench.facts().collect::<Vec<_>>(), before, "something was stored");
    }
}
