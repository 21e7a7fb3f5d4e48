//! What the tyres say: one enum a subject.

mod check;
mod findings;
mod judgement;
mod refused;
mod source;
mod working;

pub(crate) use check::TyreCheckMessage;
pub(crate) use findings::TyresFinding;
pub(crate) use judgement::TyresMessage;
pub(crate) use refused::TyresRefused;
pub(crate) use source::TyresSource;
pub(crate) use working::TyresWorking;
