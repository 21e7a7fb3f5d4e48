//! Taking a command back: its fields get the values they had before, as new facts.

use std::collections::BTreeMap;

use layshaft_core::changes::{Change, Edit, GONE, Key};
use layshaft_core::error::{Code, Refusal};
use layshaft_core::record::laid_over;
use serde_json::Value;

use crate::Bench;
use crate::act::{Act, Call};
use crate::command::Undo;
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for Undo {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let written: Vec<Change> = bench.ledger.changes().filter(|change| change.batch == self.batch).collect();
        let Some(first) = written.first() else {
            return Err(Refusal::new(Code::Unknown, DoorMessage::NothingToUndo));
        };
        let project = first.key.project.clone();
        let mut by_record: BTreeMap<Key, Vec<Change>> = BTreeMap::new();
        written.into_iter().for_each(|change| by_record.entry(change.key.clone()).or_default().push(change));
        let edits = by_record.into_iter().flat_map(|(key, changes)| taken_back(bench, &key, &changes)).collect();
        Ok(Writing { project: Some(project), ..Writing::of(edits) })
    }
}

/// A record that the command made is put away, unless it only lies over a standard one, which then shows again; one that
/// it changed gets its earlier values, except where somebody has changed the field since.
fn taken_back(bench: &Bench, key: &Key, changes: &[Change]) -> Vec<Edit> {
    let edit = |field: &str, value: Value| Edit {
        kind: key.kind.clone(),
        record: key.record.clone(),
        field: field.to_owned(),
        value,
    };
    let Some(fields) = bench.ledger.fields(key) else { return Vec::new() };
    let made = changes.iter().all(|change| change.seen.is_none()) && fields.0.len() == changes.len();
    if made && laid_over(&bench.ledger, key).is_none() {
        return vec![edit(GONE, true.into())];
    }
    changes
        .iter()
        .filter(|change| fields.stamp(&change.field) == Some(change.stamp))
        .map(|change| {
            let before = change.seen.and_then(|seen| fields.0.get(&change.field)?.get(&seen));
            let unset = if change.field == GONE { Value::Bool(change.value != Value::Bool(true)) } else { Value::Null };
            edit(&change.field, before.map_or(unset, |entry| entry.value.clone()))
        })
        .collect()
}
