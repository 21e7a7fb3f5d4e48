//! From the ledger of facts to the bike: records are read, and the fitted spec is laid over the standard one.

use std::collections::BTreeMap;

use super::answer::ItemAnswer;
use super::circuit::ElementChange;
use super::fault_search::FaultSearch;
use super::identity::Identity;
use super::paint::{Climate, Coat, Process};
use super::photo::Photo;
use super::place::Place;
use super::reading::Reading;
use super::spec::{Brake, Consumer, Drive, Filling, Fluid, Indication, Slot, Spec, Supply, Wheel};
use super::work::{BenchTime, Job, Part, Tightening};
use crate::changes::{Fields, Key, Ledger, Record, read};

/// Everything known about one bike, by the marks of the records.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bike {
    /// The bike's own mark.
    pub id: String,
    /// Who it is.
    pub identity: Identity,
    /// Where it stands.
    pub place: Place,
    /// As made.
    pub standard: Spec,
    /// As it is being built.
    pub fitted: Spec,
    /// Parts.
    pub parts: BTreeMap<String, Part>,
    /// The maker's torques.
    pub tightenings: BTreeMap<String, Tightening>,
    /// Coats that cure or have cured.
    pub coats: BTreeMap<String, Coat>,
    /// Paint jobs in several coats.
    pub processes: BTreeMap<String, Process>,
    /// Temperature and humidity log, oldest first.
    pub climate: Vec<Climate>,
    /// Measured values.
    pub readings: BTreeMap<String, Reading>,
    /// Photos.
    pub photos: BTreeMap<String, Photo>,
    /// Jobs.
    pub jobs: BTreeMap<String, Job>,
    /// Answers to inspection items, by `pack/item`.
    pub answers: BTreeMap<String, ItemAnswer>,
    /// What the owner changed in circuits, by `circuit/element`.
    pub circuits: BTreeMap<String, ElementChange>,
    /// Searches for faults.
    pub searches: BTreeMap<String, FaultSearch>,
    /// The mechanic's hours.
    pub bench_time: BenchTime,
}

/// Reads one bike from the ledger.
pub fn assemble(ledger: &Ledger, project: &str) -> Bike {
    let all = |kind| ledger.present(project, kind);
    let mut climate: Vec<Climate> = all(Climate::KIND).map(|(_, fields)| read(fields)).collect();
    climate.sort_by_key(|reading| reading.from_ms);
    Bike {
        id: project.to_owned(),
        identity: single(ledger, project),
        place: single(ledger, project),
        standard: spec(ledger, project, &["standard"]),
        fitted: spec(ledger, project, &["standard", "fitted"]),
        parts: map(ledger, project),
        tightenings: map(ledger, project),
        coats: map(ledger, project),
        processes: map(ledger, project),
        climate,
        readings: map(ledger, project),
        photos: map(ledger, project),
        jobs: map(ledger, project),
        answers: map(ledger, project),
        circuits: map(ledger, project),
        searches: map(ledger, project),
        bench_time: single(ledger, project),
    }
}

/// The record of a kind that a bike has just one of; its mark is `bike`.
fn single<R: Record>(ledger: &Ledger, project: &str) -> R {
    ledger
        .present(project, R::KIND)
        .find(|(mark, _)| *mark == "bike")
        .map(|(_, fields)| read(fields))
        .unwrap_or_default()
}

fn map<R: Record>(ledger: &Ledger, project: &str) -> BTreeMap<String, R> {
    ledger.present(project, R::KIND).map(|(mark, fields)| (mark.to_owned(), read(fields))).collect()
}

/// A spec from layers, a later one over an earlier one, field by field.
fn spec(ledger: &Ledger, project: &str, layers: &[&str]) -> Spec {
    let slots = |kind: &'static str| slots(ledger, project, kind, layers);
    let one = |kind, slot: &str| slots(kind).remove(slot).unwrap_or_default();
    Spec {
        drive: read::<Drive>(&one(Drive::KIND, "drive")),
        front_wheel: read::<Wheel>(&one(Wheel::KIND, "front")),
        rear_wheel: read::<Wheel>(&one(Wheel::KIND, "rear")),
        supply: read::<Supply>(&one(Supply::KIND, "supply")),
        consumers: slots(Consumer::KIND).into_iter().map(|(id, fields)| Slot { id, consumer: read(&fields) }).collect(),
        front_brake: read::<Brake>(&one(Brake::KIND, "front")),
        rear_brake: read::<Brake>(&one(Brake::KIND, "rear")),
        fluids: slots(Fluid::KIND).into_iter().map(|(id, fields)| Filling { id, fluid: read(&fields) }).collect(),
        indication: read::<Indication>(&one(Indication::KIND, "indication")),
    }
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
