//! The page of a search for a fault: the searches of a bike, and where one of them stands.

mod answer;
mod cures;
mod offers;
mod searched;
mod state;

pub use answer::{FaultAnswer, FaultAsk, SearchCard, answered, closed, fault_answer, started, taken_back};
pub use cures::{CureOffer, CureWork, cure_work};
pub use offers::{NoticedAt, TroubleOffer};
pub use searched::{case_of, trouble_name};
pub use state::{AnsweredCheck, Meaning, Question, SearchState, SearchStop, SettledOn, standing};
