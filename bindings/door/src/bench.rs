//! The bench: the open bike with its facts, over one store.

use std::collections::BTreeSet;

use layshaft_core::changes::{Change, Device, Fields, Ledger, Record, read};
use layshaft_core::error::{Code, Refusal, Refused};
use layshaft_core::record::{Bike, Identity, KINDS, assemble, key_of};
use layshaft_storage::{Opened, Store};

use crate::message::DoorMessage;
use crate::planned::{Planned, STOOD};
use layshaft_core::message::Message;

/// Name of the device-local setting that says which bike is open.
pub(crate) const OPEN: &str = "open";
/// Name of the device-local setting that says when a bike was exported; the bike's id follows.
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
        store.show(KINDS)?;
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

    /// How often the plan of the open bike was worked out since it was opened, for whoever measures that.
    pub fn plans_worked_out(&self) -> u32 {
        self.planned.worked_out.get()
    }

    /// The open bike, or a refusal that says that there is none.
    pub(crate) fn open_bike_id(&self) -> Result<&str, Refusal> {
        self.open.as_deref().ok_or_else(|| Refusal::new(Code::Unknown, DoorMessage::NoBikeOpen))
    }

    /// The ids of all bikes that have an identity, also those put away.
    pub(crate) fn bikes(&self) -> Vec<(String, Identity, bool)> {
        self.ledger
            .records()
            .filter(|(key, _)| key.kind == Identity::KIND && key.record == "bike")
            .map(|(key, fields)| (key.project.clone(), read(fields), fields.gone()))
            .collect()
    }

    /// The present record with an id, or a refusal that names what is missing.
    pub(crate) fn record<R: Record>(&self, id: &str) -> Result<R, Refusal> {
        let present = self.fields::<R>(id)?.filter(|fields| !fields.gone());
        present.map(read).ok_or_else(|| no_such::<R>(id))
    }

    fn fields<R: Record>(&self, id: &str) -> Result<Option<&Fields>, Refusal> {
        Ok(self.ledger.fields(&key_of::<R>(self.open_bike_id()?, id)))
    }

    /// Lets the plan of the open bike go on from the order in which it stood.
    pub(crate) fn plan_as_it_stood(&mut self) {
        let stored = self.open.as_ref().and_then(|project| self.store.setting(&format!("{STOOD}{project}")).ok()?);
        self.planned = Planned::after(stored.as_deref());
    }

    pub(crate) fn reassemble(&mut self) {
        self.bike = match &self.open {
            Some(project) => assemble(&self.ledger, project),
            None => Bike::default(),
        };
    }
}

/// What says that there is no record with a mark.
pub(crate) fn no_such<R: Record>(id: &str) -> Refusal {
    unknown(Message::new(R::WITHIN, Vec::new()), id)
}

/// What says that there is no such thing with an id.
pub(crate) fn unknown(what: impl Into<Message>, id: &str) -> Refusal {
    Refused::Unknown { what: what.into(), id: id.to_owned() }.into()
}

/// A random number from the hash seeds of the standard library: unique enough to mark a device, and no dependency.
#[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
fn random() -> u64 {
    use std::hash::{BuildHasher, Hasher, RandomState};
    RandomState::new().build_hasher().finish()
}

/// A fresh id for a call: 128 random bits as text.
#[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
pub fn fresh_id() -> String {
    format!("{:016x}{:016x}", random(), random())
}
