//! Every way to a verdict.

use super::*;
use crate::inspection::pack::{Limit, Measure};
use crate::inspection::written::packs;
use crate::quantity::{Judgement, Quantity, Standing};
use crate::record::{AnswerWord, BrakeKind, Equipment};
use crate::units::Unit;

use AnswerWord::{DoesNotApply as WordDoesNotApply, Good, NotChecked, NotGood};
use Verdict::{DoesNotApply, Fail, Pass, Unknown};

fn item(measure: Measure) -> Item {
    Item {
        id: "thing".into(),
        area: "Things".into(),
        title: "The thing holds".into(),
        how: "Look.".into(),
        measure,
        stopper: true,
        caution: None,
        from_year: None,
        to_year: None,
        above_cc: None,
        only_with: None,
        job: None,
        source: Source::new(Message::as_entered("a rule of the tests"), Standing::Invented),
    }
}

fn tread() -> Item {
    item(Measure::Reading { unit: Unit::Millimetre, limit: Limit { min: Some(1.0), max: None } })
}

fn derived_item(limit: Limit) -> Item {
    item(Measure::Derived { quantity: "shown".into(), unit: Unit::KilometreHour, limit })
}

fn shown(value: f64, judgement: Judgement) -> Derived {
    let quantity = Quantity {
        id: "shown".into(),
        label: Message::as_entered("Shown at a true 80"),
        value,
        unit: Unit::KilometreHour,
        judgement,
        why: Some(Message::as_entered("it reads low")),
        source: Source::new(Message::as_entered("the tests"), Standing::Invented),
    };
    Derived { quantities: vec![quantity], findings: Vec::new() }
}

fn bike(word: Option<AnswerWord>, value: Option<f64>) -> Bike {
    let mut bike = Bike::default();
    bike.answers.insert("p/thing".into(), ItemAnswer { word, value, ..ItemAnswer::default() });
    bike
}

fn judged(item: &Item, derived: &Derived, word: Option<AnswerWord>, value: Option<f64>) -> (Verdict, String) {
    let judged = judge_item(&bike(word, value), derived, "p", item);
    assert_eq!(judged.stopper, judged.verdict == Fail);
    (judged.verdict, judged.reason.english())
}

fn first_used(year: Option<u32>, cc: Option<f64>) -> Bike {
    let mut bike = Bike::default();
    bike.identity.first_used = year;
    bike.identity.displacement_cc = cc;
    bike
}

#[test]
fn nothing_answered_is_unknown_whatever_the_item() {
    let none = Derived::default();
    for item in [item(Measure::Answer), tread(), derived_item(Limit::default())] {
        assert_eq!(judge_item(&Bike::default(), &none, "p", &item).verdict, Unknown);
        assert_eq!(judged(&item, &none, None, None).0, Unknown);
        assert_eq!(judged(&item, &none, Some(NotChecked), None), (Unknown, "Not checked.".into()));
        assert_eq!(judged(&item, &none, Some(WordDoesNotApply), None).0, DoesNotApply);
        assert_eq!(judged(&item, &none, Some(NotGood), None).0, Fail);
    }
}

#[test]
fn an_answer_for_another_pack_does_not_count() {
    let judged = judge_item(&bike(Some(Good), None), &Derived::default(), "q", &item(Measure::Answer));
    assert_eq!((judged.verdict, judged.answer), (Unknown, None));
}

#[test]
fn an_item_in_words_follows_the_word_and_no_number() {
    let none = Derived::default();
    assert_eq!(judged(&item(Measure::Answer), &none, Some(Good), None).0, Pass);
    assert_eq!(judged(&item(Measure::Answer), &none, None, Some(5.0)).0, Unknown);
}

#[test]
fn a_reading_is_held_against_its_limit() {
    let none = Derived::default();
    assert_eq!(judged(&tread(), &none, None, Some(1.0)), (Pass, "1 mm is at least 1 mm.".into()));
    assert_eq!(judged(&tread(), &none, Some(Good), Some(0.8)), (Fail, "0.8 mm is below 1 mm.".into()));
    let (verdict, reason) = judged(&tread(), &none, Some(NotGood), Some(3.0));
    assert_eq!((verdict, reason.as_str()), (Fail, "3 mm is at least 1 mm, but it was answered: not good."));
}

