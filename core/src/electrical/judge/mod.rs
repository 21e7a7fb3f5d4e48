//! What the formulas give on a bike, and how it is judged: load against output, charging, what follows for ripple and readiness.

mod balance;
mod charging;
mod derived;
mod findings;
mod message;

pub use balance::{Balance, StateLoad, Stationary};
pub(crate) use balance::{COMPARED_AT_RPM, FLOODED, TEN_HOURS, balance, stationary};
pub use charging::{ChargingPattern, ChargingTest, TestLine, TestVerdict, charging_limits};
pub(crate) use charging::{DRAIN_MILLIAMPERES, Readings, limit_sources, most_at_rest, verdict};
pub use derived::derive_electrical;
pub(crate) use derived::electrically_sound;
pub(crate) use findings::of_load;
pub(crate) use message::{ChargingMessage, LoadMessage};
