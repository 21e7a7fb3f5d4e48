//! Coatings: what is on the can, a cure that runs on temperature, and paint jobs in several coats.
//!
//! Reading order: the can (`product`, `activation`, `typical`), the place (`climate`, `stay`, `dew`), one coat (`coat`,
//! `cure`, `hold`, `sheet`), several coats (`process`, `plans`, `need`, `process_sheet`), words and findings.

mod formulas;
mod judge;
mod page;
mod plans;

pub use formulas::{
    ActivationFrom, ClimateLog, Milestone, activation_of, cure_end_ms, dew_point, equivalent_age, rate_factor,
    surface_margin,
};
pub use judge::{Hold, OnHold, PaintNeed, holds_of, paint_needs};
pub use page::{
    CureAsk, CurePoint, CureSheet, ProcessAsk, ProcessSheet, ProcessState, StepSheet, cure_sheet, process_sheet,
    running_cures, running_processes,
};

pub use plans::process_plans;
