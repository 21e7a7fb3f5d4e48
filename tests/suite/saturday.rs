//! The Saturday, from first run to a bundle that brings everything back.

use layshaft_core::coating::CureAsk;
use layshaft_core::inspection::{InspectionAsk, Measure, Verdict};
use layshaft_core::record::{AnswerWord, CureState, ItemAnswer, Tightening};
use layshaft_core::ripple::{Proposal, RippleAsk};
use layshaft_core::today::TodayAsk;
use layshaft_door::Bench;
use layshaft_door::command::{
    AnswerItem, FitSprockets, LoadDemo, PutTighteningAway, ReceiveBundle, RecordTightening, StartCure, Undo,
};
use layshaft_door::query::BareAsk;

use crate::{HOUR, SATURDAY, act, at};

#[test]
fn the_saturday_ends_with_everything_back_from_the_bundle() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("layshaft.db");
    let open = || Bench::open_native(&file).unwrap();
    let mut bench = open();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();

    // A coat goes on; the app is closed and opened again two days later.
    let products = bench.products(&BareAsk {}, &at(SATURDAY)).unwrap().products;
    let paint = products.iter().find(|product| product.full_cure_hours.is_some_and(|hours| hours > 20.0)).unwrap();
    let start = StartCure { title: "Side panels".into(), product: paint.clone(), job: None, applied_ms: None };
    let coat = act(&mut bench, start, SATURDAY).unwrap().made.unwrap();
    let cure =
        |bench: &Bench, now| bench.cure(&CureAsk { coat: Some(coat.clone()), ..CureAsk::default() }, &at(now)).unwrap();
    assert_eq!(cure(&bench, SATURDAY).state, CureState::Wet);
    drop(bench);
    let mut bench = open();
    let later = SATURDAY + 10 * HOUR;
    let ten_hours_on = cure(&bench, later);
    assert!(ten_hours_on.equivalent_hours > 0.0);
    assert!(ten_hours_on.equivalent_hours < 10.0, "the garage is colder than the can says: {ten_hours_on:?}");

    // Other sprockets: the ripple first, then the fitting, then the answer is the fitted one.
    let proposals = vec![Proposal::Sprockets { front_teeth: 16, rear_teeth: 38, chain_links: None }];
    let ripple = bench.ripple(&RippleAsk { proposals }, &at(later)).unwrap();
    let moved: Vec<&str> = ripple.shifts.iter().map(|shift| shift.quantity.id.as_str()).collect();
    for wanted in ["speed.", "chain.", "speedometer."] {
        assert!(moved.iter().any(|id| id.starts_with(wanted)), "{wanted} is not in {moved:?}");
    }
    let fitted = act(&mut bench, FitSprockets { front_teeth: 16, rear_teeth: 38, chain_links: None }, later).unwrap();
    let gearing = bench.gearing(&Default::default(), &at(later)).unwrap();
    assert_eq!((gearing.proposed.front_teeth, gearing.proposed.rear_teeth), (16, 38));
    assert!((gearing.engine_speed_change_percent.unwrap() + 13.11).abs() < 0.02);
    act(&mut bench, Undo { batch: fitted.batch }, later).unwrap();
    assert_eq!(bench.gearing(&Default::default(), &at(later)).unwrap().proposed.front_teeth, 15);
    act(&mut bench, FitSprockets { front_teeth: 16, rear_teeth: 38, chain_links: None }, later).unwrap();

    // Twelve items, one by a reading.
    let ask = InspectionAsk { pack: Some("gb".into()) };
    let before = bench.inspection(&ask, &at(later)).unwrap();
    assert_ne!(before.readiness.verdict, Verdict::Pass);
    let measured = before.items.iter().find(|verdict| matches!(verdict.item.measure, Measure::Reading { .. })).unwrap();
    let say = |item: &str, answer| AnswerItem { pack: "gb".into(), item: item.to_owned(), answer };
    act(&mut bench, say(&measured.item.id, ItemAnswer { value: Some(0.4), ..ItemAnswer::default() }), later).unwrap();
    let in_words = before
        .items
        .iter()
        .filter(|verdict| matches!(verdict.item.measure, Measure::Answer) && verdict.verdict == Verdict::Unknown);
    for (number, verdict) in in_words.take(11).enumerate() {
        let word = if number == 3 { AnswerWord::NotGood } else { AnswerWord::Good };
        act(&mut bench, say(&verdict.item.id, ItemAnswer { word: Some(word), ..ItemAnswer::default() }), later)
            .unwrap();
    }
    let after = bench.inspection(&ask, &at(later)).unwrap();
    assert!(after.readiness.passes >= before.readiness.passes + 10);
    assert!(after.readiness.fails > before.readiness.fails);
    assert!(after.readiness.unknowns > 0 && after.readiness.unknowns < before.readiness.unknowns);
    assert_eq!(after.readiness.verdict, Verdict::Fail);

    // Out with the bundle, everything away, in again.
    let today = bench.today(&TodayAsk::default(), &at(later)).unwrap();
    let bundle = bench.bundle(&BareAsk {}, &at(later)).unwrap();
    let facts: Vec<_> = bench.facts().collect();
    let mut empty = Bench::in_memory().unwrap();
    let received = act(&mut empty, ReceiveBundle { bundle: bundle.bundle, as_second_bike: false }, later).unwrap();
    assert_eq!(received.received.unwrap().changes as usize, facts.len());
    assert_eq!(empty.facts().collect::<Vec<_>>(), facts);
    assert_eq!(empty.today(&TodayAsk::default(), &at(later)).unwrap(), today);
    assert_eq!(empty.inspection(&ask, &at(later)).unwrap(), after);
}

#[test]
fn the_same_call_twice_changes_once() {
    let mut bench = Bench::in_memory().unwrap();
    let call = || layshaft_door::Command::from(LoadDemo::default());
    let first = bench.act("call-1", &call(), &at(SATURDAY)).unwrap();
    let second = bench.act("call-1", &call(), &at(SATURDAY + HOUR)).unwrap();
    assert!(first.changes > 0);
    assert_eq!(second.changes, 0);
    assert_eq!(second.made, first.made);
    assert_eq!(bench.shelf(&BareAsk {}, &at(SATURDAY)).unwrap().bikes.len(), 1);
}

#[test]
fn a_makers_torque_is_kept_with_the_bike_changed_and_put_away() {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let joints = |bench: &Bench| -> Vec<(String, f64)> {
        let sheet = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
        sheet.tightenings.iter().map(|card| (card.tightening.joint.clone(), card.tightening.torque_nm)).collect()
    };
    let before = joints(&bench);
    let plug = |torque_nm| Tightening {
        joint: "Drain plug".into(),
        torque_nm,
        source: "manual, page 9".into(),
        ..Tightening::default()
    };
    let made = act(&mut bench, RecordTightening { id: None, tightening: plug(22.0) }, SATURDAY).unwrap();
    let id = made.made.unwrap();
    act(&mut bench, RecordTightening { id: Some(id.clone()), tightening: plug(25.0) }, SATURDAY + 1).unwrap();
    assert_eq!(joints(&bench).first(), Some(&("Drain plug".to_owned(), 25.0)));
    assert_eq!(joints(&bench).len(), before.len() + 1);
    act(&mut bench, PutTighteningAway { id }, SATURDAY + 2).unwrap();
    assert_eq!(joints(&bench), before);
}
