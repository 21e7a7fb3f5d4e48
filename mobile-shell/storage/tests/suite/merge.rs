//! Bundles exchanged both ways end in the same facts, in whatever order they went.

use layshaft_core::changes::{Change, Device, Ledger, Stamp};
use layshaft_storage::{Clash, Store};
use proptest::prelude::*;
use serde_json::Value;

use crate::bench::{change, on, store};

fn exchange(from: &Store, to: &mut Store) {
    let bundle = Store::read_bundle(&from.bundle(None).unwrap()).unwrap();
    to.receive(&bundle, &[]).unwrap();
}

#[test]
fn two_devices_that_edited_apart_end_identical_and_keep_the_loser() {
    let first = change("tern", "drive", "fitted/drive", "frontTeeth", 15, 1);
    let mut here = store(std::slice::from_ref(&first));
    let mut there = store(std::slice::from_ref(&first));
    let seen = Some(first.stamp);
    here.append(&[Change { seen, ..change("tern", "drive", "fitted/drive", "frontTeeth", 16, 2) }]).unwrap();
    there.append(&[Change { seen, ..on(2, change("tern", "drive", "fitted/drive", "frontTeeth", 14, 3)) }]).unwrap();

    exchange(&here, &mut there);
    exchange(&there, &mut here);
    assert_eq!(here.changes().unwrap(), there.changes().unwrap());
    assert_eq!(here.bundle(None).unwrap(), there.bundle(None).unwrap());
    let ledger = Ledger::fold(here.changes().unwrap());
    let rivals = ledger.fields(&first.key).unwrap().rivals();
    assert_eq!((rivals[0].holds.clone(), rivals[0].lost.clone()), (14.into(), 16.into()));
}

#[test]
fn two_devices_under_one_mark_are_told_of_a_clash_and_neither_fact_is_overwritten() {
    let mut here = store(&[change("tern", "job", "j1", "title", "Here", 1)]);
    let there = store(&[change("tern", "job", "j1", "title", "There", 1)]);
    let bundle = Store::read_bundle(&there.bundle(None).unwrap()).unwrap();
    let received = here.receive(&bundle, &[]).unwrap();
    assert_eq!((received.changes, received.known), (0, 0));
    let clash = Clash { came: there.changes().unwrap()[0].clone(), here: "\"Here\"".to_owned() };
    assert_eq!(received.clashes, [clash]);
    assert_eq!(here.changes().unwrap()[0].value, Value::from("Here"));
}

fn some_change() -> impl Strategy<Value = Change> {
    let value = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        ".*".prop_map(Value::from),
    ];
    let text = || "[a-c]{1,2}";
    (text(), text(), text(), text(), (value, 0..1u64 << 45, any::<u32>(), any::<u64>())).prop_map(
        |(project, kind, record, field, (value, millis, count, device))| Change {
            stamp: Stamp { millis, count, device: Device(device) },
            ..change(&project, &kind, &record, &field, value, millis)
        },
    )
}

proptest! {
    // Each case makes four databases.
    #![proptest_config(ProptestConfig::with_cases(60))]
    #[test]
    fn whatever_was_appended_in_whatever_order_a_bundle_brings_it_back(changes in prop::collection::vec(some_change(), 0..30)) {
        let mut forward = Store::in_memory().unwrap();
        let mut backward = Store::in_memory().unwrap();
        forward.append(&changes).unwrap();
        for change in changes.iter().rev() {
            backward.append(std::slice::from_ref(change)).unwrap();
        }
        let bytes = forward.bundle(None).unwrap();
        prop_assert_eq!(&bytes, &backward.bundle(None).unwrap());
        let bundle = Store::read_bundle(&bytes).unwrap();
        prop_assert_eq!(Ledger::fold(bundle.changes.clone()), Ledger::fold(changes));
        let mut other = Store::in_memory().unwrap();
        other.receive(&bundle, &[]).unwrap();
        prop_assert_eq!(other.changes().unwrap(), forward.changes().unwrap());
    }

    /// Two devices under one id, whose clocks gave many a stamp twice.
    #[test]
    fn every_change_of_a_bundle_is_here_afterwards_or_named_as_not_taken(
        here in prop::collection::btree_map((0..4_u64, 0..2_usize), 0..3_i32, 0..8),
        there in prop::collection::btree_map((0..4_u64, 0..2_usize), 0..3_i32, 0..8),
    ) {
        let stored = |facts: std::collections::BTreeMap<(u64, usize), i32>| {
            let changes: Vec<Change> = facts
                .into_iter()
                .map(|((at, field), value)| change("tern", "drive", "fitted/drive", ["front", "rear"][field], value, at))
                .collect();
            store(&changes)
        };
        let (mut here, there) = (stored(here), stored(there));
        let before = here.changes().unwrap();
        let bundle = Store::read_bundle(&there.bundle(None).unwrap()).unwrap();
        let received = here.receive(&bundle, &[]).unwrap();
        let after = here.changes().unwrap();
        prop_assert!(before.iter().all(|change| after.contains(change)), "what was here is here");
        for change in &bundle.changes {
            let named = received.clashes.iter().filter(|clash| clash.came == *change).count();
            prop_assert_eq!(named, usize::from(!after.contains(change)), "{:?}", change);
        }
        for Clash { came, here } in &received.clashes {
            let stands = after.iter().find(|change| (&change.field, change.stamp) == (&came.field, came.stamp)).unwrap();
            prop_assert_eq!(&stands.value.to_string(), here);
        }
        let counted = (received.changes + received.known) as usize + received.clashes.len();
        prop_assert_eq!(counted, bundle.changes.len());
        prop_assert_eq!(after.len() - before.len(), received.changes as usize);
    }
}
