//! The pages of a circuit and of the lamps.

mod circuit;
mod lamps;
mod sources;

pub use circuit::{CircuitCard, FaultPlace, HarnessAsk, HarnessSheet, WayDrop, circuit_of, harness_sheet};
pub use lamps::{FlashColumn, FlashCount, LampColumn, LampSheet, LampSide, LampsAsk, lamp_sheet};
pub use sources::harness_sources;
