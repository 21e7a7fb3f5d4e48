//! Finding the fault: suspects with probabilities, the next check that tells most for the least trouble, and when to stop.
//!
//! Reading order: what a case is made of (`case`), what the answers make of the suspects (`belief`), what to check next
//! (`trouble`, `next`), in which order to try what no check tells apart (`order`), and where cases come from: a harness
//! (`circuit`) or a table of experience (`knowledge`). `sheet` is the answer of the page.

mod belief;
mod case;
mod circuit;
#[cfg(test)]
mod circuit_tests;
mod knowledge;
mod next;
#[cfg(test)]
mod next_tests;
mod order;
mod sheet;
mod trouble;

pub use belief::{Belief, beliefs};
pub use case::{Check, CheckOutcome, Cover, Evidence, Metering, Suspect, TroubleCase, check_case};
pub use circuit::{Probe, WiringAsk, wiring_case};
pub use knowledge::{KNOWLEDGE, knowledge_case};
pub use next::{NextCheck, next_check};
pub use order::{TryOut, expected_minutes, try_order};
pub use sheet::{FaultSheet, Meaning, SettledOn, fault_sheet};
pub use trouble::trouble_minutes;
