//! The merge laws, on random histories of several devices: 10,000 cases.

use layshaft_core::changes::{Change, Device, Key, Ledger, Stamp};
use proptest::prelude::*;

/// A change of one of a few devices to one of a few fields, so that stamps and fields collide often. A stamp is one
/// command on one device, so what a field got under a stamp follows from the stamp, as on a real device.
fn any_change() -> impl Strategy<Value = Change> {
    (0..3u64, 0..6u64, 0..2u32, 0..3usize, 0..2usize).prop_map(|(device, millis, count, record, field)| {
        let stamp = Stamp { millis, count, device: Device(device) };
        // Each device has seen what it wrote a millisecond before, and now and then what another one wrote.
        let author = if millis % 3 == 0 { (device + 1) % 3 } else { device };
        let seen = millis.checked_sub(1).map(|millis| Stamp { millis, count: 0, device: Device(author) });
        Change {
            key: Key { project: "bike".into(), kind: "job".into(), record: ["a", "b", "c"][record].into() },
            field: ["title", "state"][field].into(),
            value: format!("{}", (millis * 7 + device * 3 + u64::from(count)) % 4).into(),
            stamp,
            seen,
            batch: stamp.to_string(),
        }
    })
}

fn merged(parts: &[&Ledger]) -> Ledger {
    let mut whole = Ledger::default();
    for part in parts {
        whole.merge(part);
    }
    whole
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 10_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn merge_is_commutative_associative_and_idempotent(
        a in proptest::collection::vec(any_change(), 0..12),
        b in proptest::collection::vec(any_change(), 0..12),
        c in proptest::collection::vec(any_change(), 0..12),
    ) {
        let (a, b, c) = (Ledger::fold(a), Ledger::fold(b), Ledger::fold(c));
        let left = merged(&[&merged(&[&a, &b]), &c]);
        prop_assert_eq!(&left, &merged(&[&a, &merged(&[&b, &c])]));
        prop_assert_eq!(&left, &merged(&[&c, &b, &a]));
        prop_assert_eq!(&left, &merged(&[&left, &left, &b]));
    }

    #[test]
    fn the_order_of_changes_makes_no_difference(
        changes in proptest::collection::vec(any_change(), 0..20),
        turn in 0..20usize,
    ) {
        let mut turned = changes.clone();
        let by = turn % changes.len().max(1);
        turned.rotate_left(by);
        turned.reverse();
        prop_assert_eq!(Ledger::fold(changes), Ledger::fold(turned));
    }

    #[test]
    fn rivals_are_the_same_on_both_sides_and_never_hold(
        a in proptest::collection::vec(any_change(), 0..12),
        b in proptest::collection::vec(any_change(), 0..12),
    ) {
        let (a, b) = (Ledger::fold(a), Ledger::fold(b));
        let (one, other) = (merged(&[&a, &b]), merged(&[&b, &a]));
        for (key, fields) in one.records() {
            let rivals = fields.rivals();
            prop_assert_eq!(&rivals, &other.fields(key).unwrap().rivals());
            for rival in rivals {
                prop_assert_eq!(Some(&rival.holds), fields.value(&rival.field));
                prop_assert_ne!(&rival.holds, &rival.lost);
            }
        }
    }

    #[test]
    fn nothing_is_lost_in_a_merge(
        a in proptest::collection::vec(any_change(), 0..12),
        b in proptest::collection::vec(any_change(), 0..12),
    ) {
        let (a, b) = (Ledger::fold(a), Ledger::fold(b));
        let whole: Vec<Change> = merged(&[&a, &b]).changes().collect();
        for change in a.changes().chain(b.changes()) {
            prop_assert!(whole.contains(&change));
        }
        prop_assert!(whole.len() <= a.changes().count() + b.changes().count());
    }
}
