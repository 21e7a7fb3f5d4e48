//! What the plan says: of the hours that a job asks for, of waits, of the ready date, of what is worth looking at, of parts to
//! order, of what cannot be supposed.

mod asked;
mod date;
mod finding;
mod never_fits;
mod order;
mod refused;
mod wait;

pub(crate) use asked::PlanAskedMessage;
pub(crate) use date::PlanDateMessage;
pub(crate) use finding::PlanFindingMessage;
pub(crate) use never_fits::PlanNeverFitsMessage;
pub(crate) use order::PlanOrderMessage;
pub(crate) use refused::PlanRefusedMessage;
pub(crate) use wait::PlanWaitMessage;
