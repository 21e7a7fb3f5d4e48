//! What a command says is kept: in the store first, in one transaction, and in memory once that is done. What fails in the
//! store therefore leaves the bench as it was, and nothing after it can fail.

use std::collections::{BTreeMap, BTreeSet};

use layshaft_core::changes::{Change, Edit, Fields, Key, Ledger, Rival, Stamp};
use layshaft_core::error::Refusal;
use layshaft_core::message::Message;
use layshaft_core::record::{CAN_BE_PUT_AWAY, assemble, reassemble};
use layshaft_storage::{Attachment, Bundle, Clash};

use crate::bench::OPEN;
use crate::command::{NotTaken, Received};
use crate::planned::STOOD;
use crate::stale::{Moved, Source};
use crate::{Bench, stale};

/// What a command wants written.
#[derive(Default)]
pub(crate) struct Writing {
    /// Facts, of the open bike unless `project` says another.
    pub edits: Vec<Edit>,
    /// Another bike than the open one.
    pub project: Option<String>,
    /// Open that bike afterwards.
    pub open: bool,
    /// A setting of this device, by its name.
    pub setting: Option<(String, String)>,
    /// A file to keep.
    pub attachment: Option<Attachment>,
    /// Facts and files of a bundle, under the stamps that they have.
    pub bundle: Option<Bundle>,
    /// Id of what is made.
    pub made: Option<String>,
    /// What else is said to the caller.
    pub notes: Vec<Message>,
}

impl Writing {
    /// Facts of the open bike.
    pub fn of(edits: Vec<Edit>) -> Self {
        Self { edits, ..Self::default() }
    }

    /// Facts of the open bike that make something new.
    pub fn making(id: &str, edits: Vec<Edit>) -> Self {
        Self { edits, made: Some(id.to_owned()), ..Self::default() }
    }
}

/// What was written.
pub(crate) struct Written {
    /// Facts that are new.
    pub changes: u32,
    /// Queries whose answers may be others now.
    pub stale: Vec<String>,
    /// What came with a bundle.
    pub received: Option<Received>,
}

impl Bench {
    /// Keeps what one command says, all of it or nothing.
    pub(crate) fn write(&mut self, batch: &str, writing: Writing, now_ms: i64) -> Result<Written, Refusal> {
        let Writing { edits, project, open, setting, attachment, bundle, made: _, notes: _ } = writing;
        let project = match project {
            Some(project) => project,
            None => self.open_bike_id()?.to_owned(),
        };
        let mut moved: Moved = setting.iter().map(|_| Source::Shelf).collect();
        let settings = self.settings(setting, open.then_some(&project));
        let (changes, received) = match bundle {
            None => {
                let changes = self.stamped(&project, batch, edits, now_ms);
                let new = self.store.commit(&changes, attachment.as_slice(), &settings)?;
                moved.extend(attachment.map(|_| Source::Files));
                moved.extend(self.take(changes));
                (new, None)
            }
            Some(bundle) => {
                let came = self.store.receive(&bundle, &settings)?;
                let (before, bikes) = (rivals(&self.ledger), count(bundle.projects.len()));
                moved.extend((came.attachments > 0).then_some(Source::Files));
                moved.extend(self.take(without(bundle.changes, &came.clashes)));
                let received = Received {
                    changes: came.changes,
                    known: came.known,
                    attachments: came.attachments,
                    bikes,
                    rivals: rivals(&self.ledger).saturating_sub(before),
                    not_taken: came.clashes.into_iter().map(|clash| self.not_taken(clash)).collect(),
                };
                (came.changes, Some(received))
            }
        };
        // A bundle of which everything was here may be the second try of a call whose answer was lost.
        let unsure = received.is_some() && moved.is_empty();
        let stale = if open || unsure { stale::every_query() } else { stale::queries(&moved) };
        if open {
            self.show(project);
        }
        Ok(Written { changes, stale, received })
    }

    /// Every setting that moves with a command: its own, the bike that it opens, and the order in which the plan stood,
    /// since the plan of the next call starts from it.
    fn settings(&self, own: Option<(String, String)>, opens: Option<&String>) -> Vec<(String, String)> {
        let opens = opens.map(|project| (OPEN.to_owned(), project.clone()));
        let order = self.planned.order_that_moved().zip(self.open.as_ref());
        let stood = order.map(|(order, project)| (format!("{STOOD}{project}"), order));
        own.into_iter().chain(opens).chain(stood).collect()
    }

