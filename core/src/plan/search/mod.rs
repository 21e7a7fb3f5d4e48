//! The search for a timetable: orders of tasks, serial schedule generation on the calendar, gaps, bounds.

mod best;
mod blocks;
mod gaps;
mod infeasible;
mod lower_bound;
mod orders;
mod outline;
mod previous_order;
mod priority_rules;
pub mod rcpsp;
mod resource_use;
mod sampled_weeks;
mod serial;
mod timetable;

pub(crate) use gaps::Taken;
pub(crate) use infeasible::mark_what_never_fits;
pub(crate) use orders::{Orders, tries_all};
pub(crate) use outline::Outline;
pub use previous_order::PreviousOrder;
pub(crate) use rcpsp::Dice;
pub(crate) use sampled_weeks::sampled_orders;
pub(crate) use timetable::{Placement, Problem, Timetable, by_begin, last_over, misses};
