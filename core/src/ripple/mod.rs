//! Ripple: everything the trade can compute about a bike, and the difference that a proposal makes.

mod page;
mod proposal;

pub use page::{ItemShift, RippleAsk, RippleSheet, Shift, ripple_sheet};
pub use proposal::{Proposal, propose};
