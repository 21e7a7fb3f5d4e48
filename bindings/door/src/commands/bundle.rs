//! Bundles in: all or nothing, and never another bike by surprise.

use layshaft_core::changes::{Edit, Ledger};
use layshaft_core::error::{Code, Refusal};
use layshaft_storage::Store;

use crate::Bench;
use crate::act::{Act, Call, Writing};
use crate::bench::EXPORTED;
use crate::command::{NoteExport, ReceiveBundle, Received, Settle};

/// Reads the bundle, checks that it belongs here, and merges it.
pub fn receive(bench: &mut Bench, payload: &ReceiveBundle) -> Result<Received, Refusal> {
    let bundle = Store::read_bundle(&payload.bundle)?;
    let here: Vec<String> = bench.bikes().into_iter().map(|(mark, _, _)| mark).collect();
    let all_new = bundle.projects.iter().all(|project| !here.contains(project));
    if all_new && !here.is_empty() && !payload.as_second_bike {
        let name = Ledger::fold(bundle.changes.clone());
        let name = bundle.projects.first().map(|project| layshaft_core::record::assemble(&name, project).identity.name);
        return Err(Refusal::new(
            Code::OtherBike,
            format!("this bundle holds another bike, “{}”: add it as a second bike?", name.unwrap_or_default()),
        ));
    }
    let before = rivals(&bench.ledger);
    let received = bench.store.receive(&bundle)?;
    let total = u32::try_from(bundle.changes.len()).unwrap_or(u32::MAX);
    bench.take(bundle.changes);
    let first = bundle.projects.first().cloned();
    if let Some(project) = first.filter(|_| all_new || bench.open.is_none()) {
        bench.open(&project)?;
    }
    Ok(Received {
        changes: received.changes,
        known: total.saturating_sub(received.changes),
        attachments: received.attachments,
        bikes: u32::try_from(bundle.projects.len()).unwrap_or(u32::MAX),
        rivals: rivals(&bench.ledger).saturating_sub(before),
    })
}

fn rivals(ledger: &Ledger) -> u32 {
    let count: usize = ledger.records().map(|(_, fields)| fields.rivals().len()).sum();
    u32::try_from(count).unwrap_or(u32::MAX)
}

impl Act for ReceiveBundle {
    /// A bundle writes its own facts, with their own stamps; nothing is written in this command's name.
    fn write(&self, _: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::default())
    }
}

impl Act for NoteExport {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let name = format!("{EXPORTED}{}", bench.open_bike_mark()?);
        Ok(Writing { setting: Some((name, call.moment.now_ms.to_string())), ..Writing::default() })
    }
}

impl Act for Settle {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let project = bench.open_bike_mark()?;
        let rival = bench
            .ledger
            .records()
            .filter(|(key, _)| key.project == project && key.kind == self.record_kind && key.record == self.record)
            .flat_map(|(_, fields)| fields.rivals())
            .find(|rival| rival.field == self.field && rival.stamp.to_string() == self.stamp)
            .ok_or_else(|| Refusal::new(Code::Unknown, "there is no such value that lost a concurrent edit"))?;
        Ok(Writing::of(vec![Edit {
            kind: self.record_kind.clone(),
            record: self.record.clone(),
            field: self.field.clone(),
            value: rival.lost,
        }]))
    }
}
