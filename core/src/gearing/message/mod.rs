//! What gearing, chain and thrust say: one enum a subject.

mod chain;
mod choice;
mod findings;
mod judgement;
mod refused;
mod source;
mod thrust;
mod working;

pub(crate) use chain::{ChainMeshMessage, ChainWearMessage};
pub(crate) use choice::SprocketChoiceMessage;
pub(crate) use findings::GearingFinding;
pub(crate) use judgement::GearingMessage;
pub(crate) use refused::GearingRefused;
pub(crate) use source::GearingSource;
pub(crate) use thrust::ThrustMessage;
pub(crate) use working::{GearingWorking, SprocketChoiceWorking, ThrustWorking};
