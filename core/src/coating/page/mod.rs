//! The pages of one coat and of a paint job in several coats.

mod ask;
mod cure;
mod findings;
mod process;
mod process_ask;
mod process_words;
mod words;

pub use ask::{CureAsk, CurePoint, CureSheet};
pub use cure::{against_it, cure_sheet, running_cures};
pub use process::{process_sheet, running_processes};
pub use process_ask::{ProcessAsk, ProcessSheet, ProcessState, StepSheet};
