//! The plan on invented bikes, against brute force, a checker and laws.

mod brute;
mod cases;
mod checker;
pub(crate) mod example;
mod hours_cases;
mod laws;
mod paint_cases;

pub(crate) use laws::{any_bike, any_moment};
