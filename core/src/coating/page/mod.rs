//! The pages of one coat and of a paint job in several coats.

mod ask;
mod cure;
mod findings;
mod process;
mod process_ask;
mod process_words;
mod words;

pub use ask::{CureAnswer, CureAsk, CurePoint};
pub use cure::{against_it, cure_answer, running_cures};
pub use process::{process_answer, running_processes};
pub use process_ask::{ProcessAnswer, ProcessAsk, ProcessState, StepAnswer};
