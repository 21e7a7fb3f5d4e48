//! What goes wrong in a circuit, where, and what is then seen.

mod fault;
#[cfg(test)]
mod fault_tests;
mod message;
mod places;
mod predict;
mod symptom;

pub use fault::{Fault, with_fault};
pub(crate) use message::{FaultMessage, SymptomMessage};
pub use places::fault_places;
pub(crate) use predict::Predictions;
pub(crate) use symptom::difference;
pub use symptom::{Symptom, SymptomKind, look_id, look_spoken, symptoms};
