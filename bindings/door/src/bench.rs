//! The bench: the open bike with its facts, over one store.

use std::collections::BTreeSet;

use layshaft_core::changes::{Change, Device, Edit, Key, Ledger, Record, Stamp, read};
use layshaft_core::error::{Code, Refusal};
use layshaft_core::record::{Bike, Identity, assemble, key_of};
use layshaft_storage::{Opened, Store};

use crate::planned::{Planned, STOOD};

/// Name of the device-local setting that says which bike is open.
pub(crate) const OPEN: &str = "open";
/// Name of the device-local setting that says when a bike was exported; the bike's mark follows.
pub(crate) const EXPORTED: &str = "exported.";
/// Name of the device-local setting that says under which name a damaged database was set aside: after the next start it
/// can still be taken out.
const ASIDE: &str = "aside";

/// The one typed way in. It holds the facts of all bikes folded, and the open bike assembled.
pub struct Bench {
    pub(crate) store: Store,
    pub(crate) device: Device,
    pub(crate) ledger: Ledger,
    pub(crate) batches: BTreeSet<String>,
    pub(crate) open: Option<String>,
    pub(crate) bike: Bike,
    pub(crate) set_aside: Option<String>,
    pub(crate) planned: Planned,
}

impl Bench {
    /// A bench over an opened store. Reads and folds every fact. `fresh` is a random number that marks the device when
    /// the store is new.
    pub fn with_store(opened: Opened, fresh: u64) -> Result<Self, Refusal> {
        let Opened { mut store, set_aside, .. } = opened;
        let device = store.set_device_if_new(Device(fresh))?;
        let changes = store.changes()?;
        let batches = changes.iter().map(|change| change.batch.clone()).collect();
        let ledger = Ledger::fold(changes);
        let open = store.setting(OPEN)?;
        let set_aside = match set_aside {
            Some(name) => {
                store.set_setting(ASIDE, &name)?;
                Some(name)
            }
            None => store.setting(ASIDE)?,
        };
        let mut bench = Self {
            store,
            device,
            ledger,
            batches,
            open,
            bike: Bike::default(),
            set_aside,
            planned: Planned::default(),
        };
        bench.reassemble();
        bench.plan_as_it_stood();
        Ok(bench)
    }

    /// A bench over a database file. A damaged file is set aside, never deleted.
    #[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
    pub fn open_native(path: &std::path::Path) -> Result<Self, Refusal> {
        Self::with_store(Store::open(path)?, random())
    }

    /// A bench that forgets everything when it is dropped: for tests and for trying things out.
    pub fn in_memory() -> Result<Self, Refusal> {
        Self::with_store(Opened { store: Store::in_memory()?, set_aside: None }, 1)
    }

    /// Every fact on this device, by record, field and stamp.
    pub fn facts(&self) -> impl Iterator<Item = Change> + '_ {
        self.ledger.changes()
    }

    /// The open bike, or a refusal that says that there is none.
    pub(crate) fn open_bike_mark(&self) -> Result<&str, Refusal> {
        self.open
            .as_deref()
            .ok_or_else(|| Refusal::new(Code::Unknown, "no bike is open: start one or open the demo bike"))
    }

    /// The marks of all bikes that have an identity, also those put away.
    pub(crate) fn bikes(&self) -> Vec<(String, Identity, bool)> {
        self.ledger
            .records()
            .filter(|(key, _)| key.kind == Identity::KIND && key.record == "bike")
            .map(|(key, fields)| (key.project.clone(), read(fields), fields.gone()))
            .collect()
    }

    /// The present record with a mark, or a refusal that names what is missing.
    pub(crate) fn record<R: Record>(&self, mark: &str) -> Result<R, Refusal> {
        let key = key_of::<R>(self.open_bike_mark()?, mark);
        match self.ledger.fields(&key) {
            Some(fields) if !fields.gone() => Ok(read(fields)),
            _ => Err(Refusal::new(Code::Unknown, format!("there is no {} with the mark {mark}", R::KIND))),
        }
    }

    /// Writes edits of one command: stamped together, in one transaction.
    pub(crate) fn write(&mut self, project: &str, batch: &str, edits: Vec<Edit>, now_ms: i64) -> Result<u32, Refusal> {
        let stamp = Stamp::next(self.ledger.latest(), now_ms, self.device);
        let changes: Vec<Change> = edits
            .into_iter()
            .map(|edit| {
                let key = Key { project: project.to_owned(), kind: edit.kind, record: edit.record };
                let seen = self.ledger.fields(&key).and_then(|fields| fields.stamp(&edit.field));
                Change { key, field: edit.field, value: edit.value, stamp, seen, batch: batch.to_owned() }
            })
            .collect();
        let written = self.store.append(&changes)?;
        self.take(changes);
        Ok(written)
    }

    /// Adds stored changes to the fold.
    pub(crate) fn take(&mut self, changes: Vec<Change>) {
        for change in changes {
            self.batches.insert(change.batch.clone());
            self.ledger.add(change);
        }
        self.reassemble();
        if let (Some(order), Some(project)) = (self.planned.has_changed(), &self.open) {
            // Without it the plan is as good; it may only move what it need not.
            self.store.set_setting(&format!("{STOOD}{project}"), &order).ok();
        }
    }

    /// Opens a bike on this device.
    pub(crate) fn open(&mut self, project: &str) -> Result<(), Refusal> {
        self.store.set_setting(OPEN, project)?;
        self.open = Some(project.to_owned());
        self.reassemble();
        self.plan_as_it_stood();
        Ok(())
    }

    /// Lets the plan of the open bike go on from the order in which it stood.
    fn plan_as_it_stood(&mut self) {
        let stored = self.open.as_ref().and_then(|project| self.store.setting(&format!("{STOOD}{project}")).ok()?);
        self.planned = Planned::after(stored.as_deref());
    }

    fn reassemble(&mut self) {
        self.bike = match &self.open {
            Some(project) => assemble(&self.ledger, project),
            None => Bike::default(),
        };
    }
}

/// A random number from the hash seeds of the standard library: unique enough to mark a device, and no dependency.
#[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
fn random() -> u64 {
    use std::hash::{BuildHasher, Hasher, RandomState};
    RandomState::new().build_hasher().finish()
}

/// A fresh mark for a call: 128 random bits as text.
#[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
pub fn fresh_mark() -> String {
    format!("{:016x}{:016x}", random(), random())
}
