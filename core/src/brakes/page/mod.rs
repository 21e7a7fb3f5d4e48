//! The page of a brake: what is asked, what is answered, how it was worked out.

mod answer;
mod ask;
mod working;

pub use answer::brake_answer;
pub use ask::{BrakeAnswer, BrakeAsk, FluidAdvice, StoppingAnswer};
