//! The items of an inspection answer themselves from what the bike has not, in every pack, and whoever knows better objects.

use layshaft_core::inspection::{InspectionAsk, ItemVerdict, Verdict};
use layshaft_core::record::{
    AnswerWord, Brake, BrakeKind, Consumer, ConsumerRole, ElectricalSystem, End, Equipment, Identity, ItemAnswer, Side,
    Strokes, Supply,
};
use layshaft_door::Bench;
use layshaft_door::command::{AnswerItem, DescribeBike, RecordBrake, RecordConsumer, RecordSupply, StartBike, Undo};

use crate::{English, HOUR, SATURDAY, act, at};

fn named() -> Identity {
    Identity { name: "Barn find".into(), ..Identity::default() }
}

fn own_bike() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, StartBike { identity: named() }, SATURDAY).unwrap();
    bench
}

fn item(bench: &Bench, pack: &str, id: &str) -> ItemVerdict {
    let ask = InspectionAsk { pack: Some(pack.into()) };
    let items = bench.inspection(&ask, &at(SATURDAY)).unwrap().items;
    items.into_iter().find(|item| item.item.id == id).unwrap()
}

fn told(bench: &Bench, pack: &str, id: &str) -> (bool, String) {
    let judged = item(bench, pack, id);
    assert_eq!(judged.by_itself, judged.verdict == Verdict::DoesNotApply, "{id}");
    (judged.by_itself, judged.reason.english())
}

fn lamp(bench: &mut Bench, id: &str, role: ConsumerRole) {
    let consumer = Consumer { name: id.into(), role: Some(role), watts: 10.0, count: 1, ..Consumer::default() };
    act(bench, RecordConsumer { side: Side::Standard, id: Some(id.into()), consumer }, SATURDAY).unwrap();
}

#[test]
fn two_drums_have_neither_fluid_nor_anti_lock_brakes_and_say_why() {
    let mut bench = own_bike();
    assert!(!told(&bench, "eu", "brake.abs").0, "of a brake that nobody knows it is asked");
    for end in [End::Front, End::Rear] {
        let brake = Brake { brake: Some(BrakeKind::Drum), ..Brake::default() };
        act(&mut bench, RecordBrake { side: Side::Standard, end, brake }, SATURDAY).unwrap();
    }
    for (pack, id) in [("eu", "brake.abs"), ("eu", "brake.fluid"), ("gb", "brake.hydraulics")] {
        let (itself, why) = told(&bench, pack, id);
        assert!(itself && why.starts_with("Not on this bike: both brakes are drums"), "{id}: {why}");
    }
    let answer = ItemAnswer { word: Some(AnswerWord::NotGood), ..ItemAnswer::default() };
    act(&mut bench, AnswerItem { pack: "gb".into(), item: "brake.fluid".into(), answer }, SATURDAY).unwrap();
    let judged = item(&bench, "eu", "brake.fluid");
    assert_eq!((judged.verdict, judged.by_itself), (Verdict::Fail, false), "who knows better is believed");
}

#[test]
fn lamps_supply_and_engine_answer_for_indicators_battery_and_exhaust() {
    let mut bench = own_bike();
    lamp(&mut bench, "headlamp", ConsumerRole::Headlamp);
    assert!(!told(&bench, "gb", "indicator.works").0, "one lamp is not all of them");
    lamp(&mut bench, "tail", ConsumerRole::Tail);
    assert!(told(&bench, "gb", "indicator.works").1.contains("none of them is an indicator"));
    assert!(told(&bench, "eu", "indicator.rate").0);
    lamp(&mut bench, "indicators", ConsumerRole::Indicators);
    assert!(!told(&bench, "gb", "indicator.works").0);

    let supply = Supply { system: Some(ElectricalSystem::LightingCoil), ..Supply::default() };
    act(&mut bench, RecordSupply { side: Side::Standard, supply }, SATURDAY).unwrap();
    assert!(told(&bench, "gb", "battery").1.contains("without a battery"));
    let identity = Identity { strokes: Some(Strokes::Two), ..named() };
    act(&mut bench, DescribeBike { identity }, SATURDAY).unwrap();
    assert!(told(&bench, "eu", "exhaust.co").1.contains("two-stroke"));
}

#[test]
fn what_an_answer_tells_of_the_bike_holds_for_every_item_in_every_pack_until_somebody_objects() {
    let mut bench = own_bike();
    let answer = |bench: &mut Bench, id: &str, word, at_ms| {
        let answer = ItemAnswer { word: Some(word), ..ItemAnswer::default() };
        act(bench, AnswerItem { pack: "eu".into(), item: id.into(), answer }, at_ms).unwrap()
    };
    let said = answer(&mut bench, "indicator.works", AnswerWord::DoesNotApply, SATURDAY);
    for (pack, id) in [("eu", "indicator.rate"), ("gb", "indicator.rate"), ("gb", "indicator.works")] {
        assert!(told(&bench, pack, id).1.contains("you said that it has no indicators"), "{pack}/{id}");
    }
    act(&mut bench, Undo { batch: said.batch }, SATURDAY).unwrap();
    assert!(!told(&bench, "gb", "indicator.rate").0);
    answer(&mut bench, "indicator.works", AnswerWord::DoesNotApply, SATURDAY + HOUR);
    answer(&mut bench, "indicator.works", AnswerWord::Good, SATURDAY + 2 * HOUR);
    assert!(!told(&bench, "gb", "indicator.rate").0, "indicators that work are there");

    let identity = Identity { without: vec![Equipment::PassengerSeat, Equipment::Mirrors], ..named() };
    act(&mut bench, DescribeBike { identity }, SATURDAY).unwrap();
    assert!(told(&bench, "gb", "rests.passenger").1.contains("no seat for a passenger"));
    assert!(told(&bench, "gb", "mirrors").1.contains("no mirrors"));
}
