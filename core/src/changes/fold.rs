//! The fold: from changes in any order to the present state, with the losers of concurrent edits kept.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;

use super::change::{Change, Key};
use super::stamp::Stamp;

/// The field that says that a record was put away. Its facts stay; setting it back restores the record.
pub const GONE: &str = "gone";

/// One value that a field has or had.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// The value.
    pub value: Value,
    /// Stamp of the value that it replaced.
    pub seen: Option<Stamp>,
    /// The command that wrote it.
    pub batch: String,
}

/// Every value of one field, oldest first. The last one holds.
pub type History = BTreeMap<Stamp, Entry>;

/// The fields of one record.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fields(pub BTreeMap<String, History>);

/// The value that lost a concurrent edit.
#[derive(Clone, Debug, PartialEq)]
pub struct Rival {
    /// The field.
    pub field: String,
    /// The value that holds.
    pub holds: Value,
    /// The value that another device set without having seen it.
    pub lost: Value,
    /// Stamp of the lost value.
    pub stamp: Stamp,
}

/// All facts, folded. Adding a change twice, or in another order, makes no difference.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ledger {
    records: BTreeMap<Key, Fields>,
    latest: Option<Stamp>,
}

impl Ledger {
    /// Folds changes, in whatever order they come.
    pub fn fold(changes: impl IntoIterator<Item = Change>) -> Ledger {
        let mut ledger = Ledger::default();
        changes.into_iter().for_each(|change| ledger.add(change));
        ledger
    }

    /// Adds one change.
    pub fn add(&mut self, change: Change) {
        self.latest = self.latest.max(Some(change.stamp));
        let Change { key, field, value, stamp, seen, batch } = change;
        let history = self.records.entry(key).or_default().0.entry(field).or_default();
        history.entry(stamp).or_insert(Entry { value, seen, batch });
    }

    /// The greatest stamp that was added.
    pub fn latest(&self) -> Option<Stamp> {
        self.latest
    }

    /// The fields of a record.
    pub fn fields(&self, key: &Key) -> Option<&Fields> {
        self.records.get(key)
    }

    /// Every record with its fields, also those that are gone.
    pub fn records(&self) -> impl Iterator<Item = (&Key, &Fields)> {
        self.records.iter()
    }

    /// The records of one kind of one bike, in the order of their ids, also those that are gone.
    pub fn of_kind<'a>(&'a self, project: &'a str, kind: &'a str) -> impl Iterator<Item = (&'a Key, &'a Fields)> {
        let from = Key { project: project.to_owned(), kind: kind.to_owned(), record: String::new() };
        self.records.range(from..).take_while(move |(key, _)| key.project == project && key.kind == kind)
    }

    /// The records of one kind of one bike that are not gone, in the order of their ids.
    pub fn present<'a>(&'a self, project: &'a str, kind: &'a str) -> impl Iterator<Item = (&'a str, &'a Fields)> {
        self.of_kind(project, kind)
            .filter(|(_, fields)| !fields.gone())
            .map(|(key, fields)| (key.record.as_str(), fields))
    }

    /// Every change, to be stored or sent.
    pub fn changes(&self) -> impl Iterator<Item = Change> + '_ {
        self.records.iter().flat_map(|(key, fields)| {
            fields.0.iter().flat_map(move |(field, history)| {
                history.iter().map(move |(stamp, entry)| Change {
                    key: key.clone(),
                    field: field.clone(),
                    value: entry.value.clone(),
                    stamp: *stamp,
                    seen: entry.seen,
                    batch: entry.batch.clone(),
                })
            })
        })
    }

    /// Merges another ledger into this one: the union of their changes. Returns how many were new.
    pub fn merge(&mut self, other: &Ledger) -> u32 {
        let mut new = 0;
        for change in other.changes() {
            let known = self
                .records
                .get(&change.key)
                .and_then(|fields| fields.0.get(&change.field))
                .is_some_and(|history| history.contains_key(&change.stamp));
            if !known {
                new += 1;
                self.add(change);
            }
        }
        new
    }
}

impl Fields {
    /// The value that a field has now.
    pub fn value(&self, field: &str) -> Option<&Value> {
        self.0.get(field)?.last_key_value().map(|(_, entry)| &entry.value)
    }

    /// The stamp of the value that a field has now.
    pub fn stamp(&self, field: &str) -> Option<Stamp> {
        self.0.get(field)?.last_key_value().map(|(stamp, _)| *stamp)
    }

    /// Whether the record was put away.
    pub fn gone(&self) -> bool {
        self.value(GONE) == Some(&Value::Bool(true))
    }

    /// The values that lost a concurrent edit and that nobody has replaced knowingly since.
    pub fn rivals(&self) -> Vec<Rival> {
        self.0.iter().flat_map(|(field, history)| rivals_of(field, history)).collect()
    }
}

/// Values of a field that no later value has seen, except the one that holds, where they differ from it.
fn rivals_of(field: &str, history: &History) -> Vec<Rival> {
    let Some((winner, holds)) = history.last_key_value() else { return Vec::new() };
    let replaced: BTreeSet<Stamp> = history.values().filter_map(|entry| entry.seen).collect();
    history
        .iter()
        .filter(|(stamp, entry)| *stamp != winner && !replaced.contains(stamp) && entry.value != holds.value)
        .map(|(stamp, entry)| Rival {
            field: field.to_owned(),
            holds: holds.value.clone(),
            lost: entry.value.clone(),
            stamp: *stamp,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::Device;
    use super::*;

    fn change(field: &str, value: i32, millis: u64, device: u64, seen: Option<Stamp>) -> Change {
        Change {
            key: Key { project: "b".into(), kind: "drive".into(), record: "fitted".into() },
            field: field.into(),
            value: value.into(),
            stamp: Stamp { millis, count: 0, device: Device(device) },
            seen,
            batch: format!("{millis}-{device}"),
        }
    }

    #[test]
    fn the_later_value_holds_and_a_value_it_had_seen_is_no_rival() {
        let first = change("frontTeeth", 15, 1, 1, None);
        let second = change("frontTeeth", 16, 2, 2, Some(first.stamp));
        let ledger = Ledger::fold([second, first.clone()]);
        let fields = ledger.fields(&first.key).unwrap();
        assert_eq!(fields.value("frontTeeth"), Some(&16.into()));
        assert!(fields.rivals().is_empty());
    }

    #[test]
    fn of_two_concurrent_values_the_loser_is_kept_and_named() {
        let first = change("frontTeeth", 15, 1, 1, None);
        let here = change("frontTeeth", 16, 2, 1, Some(first.stamp));
        let there = change("frontTeeth", 14, 3, 2, Some(first.stamp));
        let ledger = Ledger::fold([first.clone(), there, here]);
        let rivals = ledger.fields(&first.key).unwrap().rivals();
        assert_eq!(rivals.len(), 1);
        assert_eq!((rivals[0].holds.clone(), rivals[0].lost.clone()), (14.into(), 16.into()));
    }

    #[test]
    fn merging_twice_brings_nothing_new() {
        let mut left = Ledger::fold([change("a", 1, 1, 1, None)]);
        let right = Ledger::fold([change("a", 2, 2, 2, None), change("b", 3, 3, 2, None)]);
        assert_eq!(left.merge(&right), 2);
        assert_eq!(left.merge(&right), 0);
    }
}