#[test]
fn good_without_a_reading_does_not_pass_an_item_with_a_limit() {
    let none = Derived::default();
    let (verdict, reason) = judged(&tread(), &none, Some(Good), None);
    assert_eq!(
        (verdict, reason.as_str()),
        (Unknown, "Answered good, but not measured: at least 1 mm needs a reading.")
    );
    let limited = derived_item(Limit { min: Some(80.0), max: None });
    assert_eq!(judged(&limited, &none, Some(Good), None).0, Unknown);
}

#[test]
fn numbers_that_cannot_be_never_pass() {
    let none = Derived::default();
    for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, -3.0, 35.0, 1e300] {
        for word in [None, Some(Good)] {
            assert_eq!(judged(&tread(), &none, word, Some(value)).0, Unknown, "{value}");
        }
    }
    let (_, reason) = judged(&tread(), &none, Some(Good), Some(35.0));
    assert_eq!(reason, "Reading: 35 mm is outside 0 to 25 mm: measure again.");
    let open = derived_item(Limit::default());
    let limited = derived_item(Limit { min: Some(80.0), max: None });
    for value in [f64::NAN, f64::INFINITY, -5.0, 900.0] {
        assert_eq!(judged(&open, &none, Some(Good), Some(value)).0, Unknown, "{value}");
    }
    for value in [f64::NAN, f64::INFINITY] {
        assert_eq!(judged(&open, &shown(value, Judgement::Fine), None, None).0, Unknown);
        assert_eq!(judged(&limited, &shown(value, Judgement::Fine), None, None).0, Unknown);
    }
}

#[test]
fn answers_of_two_devices_that_contradict_each_other_do_not_pass() {
    let none = Derived::default();
    assert_eq!(judged(&tread(), &none, Some(WordDoesNotApply), Some(3.0)).0, Unknown);
    assert_eq!(judged(&tread(), &none, Some(NotChecked), Some(3.0)).0, Unknown);
}

#[test]
fn a_derived_item_follows_the_judgement_of_the_bike_where_the_pack_sets_no_limit() {
    let open = derived_item(Limit::default());
    assert_eq!(judged(&open, &shown(84.0, Judgement::Fine), None, None).0, Pass);
    assert_eq!(judged(&open, &shown(84.0, Judgement::Open), None, None).0, Unknown);
    let (verdict, reason) = judged(&open, &shown(71.6, Judgement::Outside), None, None);
    assert_eq!(verdict, Fail);
    assert_eq!(reason, "Worked out from the bike. Shown at a true 80: 72 km/h (it reads low).");
    let verdict = judge_item(&Bike::default(), &shown(71.6, Judgement::Outside), "p", &open);
    assert_eq!(verdict.derived_value, Some(71.6));
}

#[test]
fn a_derived_item_follows_the_limit_of_the_pack_where_there_is_one() {
    let limited = derived_item(Limit { min: Some(80.0), max: None });
    let (verdict, reason) = judged(&limited, &shown(79.96, Judgement::Fine), None, None);
    assert_eq!((verdict, reason.as_str()), (Fail, "Worked out from the bike: 79.96 km/h is below 80 km/h."));
    assert_eq!(judged(&limited, &shown(80.0, Judgement::Outside), None, None).0, Pass);
    let mut in_miles = shown(90.0, Judgement::Fine);
    in_miles.quantities[0].unit = Unit::MileHour;
    assert_eq!(judged(&limited, &in_miles, None, None).0, Unknown);
}

#[test]
fn a_prediction_beats_a_bare_good_and_the_reason_tells_both() {
    let open = derived_item(Limit::default());
    let (verdict, reason) = judged(&open, &shown(71.6, Judgement::Outside), Some(Good), None);
    assert_eq!(verdict, Fail);
    assert!(reason.contains("72 km/h") && reason.contains("Answered good without a reading"), "{reason}");
}

