//! Bringing back what was put away.

use layshaft_core::changes::{Edit, GONE, Key};
use layshaft_core::error::Refusal;
use layshaft_core::message::Message;
use layshaft_core::record::CAN_BE_PUT_AWAY;

use crate::Bench;
use crate::act::{Act, Call};
use crate::bench::unknown;
use crate::command::BringBack;
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for BringBack {
    /// What was never there cannot come back; what is there stays as it is.
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        if !CAN_BE_PUT_AWAY.contains(&self.record_kind.as_str()) {
            return Err(unknown(DoorMessage::WhatAway, &self.record_kind));
        }
        let project = bench.open_bike_id()?.to_owned();
        let key = Key { project, kind: self.record_kind.clone(), record: self.id.clone() };
        let Some(fields) = bench.ledger.fields(&key) else {
            return Err(unknown(Message::new(format!("kind-{}", self.record_kind), Vec::new()), &self.id));
        };
        let back =
            || Edit { kind: key.kind.clone(), record: key.record.clone(), field: GONE.to_owned(), value: false.into() };
        Ok(Writing::of(fields.gone().then(back).into_iter().collect()))
    }
}
