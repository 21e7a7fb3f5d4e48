//! Projects: activities with durations, lags and shared resources, ordered so that all is over as early as may be.
//!
//! The problem is the resource-constrained project scheduling problem. The time here has no calendar: the planner of a
//! bike schedules the orders found here on the bench time (see `search::orders`), and the published instances of the problem
//! measure how good the orders are.

mod bound;
mod check;
mod dice;
mod lists;
mod model;
mod population;
mod search;
mod serial;
mod sorting;

#[cfg(test)]
mod cases;

pub use bound::{critical_path, lower_bound};
pub use check::check;
pub(crate) use dice::Dice;
pub use model::{Activity, After, Project, ProjectError};
pub use search::Search;
