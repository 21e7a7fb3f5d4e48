//! Searches for faults: begun, answered step by step, taken back, ended.

use layshaft_core::changes::edits;
use layshaft_core::error::Refusal;
use layshaft_core::faults::{answered, closed, started, taken_back};
use layshaft_core::record::FaultSearch;

use super::changed;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{AnswerFault, CloseFault, StartFault, UndoFaultStep};
use crate::write::Writing;

impl Act for StartFault {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let search = started(&bench.bike, &self.trouble, call.moment.now_ms)?;
        Ok(Writing::making(call.id, edits(call.id, &search, None)))
    }
}

impl Act for AnswerFault {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let search: FaultSearch = bench.record(&self.search)?;
        Ok(Writing::of(changed(bench, &self.search, &answered(&bench.bike, search, &self.answer)?)))
    }
}

impl Act for UndoFaultStep {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let search: FaultSearch = bench.record(&self.search)?;
        Ok(Writing::of(changed(bench, &self.search, &taken_back(search)?)))
    }
}

impl Act for CloseFault {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let search: FaultSearch = bench.record(&self.search)?;
        let closed = closed(search, &self.closing, self.learned.as_deref(), call.moment.now_ms)?;
        Ok(Writing::of(changed(bench, &self.search, &closed)))
    }
}
