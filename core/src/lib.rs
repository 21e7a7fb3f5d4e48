//! The trade of Layshaft as pure functions: same inputs, same outputs, on every platform.
//!
//! No I/O, no clock, no randomness, no threads, no SQL. `now`, ids and seeds come in as values. Everything that
//! crosses the door is the domain type itself, marked `#[wire]`.
//!
//! The modules stand on floors, the lowest first; each knows only what stands on its floor or below, and no two know each
//! other (`tests/suite/floors`). Read them in this order: what everybody speaks ([`units`] to [`quantity`]), how facts are kept
//! ([`changes`]), the bike ([`record`]), the areas of the trade, what looks across them, what comes about by itself
//! ([`events`]) and [`today`]; last the formulas by name ([`handbook`]) and all that is said
//! ([`catalogue`]).

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

extern crate self as layshaft_core;

pub mod bounds;
pub mod check;
pub mod content;
pub mod error;
pub mod message;
pub mod quantity;
pub mod time;
pub mod units;

pub mod changes;

pub mod ready_made;
pub mod record;

pub mod brakes;
pub mod coating;
pub mod electrical;
pub mod fasteners;
pub mod fluids;
pub mod gearing;
pub mod harness;
pub mod tyres;

pub mod derive;
pub mod faults;
pub mod inspection;
pub mod plan;
pub mod ripple;

pub mod events;
pub mod today;

pub mod catalogue;
pub mod handbook;

#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!();
