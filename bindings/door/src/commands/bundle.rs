//! Bundles in: all or nothing, and never another bike by surprise.

use layshaft_core::changes::{Edit, Ledger};
use layshaft_core::error::{Code, Refusal};
use layshaft_storage::Store;

use crate::Bench;
use crate::act::{Act, Call};
use crate::bench::EXPORTED;
use crate::command::{NoteExport, ReceiveBundle, Settle};
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for ReceiveBundle {
    /// Reads the bundle and checks that it belongs here.
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let bundle = Store::read_bundle(&self.bundle)?;
        let here: Vec<String> = bench.bikes().into_iter().map(|(id, _, _)| id).collect();
        let all_new = bundle.projects.iter().all(|project| !here.contains(project));
        let first = bundle.projects.first();
        if all_new && !here.is_empty() && !self.as_second_bike {
            let ledger = Ledger::fold(bundle.changes.clone());
            let name = first.map(|project| layshaft_core::record::assemble(&ledger, project).identity.name);
            return Err(Refusal::new(Code::OtherBike, DoorMessage::AnotherBike { name: name.unwrap_or_default() }));
        }
        Ok(Writing {
            project: Some(first.cloned().unwrap_or_default()),
            open: first.is_some() && (all_new || bench.open.is_none()),
            bundle: Some(bundle),
            ..Writing::default()
        })
    }
}

impl Act for NoteExport {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let name = format!("{EXPORTED}{}", bench.open_bike_id()?);
        Ok(Writing { setting: Some((name, call.moment.now_ms.to_string())), ..Writing::default() })
    }
}

impl Act for Settle {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let project = bench.open_bike_id()?;
        let rival = bench
            .ledger
            .records()
            .filter(|(key, _)| key.project == project && key.kind == self.record_kind && key.record == self.record)
            .flat_map(|(_, fields)| fields.rivals())
            .find(|rival| rival.field == self.field && rival.stamp.to_string() == self.stamp)
            .ok_or_else(|| Refusal::new(Code::Unknown, DoorMessage::NoSuchLoss))?;
        Ok(Writing::of(vec![Edit {
            kind: self.record_kind.clone(),
            record: self.record.clone(),
            field: self.field.clone(),
            value: rival.lost,
        }]))
    }
}
