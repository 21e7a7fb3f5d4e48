//! Recording the standard and the fitted spec.

use layshaft_core::changes::{Edit, Fields, Record, edits, read};
use layshaft_core::electrical::check_lamp_volts;
use layshaft_core::error::{Refusal, Refused};
use layshaft_core::record::{Brake, Consumer, Drive, End, Fluid, Indication, Side, Spec, Supply, Wheel};

use crate::Bench;
use crate::act::{Act, Call};
use crate::bench::no_such;
use crate::command::{
    RecordBrake, RecordConsumer, RecordDrive, RecordFluid, RecordIndication, RecordSupply, RecordWheel, RemoveConsumer,
};
use crate::message::DoorMessage;
use crate::write::Writing;

/// The record's id: side and slot.
fn record_id(side: Side, slot: &str) -> String {
    match side {
        Side::Standard => format!("standard/{slot}"),
        Side::Fitted => format!("fitted/{slot}"),
    }
}

pub(super) fn end_slot(end: End) -> &'static str {
    match end {
        End::Front => "front",
        End::Rear => "rear",
    }
}

/// What shows at a slot of one side; the fitted side lies over the standard one.
fn shown<R: Record>(bench: &Bench, side: Side, slot: &str) -> Result<Option<Fields>, Refusal> {
    let layers: &[&str] = match side {
        Side::Standard => &["standard"],
        Side::Fitted => &["standard", "fitted"],
    };
    Ok(layshaft_core::record::slot(&bench.ledger, bench.open_bike_id()?, R::KIND, layers, slot))
}

/// The edits that record `new` at a slot. On the fitted side, only what differs from what shows there now is written,
/// so that the rest goes on following the standard.
pub(super) fn recorded<R: Record>(bench: &Bench, side: Side, slot: &str, new: &R) -> Result<Vec<Edit>, Refusal> {
    let now: Option<R> = shown::<R>(bench, side, slot)?.map(|fields| read(&fields));
    let record = record_id(side, slot);
    let mut edits = edits(&record, new, now.as_ref());
    if now.is_none() {
        edits.push(Edit::gone::<R>(&record, false));
    }
    Ok(edits)
}

/// Refuses a lamp of another voltage, a role that another consumer of the spec has, or of which another is a part, and a count that the role cannot have.
pub(super) fn check_role(spec: &Spec, slot: &str, consumer: &Consumer) -> Result<(), Refused> {
    consumer.check_count_of_role()?;
    check_lamp_volts(&spec.supply, consumer)?;
    let Some(role) = consumer.role else { return Ok(()) };
    let mut others = spec.consumers.iter().filter(|other| other.id != slot);
    match others.find(|other| other.consumer.role.is_some_and(|taken| taken.excludes(role))) {
        Some(other) => Err(Refused::Conflict {
            field: "role".to_owned(),
            reason: DoorMessage::RoleTaken { other: other.consumer.name.clone() }.into(),
        }),
        None => Ok(()),
    }
}

impl Act for RecordDrive {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(recorded::<Drive>(bench, self.side, "drive", &self.drive.clone().checked()?)?))
    }
}

impl Act for RecordWheel {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(recorded::<Wheel>(bench, self.side, end_slot(self.end), &self.wheel.clone().checked()?)?))
    }
}

impl Act for RecordSupply {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(recorded::<Supply>(bench, self.side, "supply", &self.supply.clone().checked()?)?))
    }
}

impl Act for RecordConsumer {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let slot = self.id.as_deref().unwrap_or(call.id);
        let consumer = self.consumer.clone().checked()?;
        if self.side == Side::Standard {
            check_role(&bench.bike.standard, slot, &consumer)?;
        }
        // What is standard shows on the fitted side too.
        check_role(&bench.bike.fitted, slot, &consumer)?;
        Ok(Writing::making(slot, recorded::<Consumer>(bench, self.side, slot, &consumer)?))
    }
}

impl Act for RemoveConsumer {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        shown::<Consumer>(bench, self.side, &self.id)?.ok_or_else(|| no_such::<Consumer>(&self.id))?;
        Ok(Writing::of(vec![Edit::gone::<Consumer>(&record_id(self.side, &self.id), true)]))
    }
}

impl Act for RecordBrake {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        Ok(Writing::of(recorded::<Brake>(bench, self.side, end_slot(self.end), &self.brake.clone().checked()?)?))
    }
}

impl Act for RecordFluid {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let slot = self.id.as_deref().unwrap_or(call.id);
        Ok(Writing::making(slot, recorded::<Fluid>(bench, self.side, slot, &self.fluid.clone().checked()?)?))
    }
}

impl Act for RecordIndication {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let indication = self.indication.clone().checked()?;
        Ok(Writing::of(recorded::<Indication>(bench, self.side, "indication", &indication)?))
    }
}
