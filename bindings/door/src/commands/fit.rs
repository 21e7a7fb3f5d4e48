//! Fitting what was tried: the proposal of a ripple becomes the fitted spec.

use layshaft_core::bike::{Consumer, Drive, Side};
use layshaft_core::error::Refusal;
use layshaft_core::ripple::{Proposal, propose};

use super::spec::recorded;
use crate::Bench;
use crate::act::{Act, Call, Writing};
use crate::command::{FitConsumer, FitSprockets};

impl Act for FitSprockets {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let FitSprockets { front_teeth, rear_teeth, chain_links } = *self;
        let proposal = Proposal::Sprockets { front_teeth, rear_teeth, chain_links };
        let proposed = propose(&bench.bike, &[proposal])?;
        Ok(Writing::of(recorded::<Drive>(bench, Side::Fitted, "drive", &proposed.drive.checked()?)?))
    }
}

impl Act for FitConsumer {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let consumer = self.consumer.clone().checked()?;
        Ok(Writing::making(&self.id, recorded::<Consumer>(bench, Side::Fitted, &self.id, &consumer)?))
    }
}
