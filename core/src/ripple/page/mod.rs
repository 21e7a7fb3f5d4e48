//! The page of a proposal: what is asked, and everything that it changes.

mod answer;
mod ask;

pub use answer::ripple_answer;
pub use ask::{ItemShift, RippleAnswer, RippleAsk, Shift};
