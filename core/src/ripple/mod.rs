//! Ripple: the difference that a proposal makes to everything that the trade can compute about a bike.

pub(crate) mod message;
mod page;
mod proposal;
mod wanted;

pub use page::{ItemShift, RippleAnswer, RippleAsk, Shift, ripple_answer};
pub use proposal::{Proposal, propose};
pub use wanted::{change_job, change_name, reason_of};
