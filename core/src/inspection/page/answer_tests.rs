//! The laws of the fold, and the page as a whole.

use proptest::prelude::*;
use proptest::sample::Index;

use super::*;
use crate::inspection::pack::Measure;
use crate::inspection::written::packs;
use crate::record::{AnswerWord, ItemAnswer};
use Verdict::{DoesNotApply, Fail, Pass, Unknown};

fn verdict(verdict: Verdict, stopper: bool) -> ItemVerdict {
    let item = packs().remove(0).items.remove(0);
    ItemVerdict {
        source: item.source.clone(),
        item,
        verdict,
        reason: Message::as_entered("So it is."),
        stopper,
        answer: None,
        derived_value: None,
        unconfirmed: false,
        job: None,
        by_itself: false,
    }
}

fn some() -> impl Strategy<Value = Vec<ItemVerdict>> {
    let one = (prop_oneof![Just(Pass), Just(Fail), Just(Unknown), Just(DoesNotApply)], any::<bool>());
    proptest::collection::vec(one.prop_map(|(found, stopper)| verdict(found, stopper && found == Fail)), 0..12)
}

fn on(year: u32, cc: f64, pack: &str) -> Bike {
    let mut bike = Bike::default();
    bike.identity.first_used = Some(year);
    bike.identity.displacement_cc = Some(cc);
    bike.identity.pack = Some(pack.into());
    bike
}

fn sheet(bike: &Bike) -> InspectionAnswer {
    inspection_answer(bike, &InspectionAsk::default()).unwrap()
}

fn asked(bike: &Bike, id: &str) -> bool {
    let sheet = sheet(bike);
    let item = sheet.items.iter().find(|item| item.item.id == id).unwrap_or_else(|| panic!("{id}"));
    item.verdict != DoesNotApply
}

proptest! {
    #[test]
    fn the_order_of_the_items_does_not_matter(items in some(), turns in proptest::collection::vec(any::<Index>(), 12)) {
        let mut shuffled = items.clone();
        for (at, turn) in turns.iter().enumerate().take(items.len()) {
            shuffled.swap(at, turn.index(items.len()));
        }
        prop_assert_eq!(readiness(&items), readiness(&shuffled));
    }

    #[test]
    fn one_more_unknown_never_makes_a_pass(mut items in some()) {
        let before = readiness(&items).verdict;
        items.push(verdict(Unknown, false));
        let after = readiness(&items).verdict;
        prop_assert_eq!(after, if before == Fail { Fail } else { Unknown });
    }

    #[test]
    fn one_more_fail_always_fails(mut items in some()) {
        items.push(verdict(Fail, false));
        prop_assert_eq!(readiness(&items).verdict, Fail);
    }

    #[test]
    fn what_does_not_apply_changes_nothing_but_its_own_count(mut items in some()) {
        let before = readiness(&items);
        items.push(verdict(DoesNotApply, false));
        let after = readiness(&items);
        prop_assert_eq!(after.does_not_apply, before.does_not_apply + 1);
        prop_assert_eq!(Readiness { does_not_apply: before.does_not_apply, ..after }, before);
    }

    #[test]
    fn it_passes_only_when_something_passes_and_nothing_fails_or_is_unknown(items in some()) {
        let fold = readiness(&items);
        let counted = fold.passes + fold.fails + fold.unknowns + fold.does_not_apply;
        prop_assert_eq!(counted as usize, items.len());
        prop_assert_eq!(fold.verdict == Pass, fold.passes > 0 && fold.fails == 0 && fold.unknowns == 0);
        prop_assert_eq!(fold.sentence.english().ends_with(": ready to book."), fold.verdict == Pass);
        prop_assert_eq!(fold.stoppers.len(), items.iter().filter(|item| item.stopper).count());
    }
}

#[test]
fn the_sentence_counts_what_fails_is_unknown_and_passes() {
    let items =
        [vec![verdict(Fail, false); 3], vec![verdict(Unknown, false); 28], vec![verdict(Pass, false); 9]].concat();
    assert_eq!(readiness(&items).sentence, "3 would fail, 28 unknown, 9 pass: not ready to book.");
}

#[test]
fn nothing_looked_at_is_unknown() {
    assert_eq!(readiness(&[]).verdict, Unknown);
    assert_eq!(readiness(&[verdict(DoesNotApply, false)]).verdict, Unknown);
}

#[test]
fn a_stopper_that_follows_from_the_bike_fails_though_every_item_passes() {
    let fold = fold(&[verdict(Pass, false)], [Message::as_entered("The chain cannot be closed.")].into_iter());
    assert_eq!((fold.verdict, fold.fails), (Fail, 0));
    assert_eq!(fold.stoppers, ["The chain cannot be closed."]);
    assert_eq!(fold.sentence, "0 would fail, 0 unknown, 1 pass, but the bike has a stopper: not ready to book.");
}

