//! What the formulas give on a bike, and how it is judged: load against output, charging, what follows for ripple and readiness.

mod balance;
mod charging;
mod coil;
mod derived;
mod feed;
mod findings;
mod message;

pub use balance::{Balance, StateLoad, Stationary};
pub(crate) use balance::{COMPARED_AT_RPM, FLOODED, TEN_HOURS, balance, stationary};
pub use charging::{ChargingPattern, ChargingTest, TestLine, TestVerdict, charging_limits};
pub(crate) use charging::{DRAIN_MILLIAMPERES, Readings, limit_sources, most_at_rest, verdict};
pub use coil::CoilLamps;
pub(crate) use coil::{BURNS_OUT, coil_lamps, of_coil};
pub use derived::derive_electrical;
pub(crate) use derived::electrically_sound;
pub(crate) use feed::{Fed, at_work, fed, on_coil, state_loads};
pub(crate) use findings::of_load;
pub(crate) use message::{ChargingMessage, LoadMessage};
