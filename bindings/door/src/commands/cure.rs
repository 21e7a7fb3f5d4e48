//! Coats and their clocks.

use layshaft_core::changes::edits;
use layshaft_core::error::Refusal;
use layshaft_core::message::FieldMessage;
use layshaft_core::record::{Coat, Job, Stay, went_on};
use layshaft_core::time::check_written;

use super::change;
use super::process::check_has_no_coats_to_come;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{EndCure, MoveCoat, StartCure};
use crate::write::Writing;

impl Act for StartCure {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        if let Some(job) = &self.job {
            bench.record::<Job>(job)?;
            check_has_no_coats_to_come(bench, job, call.moment)?;
        }
        let coat = Coat {
            title: self.title.clone(),
            product: self.product.clone(),
            applied_ms: went_on(self.applied_ms, call.moment)?,
            job: self.job.clone(),
            ..Coat::default()
        };
        Ok(Writing::making(call.id, edits(call.id, &coat.checked()?, None)))
    }
}

impl Act for EndCure {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let ended = |coat: Coat| Coat { ended_ms: Some(call.moment.now_ms), ..coat };
        Ok(Writing::of(change(bench, &self.id, ended)?))
    }
}

impl Act for MoveCoat {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        let coat: Coat = bench.record(&self.id)?;
        check_written("fromMs", FieldMessage::FromWhenOn, self.from_ms)?;
        let from_ms = self.from_ms.unwrap_or(call.moment.now_ms);
        let stay = Stay { from_ms, place: self.place, celsius: self.celsius }.checked()?;
        let moved = Coat { stays: [coat.stays.clone(), vec![stay]].concat(), ..coat }.checked()?;
        Ok(Writing::of(change(bench, &self.id, |_| moved)?))
    }
}
