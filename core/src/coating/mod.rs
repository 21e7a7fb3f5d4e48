//! Coatings: what is on the can, a cure that runs on temperature, and paint jobs in several coats.
//!
//! Reading order: the can (`product`, `activation`, `typical`), the place (`climate`, `stay`, `dew`), one coat (`coat`,
//! `cure`, `hold`, `sheet`), several coats (`process`, `plans`, `need`, `process_sheet`), words and findings.

mod activation;
mod climate;
mod coat;
mod cure;
mod dew;
mod findings;
mod hold;
mod need;
mod plans;
mod process;
mod process_sheet;
mod process_words;
mod product;
mod sheet;
mod stay;
mod typical;
mod words;

pub use activation::{ActivationFrom, activation_of};
pub use climate::ClimateLog;
pub use coat::{Coat, went_on};
pub use cure::{CureState, Milestone, activation, cure_end_ms, equivalent_age, rate_factor};
pub use dew::{dew_point, surface_margin};
pub use hold::{Hold, OnHold, holds_of};
pub use need::{PaintNeed, paint_needs};
pub use plans::process_plans;
pub use process::{Layer, Process, ProcessStep};
pub use process_sheet::{ProcessAsk, ProcessSheet, ProcessState, StepSheet, process_sheet, running_processes};
pub use product::{Product, ProductKind};
pub use sheet::{CureAsk, CurePoint, CureSheet, against_it, cure_sheet, running_cures};
pub use stay::{Stay, StayPlace};
pub use typical::{products, source_of, typical_product};
