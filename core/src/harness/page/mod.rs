//! The pages of a circuit and of the lamps.

mod alternating;
mod circuit;
mod lamps;
mod message;
mod sources;

pub use circuit::{CircuitCard, FaultPlace, HarnessAnswer, HarnessAsk, WayDrop, circuit_of, harness_answer};
pub use lamps::{FlashColumn, FlashCount, LampAnswer, LampColumn, LampSide, LampsAsk, lamp_answer};
pub(crate) use message::{CircuitMessage, HarnessWorking, LampsMessage};
pub use sources::harness_sources;
