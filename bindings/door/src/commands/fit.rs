//! Fitting what was tried: the proposal of a ripple becomes the fitted spec.

use layshaft_core::error::Refusal;
use layshaft_core::record::{Brake, Consumer, Drive, End, Indication, Side, Wheel};
use layshaft_core::ripple::{Proposal, propose};

use super::spec::{check_role, end_slot, recorded};
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::{FitBrake, FitConsumer, FitFlasher, FitSprockets, FitTyre};
use crate::write::Writing;

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
        let place = bench.bike.fitted.consumers.iter().find(|slot| slot.id == self.id);
        let role = self.consumer.role.or_else(|| place?.consumer.role);
        let consumer = Consumer { role, ..self.consumer.clone() }.checked()?;
        check_role(&bench.bike.fitted, &self.id, &consumer)?;
        Ok(Writing::making(&self.id, recorded::<Consumer>(bench, Side::Fitted, &self.id, &consumer)?))
    }
}

impl Act for FitBrake {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let proposal = Proposal::Brake { end: self.end, brake: self.brake.clone() };
        let proposed = propose(&bench.bike, &[proposal])?;
        let brake = match self.end {
            End::Front => proposed.front_brake,
            End::Rear => proposed.rear_brake,
        };
        Ok(Writing::of(recorded::<Brake>(bench, Side::Fitted, end_slot(self.end), &brake)?))
    }
}

impl Act for FitTyre {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let proposal = Proposal::Tyre { end: self.end, wheel: self.wheel.clone() };
        let proposed = propose(&bench.bike, &[proposal])?;
        let wheel = match self.end {
            End::Front => proposed.front_wheel,
            End::Rear => proposed.rear_wheel,
        };
        Ok(Writing::of(recorded::<Wheel>(bench, Side::Fitted, end_slot(self.end), &wheel)?))
    }
}

impl Act for FitFlasher {
    fn write(&self, bench: &Bench, _: &Call) -> Result<Writing, Refusal> {
        let proposal = Proposal::Flasher { indication: self.indication.clone() };
        let proposed = propose(&bench.bike, &[proposal])?.indication;
        Ok(Writing::of(recorded::<Indication>(bench, Side::Fitted, "indication", &proposed)?))
    }
}