#[test]
fn good_with_a_reading_beats_the_prediction_and_the_reason_tells_both() {
    let open = derived_item(Limit::default());
    let (verdict, reason) = judged(&open, &shown(71.6, Judgement::Outside), Some(Good), Some(82.0));
    assert_eq!(verdict, Pass);
    assert!(reason.starts_with("Measured 82 km/h and found good.") && reason.contains("72 km/h"), "{reason}");
    let judged = judge_item(&bike(Some(Good), Some(82.0)), &shown(71.6, Judgement::Outside), "p", &open);
    assert_eq!(judged.derived_value, None);
}

#[test]
fn a_reading_beats_the_prediction_both_ways_where_the_pack_sets_a_limit() {
    let limited = derived_item(Limit { min: Some(80.0), max: None });
    let (verdict, reason) = judged(&limited, &shown(71.6, Judgement::Outside), None, Some(82.0));
    assert_eq!(verdict, Pass);
    assert!(reason.contains("82 km/h is at least 80 km/h") && reason.contains("72 km/h is below"), "{reason}");
    let (verdict, reason) = judged(&limited, &shown(84.0, Judgement::Fine), Some(Good), Some(78.0));
    assert_eq!(verdict, Fail);
    assert!(reason.contains("78 km/h is below 80 km/h") && reason.contains("84 km/h"), "{reason}");
}

#[test]
fn a_reading_that_nobody_judged_does_not_pass() {
    let open = derived_item(Limit::default());
    assert_eq!(judged(&open, &Derived::default(), None, Some(82.0)).0, Unknown);
    assert_eq!(judged(&open, &shown(84.0, Judgement::Fine), None, Some(82.0)).0, Unknown);
    assert_eq!(judged(&open, &shown(71.6, Judgement::Outside), None, Some(82.0)).0, Fail);
    assert_eq!(judged(&open, &shown(71.6, Judgement::Outside), Some(Good), Some(-4.0)).0, Fail);
}

#[test]
fn not_good_fails_though_the_bike_says_otherwise() {
    let (verdict, reason) = judged(&derived_item(Limit::default()), &shown(84.0, Judgement::Fine), Some(NotGood), None);
    assert_eq!(verdict, Fail);
    assert!(reason.starts_with("Answered: not good.") && reason.contains("84 km/h"), "{reason}");
}

#[test]
fn without_a_prediction_the_word_decides_an_open_derived_item() {
    let open = derived_item(Limit::default());
    assert_eq!(judged(&open, &Derived::default(), Some(Good), None).0, Pass);
    assert_eq!(judged(&open, &shown(84.0, Judgement::Open), Some(Good), None).0, Pass);
}

#[test]
fn the_year_of_first_use_switches_an_item_and_an_unknown_year_asks() {
    let from = Item { from_year: Some(1986), ..item(Measure::Answer) };
    let at = |year| judge_item(&first_used(year, None), &Derived::default(), "p", &from);
    assert_eq!(at(Some(1985)).verdict, DoesNotApply);
    assert_eq!(at(Some(1985)).reason, "Asked of machines first used from 1986 on; this one was first used in 1985.");
    assert_eq!((at(Some(1987)).verdict, at(Some(1987)).reason.english().as_str()), (Unknown, "Not checked yet."));
    assert!(
        at(Some(1986)).reason.english().ends_with("the year in which this rule begins: the day in the papers decides.")
    );
    assert_eq!(at(None).reason, "Not checked yet. Asked because the year of first use is not known.");
    let to = Item { from_year: None, to_year: Some(1983), ..from.clone() };
    let at = |year| judge_item(&first_used(year, None), &Derived::default(), "p", &to).verdict;
    assert_eq!([at(Some(1983)), at(Some(1984)), at(None)], [Unknown, DoesNotApply, Unknown]);
}

#[test]
fn the_displacement_switches_an_item_and_an_unknown_one_asks() {
    let above = Item { above_cc: Some(50.0), ..item(Measure::Answer) };
    let at = |cc| judge_item(&first_used(None, cc), &Derived::default(), "p", &above);
    assert_eq!(at(Some(50.0)).verdict, DoesNotApply);
    assert_eq!(at(Some(49.5)).reason, "Asked above 50 cc; this one has 49.5 cc.");
    assert_eq!(at(Some(50.1)).verdict, Unknown);
    for cc in [None, Some(f64::NAN)] {
        assert_eq!(at(cc).reason, "Not checked yet. Asked because the displacement is not known.");
    }
}

