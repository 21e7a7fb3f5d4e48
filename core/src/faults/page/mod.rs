//! The page of a search for a fault: the searches of a bike, and where one of them stands.

mod answer;
mod state;

pub use answer::{
    FaultAnswer, FaultAsk, SearchCard, TroubleOffer, answered, case_of, closed, fault_answer, started, taken_back,
};
pub use state::{AnsweredCheck, Meaning, Question, SearchState, SearchStop, SettledOn, standing};
