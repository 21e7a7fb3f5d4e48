//! Finding the fault: suspects with probabilities, the next check that tells most for the least trouble, and when to stop.
//!
//! Reading order: what a case is made of (`case`), what the answers make of the suspects (`belief`), what to check next
//! (`trouble`, `next`), in which order to try what no check tells apart (`order`), and where cases come from: a harness
//! (`circuit`, with `reach` for what can be got at) or a table of experience (`knowledge`). `page` says where a search stands and
//! keeps it with the bike.

mod belief;
mod case;
mod circuit;
#[cfg(test)]
mod circuit_tests;
mod cures;
mod knowledge;
mod message;
mod next;
#[cfg(test)]
mod next_tests;
#[cfg(test)]
mod optimum_tests;
mod order;
mod page;
mod reach;
mod trouble;

pub use page::{
    AnsweredCheck, CureOffer, CureWork, FaultAnswer, FaultAsk, Meaning, NoticedAt, Question, SearchCard, SearchState,
    SearchStop, SettledOn, TroubleOffer, answered, case_of, closed, cure_work, fault_answer, standing, started,
    taken_back, trouble_name,
};

pub use belief::{Belief, beliefs};
pub use case::{Check, CheckOutcome, Cover, Metering, Suspect, TroubleCase, check_case};
pub use circuit::{Probe, WiringAsk, wiring_case};
pub use knowledge::{KNOWLEDGE, knowledge_case};
pub(crate) use message::{CircuitCheckMessage, FaultsMessage, FaultsNotice, FaultsSource, ReachMessage};
pub use next::{NextCheck, next_check};
pub use order::{TryOut, expected_minutes, try_order};
pub use reach::{circuit_checks, searchable};
pub use trouble::trouble_minutes;
