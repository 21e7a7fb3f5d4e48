//! Two devices edit apart, exchange bundles both ways, and end identical.

use layshaft_core::changes::Change;
use layshaft_core::record::{Identity, Part};
use layshaft_door::Bench;
use layshaft_door::command::{FitSprockets, LoadDemo, ReceiveBundle, RecordPart, Settle};
use layshaft_door::query::BareAsk;
use layshaft_storage::{Opened, Store};

use crate::{English, HOUR, SATURDAY, act, at};

fn device(id: u64) -> Bench {
    let opened = Opened { store: Store::in_memory().unwrap(), set_aside: None };
    Bench::with_store(opened, id).unwrap()
}

fn send(from: &Bench, to: &mut Bench, now_ms: i64) -> layshaft_door::command::Received {
    let bundle = from.bundle(&BareAsk {}, &at(now_ms)).unwrap().bundle;
    act(to, ReceiveBundle { bundle, as_second_bike: false }, now_ms).unwrap().received.unwrap()
}

fn facts(bench: &Bench) -> Vec<Change> {
    bench.facts().collect()
}

#[test]
fn two_devices_that_edit_apart_end_identical_and_show_the_value_that_lost() {
    let (mut phone, mut laptop) = (device(1), device(2));
    act(&mut phone, LoadDemo::default(), SATURDAY).unwrap();
    let came = send(&phone, &mut laptop, SATURDAY + HOUR);
    assert_eq!(came.bikes, 1);
    assert_eq!(facts(&phone), facts(&laptop));

    // Apart: both fit other sprockets, the phone adds a part, the laptop's clock is an hour slow.
    act(&mut phone, FitSprockets { front_teeth: 16, rear_teeth: 38, chain_links: None }, SATURDAY + 5 * HOUR).unwrap();
    let part = Part { title: "Split pins".into(), ..Part::default() };
    act(&mut phone, RecordPart { id: None, part }, SATURDAY + 5 * HOUR).unwrap();
    act(&mut laptop, FitSprockets { front_teeth: 14, rear_teeth: 41, chain_links: None }, SATURDAY + 4 * HOUR).unwrap();

    let to_laptop = send(&phone, &mut laptop, SATURDAY + 6 * HOUR);
    let to_phone = send(&laptop, &mut phone, SATURDAY + 6 * HOUR);
    assert!(to_laptop.changes > 0 && to_phone.changes > 0);
    assert_eq!(facts(&phone), facts(&laptop));
    let again = send(&laptop, &mut phone, SATURDAY + 7 * HOUR);
    assert_eq!(again.changes, 0, "a second exchange brings nothing new");

    let ask = |bench: &Bench| bench.bike(&BareAsk {}, &at(SATURDAY + 8 * HOUR)).unwrap();
    assert_eq!(ask(&phone), ask(&laptop));
    assert_eq!(ask(&phone).fitted.drive.front_teeth, Some(16), "the later edit holds");
    let rivals = ask(&phone).rivals;
    let lost = rivals.iter().find(|rival| rival.field == "frontTeeth").expect("the other edit is shown");
    assert_eq!(lost.lost, "14");

    let settle = Settle {
        record_kind: lost.record_kind.clone(),
        record: lost.record.clone(),
        field: lost.field.clone(),
        stamp: lost.stamp.clone(),
    };
    act(&mut phone, settle, SATURDAY + 9 * HOUR).unwrap();
    assert_eq!(ask(&phone).fitted.drive.front_teeth, Some(14));
}

#[test]
fn another_bike_is_refused_until_it_is_wanted_as_a_second_one() {
    use layshaft_core::error::Code;
    use layshaft_door::command::StartBike;
    let (mut phone, mut laptop) = (device(1), device(2));
    act(&mut phone, LoadDemo::default(), SATURDAY).unwrap();
    let identity = Identity { name: "Barn find".into(), ..Identity::default() };
    act(&mut laptop, StartBike { identity }, SATURDAY).unwrap();
    let bundle = phone.bundle(&BareAsk {}, &at(SATURDAY)).unwrap().bundle;

    let before = facts(&laptop);
    let refused =
        act(&mut laptop, ReceiveBundle { bundle: bundle.clone(), as_second_bike: false }, SATURDAY).unwrap_err();
    assert_eq!(refused.code, Code::OtherBike);
    assert!(refused.message.english().contains("Orrin Tern 175"), "{}", refused.message);
    assert_eq!(facts(&laptop), before, "nothing came in");

    act(&mut laptop, ReceiveBundle { bundle, as_second_bike: true }, SATURDAY).unwrap();
    let shelf = laptop.shelf(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!(shelf.bikes.len(), 2);
    assert_eq!(facts(&laptop).len(), before.len() + facts(&phone).len());
}

#[test]
fn what_a_bundle_could_not_bring_is_named_with_both_values_and_nothing_here_is_overwritten() {
    // One database, copied: both go on under one id, and one moment gives both the same stamp.
    let (mut phone, mut copy) = (device(1), device(1));
    for bench in [&mut phone, &mut copy] {
        bench.act("the-demo", &LoadDemo::default().into(), &at(SATURDAY)).unwrap();
    }
    let fit = |front_teeth, rear_teeth| FitSprockets { front_teeth, rear_teeth, chain_links: None };
    act(&mut phone, fit(16, 38), SATURDAY + HOUR).unwrap();
    let lost = act(&mut copy, fit(14, 38), SATURDAY + HOUR).unwrap();
    let part = Part { title: "Split pins".into(), ..Part::default() };
    act(&mut copy, RecordPart { id: None, part }, SATURDAY + 2 * HOUR).unwrap();

    let before = facts(&phone);
    let received = send(&copy, &mut phone, SATURDAY + 3 * HOUR);
    let named: Vec<_> =
        received.not_taken.iter().map(|each| (each.field.as_str(), each.here.as_str(), each.came.as_str())).collect();
    assert!(named.contains(&("frontTeeth", "16", "14")), "{named:?}");
    assert!(received.not_taken.iter().all(|each| each.bike == "Orrin Tern 175" && each.record_kind == "drive"));
    let told = received.changes + received.known + u32::try_from(named.len()).unwrap();
    assert_eq!(told as usize, facts(&copy).len(), "every fact of the bundle is new, known or named");

    let after = facts(&phone);
    assert!(before.iter().all(|fact| after.contains(fact)), "what was here is here");
    assert_eq!(after.len() - before.len(), received.changes as usize, "what could come came");
    let drive = phone.bike(&BareAsk {}, &at(SATURDAY + 4 * HOUR)).unwrap().fitted.drive;
    assert_eq!(drive.front_teeth, Some(16));
    // The command whose facts did not come is none of this bench: its id is free.
    let outcome = phone.act(&lost.batch, &fit(15, 39).into(), &at(SATURDAY + 4 * HOUR)).unwrap();
    assert!(outcome.changes > 0, "a command under that mark is done");
}
