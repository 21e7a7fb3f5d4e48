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
pub(crate) use process::unfinished_processes;
pub use process::{process_answer, process_of_job, running_processes};
pub use process_ask::{ProcessAnswer, ProcessAsk, ProcessState, StepAnswer};
