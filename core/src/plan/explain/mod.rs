//! The plan in words and rows: what each job waits for, its slack, and what holds the ready date.

mod critical_chain;
mod row;
mod rows;
mod slack;
mod why;

pub(crate) use critical_chain::Ended;
pub use row::PlanRow;
pub(crate) use rows::rows;
pub(crate) use why::held_by;
