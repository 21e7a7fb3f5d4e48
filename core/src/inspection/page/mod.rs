//! The page of an inspection pack.

mod answer;

pub use answer::{InspectionAnswer, InspectionAsk, Readiness, inspection_answer, readiness};
