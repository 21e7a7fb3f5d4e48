//! The trade of Layshaft as pure functions: same inputs, same outputs, on every platform.
//!
//! No I/O, no clock, no randomness, no threads, no SQL. `now`, marks and seeds come in as values. Everything that
//! crosses the door is the domain type itself, marked `#[wire]`.
//!
//! Reading order: [`units`], [`bounds`], [`error`], [`finding`], [`bike`], then the areas of the trade, then what
//! looks across them: [`ripple`], [`inspection`], [`plan`], [`today`], [`dues`], [`alarms`]. [`changes`] is how facts are kept.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

pub mod bounds;
pub mod error;
pub mod finding;
pub mod units;

pub mod bike;
pub mod brakes;
pub mod coating;
pub mod electrical;
pub mod fasteners;
pub mod fluids;
pub mod gearing;
pub mod harness;
pub mod tyres;

pub mod faults;

pub mod reckon;

pub mod inspection;
pub mod plan;
pub mod ripple;
pub mod today;

pub mod alarms;
pub mod dues;

pub mod changes;

#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!();
