//! What a command says is kept: in the store first, in one transaction, and in memory once that is done. What fails in the
//! store therefore leaves the bench as it was, and nothing after it can fail.

use std::collections::BTreeSet;

use layshaft_core::changes::{Change, Edit, Key, Ledger, Stamp};
use layshaft_core::error::Refusal;
use layshaft_storage::{Attachment, Bundle, Clash};

use crate::Bench;
use crate::bench::OPEN;
use crate::command::{NotTaken, Received};
use crate::planned::STOOD;

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
    /// Mark of what is made.
    pub made: Option<String>,
}

impl Writing {
    /// Facts of the open bike.
    pub fn of(edits: Vec<Edit>) -> Self {
        Self { edits, ..Self::default() }
    }

    /// Facts of the open bike that make something new.
    pub fn making(mark: &str, edits: Vec<Edit>) -> Self {
        Self { edits, made: Some(mark.to_owned()), ..Self::default() }
    }
}

/// What was written.
pub(crate) struct Written {
    /// Facts that are new.
    pub changes: u32,
    /// What came with a bundle.
    pub received: Option<Received>,
}

impl Bench {
    /// Keeps what one command says, all of it or nothing.
    pub(crate) fn write(&mut self, batch: &str, writing: Writing, now_ms: i64) -> Result<Written, Refusal> {
        let Writing { edits, project, open, setting, attachment, bundle, made: _ } = writing;
        let project = match project {
            Some(project) => project,
            None => self.open_bike_mark()?.to_owned(),
        };
        let settings = self.settings(setting, open.then_some(&project));
        let written = match bundle {
            None => {
                let changes = self.stamped(&project, batch, edits, now_ms);
                let new = self.store.commit(&changes, attachment.as_slice(), &settings)?;
                self.take(changes);
                Written { changes: new, received: None }
            }
            Some(bundle) => {
                let came = self.store.receive(&bundle, &settings)?;
                let (before, bikes) = (rivals(&self.ledger), count(bundle.projects.len()));
                self.take(without(bundle.changes, &came.clashes));
                let received = Received {
                    changes: came.changes,
                    known: came.known,
                    attachments: came.attachments,
                    bikes,
                    rivals: rivals(&self.ledger).saturating_sub(before),
                    not_taken: came.clashes.into_iter().map(|clash| self.not_taken(clash)).collect(),
                };
                Written { changes: came.changes, received: Some(received) }
            }
        };
        if open {
            self.show(project);
        }
        Ok(written)
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

    /// Adds stored changes to the fold.
    fn take(&mut self, changes: Vec<Change>) {
        if changes.is_empty() {
            return;
        }
        for change in changes {
            self.batches.insert(change.batch.clone());
            self.ledger.add(change);
        }
        self.reassemble();
        self.planned.go_on();
    }

    /// Shows a bike that the store says is open.
    fn show(&mut self, project: String) {
        self.open = Some(project);
        self.reassemble();
        self.plan_as_it_stood();
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
