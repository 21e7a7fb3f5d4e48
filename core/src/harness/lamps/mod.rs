//! The indicators of a bike in their circuit: pilot, the other side, what follows for ripple and readiness.

mod derived;
mod indicators;
mod message;
pub(crate) mod pilot;

pub use derived::derive_indicators;
pub(crate) use derived::findings;
pub use indicators::{Indicators, indicators};
pub(crate) use message::IndicatorMessage;
pub use pilot::{PilotBehaviour, pilot_behaviour};
