//! The page of an inspection pack.

mod answer;

pub use answer::{InspectionAsk, InspectionSheet, Readiness, inspection_sheet, readiness};