#[test]
fn an_item_that_is_not_asked_stays_so_whatever_was_answered() {
    let from = Item { from_year: Some(1986), ..item(Measure::Answer) };
    let mut bike = bike(Some(NotGood), None);
    bike.identity.first_used = Some(1983);
    let judged = judge_item(&bike, &Derived::default(), "p", &from);
    assert_eq!((judged.verdict, judged.stopper), (DoesNotApply, false));
}

fn braked(front: BrakeKind, rear: BrakeKind) -> Bike {
    let mut bike = Bike::default();
    bike.fitted.front_brake.brake = Some(front);
    bike.fitted.rear_brake.brake = Some(rear);
    bike
}

#[test]
fn what_the_bike_has_not_is_not_asked_and_whoever_knows_better_answers_it() {
    let fluid = Item { only_with: Some(Equipment::HydraulicBrake), ..item(Measure::Answer) };
    let cable = Item { only_with: Some(Equipment::MechanicalBrake), ..item(Measure::Answer) };
    let verdict = |bike: &Bike, item: &Item| judge_item(bike, &Derived::default(), "p", item).verdict;
    let (drums, discs, mixed) = (
        braked(BrakeKind::Drum, BrakeKind::Drum),
        braked(BrakeKind::Disc, BrakeKind::Disc),
        braked(BrakeKind::Disc, BrakeKind::Drum),
    );
    assert_eq!([&drums, &discs, &mixed].map(|bike| verdict(bike, &fluid)), [DoesNotApply, Unknown, Unknown]);
    assert_eq!([&drums, &discs, &mixed].map(|bike| verdict(bike, &cable)), [Unknown, DoesNotApply, Unknown]);
    // A brake of which nothing is known asks.
    assert_eq!(verdict(&Bike::default(), &fluid), Unknown);
    let said = |word| Bike { answers: bike(Some(word), None).answers, ..drums.clone() };
    assert_eq!([NotGood, Good, NotChecked].map(|word| verdict(&said(word), &fluid)), [Fail, Pass, DoesNotApply]);
}

#[test]
fn an_answer_to_the_same_question_in_another_pack_counts_and_says_so() {
    let packs = packs();
    let of = |pack: &str, id: &str| {
        let pack = packs.iter().find(|known| known.id == pack).unwrap();
        pack.items.iter().find(|item| item.id == id).unwrap().clone()
    };
    let answered = |pack: &str, word, at| {
        let answer = ItemAnswer { word: Some(word), answered_ms: Some(at), ..ItemAnswer::default() };
        (format!("{pack}/brake.controls"), answer)
    };
    let judged = |answers: &[(String, ItemAnswer)], id: &str| {
        let bike = Bike { answers: answers.iter().cloned().collect(), ..Bike::default() };
        let judged = judge_item(&bike, &Derived::default(), "gb", &of("gb", id));
        (judged.verdict, judged.reason.english())
    };
    let (verdict, reason) = judged(&[answered("eu", NotGood, 1)], "brake.controls");
    assert_eq!(verdict, Fail);
    assert!(reason.ends_with("You answered this in the walk-through for European Union."), "{reason}");
    // The last answer counts, wherever it was given, also one that takes an earlier one back.
    assert_eq!(judged(&[answered("eu", NotGood, 1), answered("gb", Good, 2)], "brake.controls").0, Pass);
    assert_eq!(judged(&[answered("eu", NotGood, 2), answered("gb", Good, 1)], "brake.controls").0, Fail);
    assert_eq!(judged(&[answered("eu", Good, 1), answered("gb", NotChecked, 2)], "brake.controls").0, Unknown);
    assert_eq!(judged(&[answered("eu", Good, 1), answered("gb", NotChecked, 1)], "brake.controls").0, Unknown);
    // The same id with other words is another question.
    let plate = ("eu/identity.plate".to_owned(), ItemAnswer { word: Some(Good), ..ItemAnswer::default() });
    assert_eq!(judged(&[plate], "identity.plate").0, Unknown);
}
