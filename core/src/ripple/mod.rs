//! Ripple: the difference that a proposal makes to everything that the trade can compute about a bike.

mod page;
mod proposal;

pub use page::{ItemShift, RippleAsk, RippleSheet, Shift, ripple_sheet};
pub use proposal::{Proposal, propose};
