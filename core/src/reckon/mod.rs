//! Plain sums: one formula of the trade with numbers given by hand, no bike needed.
//!
//! The pages compute through the same functions. Scripts use this, and the vectors under `fixtures/vectors` run
//! through it in every language.

mod brakes;
mod dispatch;
mod electrical_sums;
mod fasteners;
mod figure;
mod fluids;
mod further_sums;
mod gears;
mod paint_sums;
mod spreads;
mod sum;
mod tyre_sums;

pub use dispatch::reckon;
pub use figure::{Figure, Figures};
pub use sum::Sum;