#[test]
fn a_bike_that_nobody_looked_at_is_not_ready() {
    for pack in ["eu", "gb"] {
        let fold = sheet(&on(1983, 175.0, pack)).readiness;
        assert_ne!(fold.verdict, Pass);
        assert!(fold.unknowns > 30, "{}", fold.sentence);
    }
}

#[test]
fn a_machine_of_1983_and_one_of_1990_are_asked_different_things_in_great_britain() {
    let (older, younger) = (on(1983, 175.0, "gb"), on(1990, 175.0, "gb"));
    let later = [
        "lamp.stop.both",
        "indicator.fitted",
        "telltale.main-beam",
        "speedometer.both-units",
        "exhaust.marks",
        "stand.side",
    ];
    for id in later {
        assert!(!asked(&older, id) && asked(&younger, id), "{id}");
    }
    assert!(asked(&older, "speedometer.fitted") && !asked(&younger, "speedometer.fitted"));
    assert!(asked(&older, "indicator.rate") && asked(&older, "brake.secondary.efficiency"));
}

#[test]
fn very_old_and_very_small_machines_are_asked_less_in_great_britain() {
    let veteran = on(1925, 350.0, "gb");
    for id in ["brake.secondary.efficiency", "brake.systems", "lamp.head", "lamp.stop", "speedometer.fitted"] {
        assert!(!asked(&veteran, id), "{id}");
    }
    assert!(asked(&veteran, "brake.service.efficiency"));
    let moped = on(1979, 49.0, "gb");
    assert!(!asked(&moped, "tyre.front.tread") && !asked(&moped, "speedometer.fitted") && asked(&moped, "tyre.damage"));
}

#[test]
fn all_items_answered_well_make_a_pass_and_taking_one_back_undoes_it() {
    let mut bike = on(1983, 175.0, "gb");
    for item in packs().remove(1).items {
        let middle = |min: Option<f64>, max: Option<f64>| min.map_or(max.unwrap_or(80.0) / 2.0, |min| min * 1.2);
        let value = item.measure.value().map(|(_, limit)| middle(limit.min, limit.max));
        let answer = ItemAnswer { word: Some(AnswerWord::Good), value, ..ItemAnswer::default() };
        bike.answers.insert(format!("gb/{}", item.id), answer.checked(&item).unwrap());
    }
    let ready = sheet(&bike).readiness;
    assert_eq!(ready.verdict, Pass, "{ready:?}");
    assert!(ready.does_not_apply >= 6);
    bike.answers.get_mut("gb/horn").unwrap().word = Some(AnswerWord::NotChecked);
    assert_eq!(sheet(&bike).readiness.verdict, Unknown);
}

#[test]
fn a_failing_stopper_item_is_listed_with_its_reason() {
    let mut bike = on(1983, 175.0, "gb");
    bike.answers.insert("gb/tyre.front.tread".into(), ItemAnswer { value: Some(0.8), ..ItemAnswer::default() });
    let stoppers = sheet(&bike).readiness.stoppers;
    let said = "Not met: Front tyre: grooves at least 1.0 mm deep over three quarters of the tread, all round. 0.8 mm is below 1 mm.";
    assert!(stoppers.iter().any(|stopper| *stopper == said), "{stoppers:?}");
}

#[test]
fn the_pack_is_the_one_asked_for_else_the_bikes_own_else_the_first() {
    let ask = |mark: &str| InspectionAsk { pack: Some(mark.into()) };
    let bike = on(1983, 175.0, "gb");
    assert_eq!(inspection_answer(&bike, &ask("eu")).unwrap().pack.id, "eu");
    assert_eq!(sheet(&bike).pack.id, "gb");
    assert_eq!(sheet(&Bike::default()).pack.id, "eu");
    let text = inspection_answer(&bike, &ask("moon")).unwrap_err().english();
    assert_eq!(text, "there is no inspection pack with the id moon");
    let elsewhere = sheet(&on(1983, 175.0, "club"));
    assert_eq!(elsewhere.pack.id, "eu");
    assert!(elsewhere.caution.english().starts_with("The pack “club” that this bike names is not on this device"));
}

#[test]
fn the_page_lists_both_packs_and_keeps_the_order_of_the_walk_through() {
    let page = sheet(&on(1983, 175.0, "gb"));
    assert_eq!(page.packs.iter().map(|card| card.id.as_str()).collect::<Vec<_>>(), ["eu", "gb"]);
    assert_eq!(page.pack.items as usize, page.items.len());
    assert_eq!(page.first_used, Some(1983));
    assert!(page.items.iter().map(|item| &item.item).eq(packs()[1].items.iter()));
    let unconfirmed = page.items.iter().filter(|item| item.unconfirmed);
    assert!(unconfirmed.clone().any(|item| matches!(item.item.measure, Measure::Reading { .. })));
    assert!(page.items.iter().all(|item| item.unconfirmed == item.item.is_unconfirmed()));
}
