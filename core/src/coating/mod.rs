//! Coatings: what is on the can, a cure that runs on temperature, and paint jobs in several coats.
//!
//! Reading order: the can (`product`, `activation`, `typical`), the place (`climate`, `stay`, `dew`), one coat (`coat`,
//! `cure`, `hold`, `sheet`), several coats (`process`, `plans`, `need`, `process_sheet`), words and findings.

mod activation;
mod climate;
mod cure;
mod dew;
mod findings;
mod hold;
mod need;
mod plans;
mod process_sheet;
mod process_words;
mod sheet;
mod words;

pub use activation::{ActivationFrom, activation_of};
pub use climate::ClimateLog;
pub use cure::{Milestone, cure_end_ms, equivalent_age, rate_factor};
pub use dew::{dew_point, surface_margin};
pub use hold::{Hold, OnHold, holds_of};
pub use need::{PaintNeed, paint_needs};
pub use plans::process_plans;
pub use process_sheet::{ProcessAsk, ProcessSheet, ProcessState, StepSheet, process_sheet, running_processes};
pub use sheet::{CureAsk, CurePoint, CureSheet, cure_sheet, running_cures};
