//! What the brakes say: one enum a subject.

mod bleeding;
mod findings;
mod judgement;
mod refused;
mod source;
mod working;

pub(crate) use bleeding::BleedingMessage;
pub(crate) use findings::BrakesFinding;
pub(crate) use judgement::BrakesMessage;
pub(crate) use refused::BrakesRefused;
pub(crate) use source::BrakesSource;
pub(crate) use working::BrakesWorking;
