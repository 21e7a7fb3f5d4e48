//! Parts, readings and the maker's torques.

use layshaft_core::changes::{Edit, edits};
use layshaft_core::error::Refusal;
use layshaft_core::record::{Climate, Part, Reading, Tightening};

use super::changed;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{NoteClimate, PutPartAway, PutTighteningAway, RecordPart, RecordTightening, TakeReading};
use crate::write::Writing;

impl Act for RecordPart {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let part = self.part.clone().checked()?;
        let id = self.id.as_deref().unwrap_or(call.id);
        Ok(Writing::making(id, changed(bench, id, &part)))
    }
}

impl Act for PutPartAway {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        bench.record::<Part>(&self.id)?;
        Ok(Writing::of(vec![Edit::gone::<Part>(&self.id, true)]))
    }
}

impl Act for RecordTightening {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let tightening = self.tightening.clone().checked()?;
        let id = self.id.as_deref().unwrap_or(call.id);
        Ok(Writing::making(id, changed(bench, id, &tightening)))
    }
}

impl Act for PutTighteningAway {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        bench.record::<Tightening>(&self.id)?;
        Ok(Writing::of(vec![Edit::gone::<Tightening>(&self.id, true)]))
    }
}

impl Act for TakeReading {
    fn write(&self, _: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let taken_ms = self.reading.taken_ms.or(Some(call.moment.now_ms));
        let reading = Reading { taken_ms, ..self.reading.clone() }.checked()?;
        Ok(Writing::making(call.id, edits(call.id, &reading, None)))
    }
}

impl Act for NoteClimate {
    fn write(&self, _: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let from_ms = self.from_ms.unwrap_or(call.moment.now_ms);
        let climate = Climate { from_ms, celsius: self.celsius, humidity: self.humidity }.checked()?;
        Ok(Writing::making(call.id, edits(call.id, &climate, None)))
    }
}
