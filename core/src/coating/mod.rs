//! Coatings: a cure that runs on temperature, and paint jobs in several coats. Products, coats and paint jobs themselves are
//! records.
//!
//! Reading order: how a cure runs (`formulas`), what a coat keeps from being done and what paint a job still takes (`judge`),
//! ready-made paint jobs (`plans`), and the pages (`page`).

mod formulas;
mod judge;
mod message;
mod page;
mod plans;

pub use formulas::{
    Activation, ActivationFrom, ClimateLog, CureAge, CurePace, CureRate, DewPoint, HoursAtRate, Milestone,
    SurfaceMargin, activation_of, cure_end_ms, dew_point, equivalent_age, paced_rate, rate_factor, surface_margin,
};
pub use judge::{CoatsToCome, Hold, OnHold, PaintNeed, holds_of, paint_needs};
pub(crate) use message::{CoatingMessage, CoatingWorking, CureMessage, ProcessMessage};
pub(crate) use page::unfinished_processes;
pub use page::{
    CureAnswer, CureAsk, CurePoint, ProcessAnswer, ProcessAsk, ProcessState, StepAnswer, against_it, cure_answer,
    process_answer, process_of_job, running_cures, running_processes,
};
pub use plans::{process_plan, process_plans};
