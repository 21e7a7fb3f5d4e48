//! The page of a proposal: what is asked, and everything that it changes.

mod answer;
mod ask;
mod follows;
mod words;

pub use answer::ripple_answer;
pub use ask::{ItemShift, RippleAnswer, RippleAsk, Shift};