    /// Edits as facts of one bike: stamped together, each with the stamp of the value that it replaces.
    fn stamped(&self, project: &str, batch: &str, edits: Vec<Edit>, now_ms: i64) -> Vec<Change> {
        let stamp = Stamp::next(self.ledger.latest(), now_ms, self.device);
        let change = |edit: Edit| {
            let key = Key { project: project.to_owned(), kind: edit.kind, record: edit.record };
            let seen = self.ledger.fields(&key).and_then(|fields| fields.stamp(&edit.field));
            Change { key, field: edit.field, value: edit.value, stamp, seen, batch: batch.to_owned() }
        };
        edits.into_iter().map(change).collect()
    }

    fn not_taken(&self, Clash { came, here }: Clash) -> NotTaken {
        let Change { key, field, value, stamp, .. } = came;
        let bike = self.bikes().into_iter().find(|(project, _, _)| *project == key.project);
        NotTaken {
            bike: bike.map(|(_, identity, _)| identity.name).unwrap_or_default(),
            record_kind: key.kind,
            record: key.record,
            field,
            here,
            came: value.to_string(),
            stamp: stamp.to_string(),
        }
    }

    /// Adds stored changes to the fold; says what moved with those that are new in it.
    fn take(&mut self, changes: Vec<Change>) -> Moved {
        let mut moved = Moved::new();
        let mut touched: BTreeMap<Key, Stood> = BTreeMap::new();
        for change in changes {
            let fields = self.ledger.fields(&change.key);
            if fields.and_then(|fields| fields.0.get(&change.field)?.get(&change.stamp)).is_some() {
                continue;
            }
            moved.insert(Source::Shelf);
            if self.open.as_ref() == Some(&change.key.project) {
                let before = || Stood::of(fields);
                touched.entry(change.key.clone()).or_insert_with(before);
            }
            self.batches.insert(change.batch.clone());
            self.ledger.add(change);
        }
        if touched.is_empty() {
            return moved;
        }
        moved.insert(Source::Facts);
        for (key, before) in &touched {
            let now = Stood::of(self.ledger.fields(key));
            moved.extend((now.rivals != before.rivals).then_some(Source::Rivals));
            let listed = CAN_BE_PUT_AWAY.contains(&key.kind.as_str()) && (now.gone || before.gone);
            moved.extend(listed.then_some(Source::Away));
        }
        // A tap writes one or two kinds: the rest of the bike stays as it was read.
        let before = self.bike.clone();
        let touches = |kind: &str| touched.keys().any(|key| key.kind == kind);
        self.bike = reassemble(std::mem::take(&mut self.bike), &self.ledger, &touches);
        // Every test that writes anything tries this.
        debug_assert_eq!(
            self.bike,
            assemble(&self.ledger, &self.bike.id),
            "reading a part gives what reading all gives"
        );
        moved.extend(stale::moved(&before, &self.bike));
        if stale::moves_the_plan(&moved) {
            self.planned.go_on();
        }
        moved
    }

    /// Shows a bike that the store says is open.
    fn show(&mut self, project: String) {
        self.open = Some(project);
        self.reassemble();
        self.plan_as_it_stood();
    }
}

/// How a record stands: what was overruled in it, and whether it was put away.
#[derive(Default)]
struct Stood {
    rivals: Vec<Rival>,
    gone: bool,
}

impl Stood {
    fn of(fields: Option<&Fields>) -> Self {
        fields.map(|fields| Self { rivals: fields.rivals(), gone: fields.gone() }).unwrap_or_default()
    }
}

/// The changes that the store took in: the fold shall hold what the file holds.
fn without(changes: Vec<Change>, clashes: &[Clash]) -> Vec<Change> {
    let place = |change: &Change| (change.key.clone(), change.field.clone(), change.stamp);
    let refused: BTreeSet<_> = clashes.iter().map(|clash| place(&clash.came)).collect();
    match refused.is_empty() {
        true => changes,
        false => changes.into_iter().filter(|change| !refused.contains(&place(change))).collect(),
    }
}

fn rivals(ledger: &Ledger) -> u32 {
    count(ledger.records().map(|(_, fields)| fields.rivals().len()).sum())
}

fn count(many: usize) -> u32 {
    u32::try_from(many).unwrap_or(u32::MAX)
}
