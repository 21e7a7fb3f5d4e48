//! What the inspection says: verdicts with their reasons, and what is wrong with a pack.

mod pack;
mod verdict;

pub(crate) use pack::PackMessage;
pub(crate) use verdict::InspectionMessage;
