//! From the ledger of facts to the bike: records are read, and the fitted spec is laid over the standard one.

use std::collections::BTreeMap;

use super::spec::Spec;
use super::work::{Job, closed_up};
use crate::changes::{Fields, Key, Ledger, Record, read};

/// Makes the bike from the list of kinds, and its reading from the ledger.
macro_rules! make_bike {
    (
        one { $($(#[$one_doc:meta])* $one:ident: $one_type:ident = $one_kind:literal;)* }
        many { $($(#[$many_doc:meta])* $many:ident: $many_type:ident = $many_kind:literal;)* }
        log { $($(#[$log_doc:meta])* $log:ident: $log_type:ident by $by:ident = $log_kind:literal;)* }
        slots { $($slots:tt)* } listed { $($listed:tt)* }
    ) => {
        /// Everything known about one bike, by the ids of the records.
        #[derive(Clone, Debug, Default, PartialEq)]
        pub struct Bike {
            /// The bike's own id.
            pub id: String,
            /// As made.
            pub standard: Spec,
            /// As it is being built.
            pub fitted: Spec,
            $($(#[$one_doc])* pub $one: super::$one_type,)*
            $($(#[$many_doc])* pub $many: BTreeMap<String, super::$many_type>,)*
            $($(#[$log_doc])* pub $log: Vec<super::$log_type>,)*
        }

        /// Reads one bike from the ledger.
        pub fn assemble(ledger: &Ledger, project: &str) -> Bike {
            reassemble(Bike { id: project.to_owned(), ..Bike::default() }, ledger, &|_| true)
        }

        /// The bike with the records of some kinds read from the ledger anew. It is what [`assemble`] reads, as long as
        /// nothing of another kind was written since `bike` was read.
        pub fn reassemble(mut bike: Bike, ledger: &Ledger, anew: &dyn Fn(&str) -> bool) -> Bike {
            let project = bike.id.clone();
            if Spec::KINDS.iter().any(|kind| anew(kind)) {
                let spec = |layers: &[&str]| Spec::read(|kind| slots(ledger, &project, kind, layers));
                (bike.standard, bike.fitted) = (spec(&["standard"]), spec(&["standard", "fitted"]));
            }
            $(if anew(super::$one_type::KIND) { bike.$one = single(ledger, &project); })*
            $(if anew(super::$many_type::KIND) { bike.$many = map(ledger, &project); })*
            $(if anew(super::$log_type::KIND) {
                bike.$log = log(ledger, &project, |record: &super::$log_type| record.$by);
            })*
            if anew(Job::KIND) {
                bike.jobs = closed_up(bike.jobs, &followed_by_away(ledger, &project));
            }
            bike
        }
    };
}
crate::records!(make_bike);

/// What each job that was put away follows.
fn followed_by_away(ledger: &Ledger, project: &str) -> BTreeMap<String, Vec<String>> {
    let away = ledger.of_kind(project, Job::KIND).filter(|(_, fields)| fields.gone());
    away.map(|(key, fields)| (key.record.clone(), read::<Job>(fields).after)).collect()
}

/// The record of a kind that a bike has just one of; its id is `bike`.
fn single<R: Record>(ledger: &Ledger, project: &str) -> R {
    ledger.present(project, R::KIND).find(|(id, _)| *id == "bike").map(|(_, fields)| read(fields)).unwrap_or_default()
}

fn map<R: Record>(ledger: &Ledger, project: &str) -> BTreeMap<String, R> {
    ledger.present(project, R::KIND).map(|(id, fields)| (id.to_owned(), read(fields))).collect()
}

fn log<R: Record>(ledger: &Ledger, project: &str, at: impl Fn(&R) -> i64) -> Vec<R> {
    let mut records: Vec<R> = ledger.present(project, R::KIND).map(|(_, fields)| read(fields)).collect();
    records.sort_by_key(at);
    records
}

/// One slot with the layers merged, where it is there.
pub fn slot(ledger: &Ledger, project: &str, kind: &str, layers: &[&str], slot: &str) -> Option<Fields> {
    slots(ledger, project, kind, layers).remove(slot)
}

/// The slots of a kind with the layers merged. A slot put away on a later layer is gone there.
fn slots(ledger: &Ledger, project: &str, kind: &str, layers: &[&str]) -> BTreeMap<String, Fields> {
    let mut merged: BTreeMap<String, Fields> = BTreeMap::new();
    for layer in layers {
        let prefix = format!("{layer}/");
        for (key, fields) in ledger.of_kind(project, kind) {
            let Some(slot) = key.record.strip_prefix(&prefix) else { continue };
            if fields.gone() {
                merged.remove(slot);
            } else {
                lay_over(merged.entry(slot.to_owned()).or_default(), fields);
            }
        }
    }
    merged
}

/// Lays known values over earlier ones. A value set to "not known" lets the layer below show again.
fn lay_over(below: &mut Fields, above: &Fields) {
    for (field, history) in &above.0 {
        if above.value(field).is_some_and(|value| !value.is_null()) {
            below.0.insert(field.clone(), history.clone());
        }
    }
}

/// The standard record that a fitted one is laid over, when it is there.
pub fn laid_over(ledger: &Ledger, key: &Key) -> Option<Key> {
    let slot = key.record.strip_prefix("fitted/")?;
    let below = Key { record: format!("standard/{slot}"), ..key.clone() };
    ledger.fields(&below).filter(|fields| !fields.gone()).map(|_| below.clone())
}

/// The key of a record.
pub fn key_of<R: Record>(project: &str, record: &str) -> Key {
    Key { project: project.to_owned(), kind: R::KIND.to_owned(), record: record.to_owned() }
}
