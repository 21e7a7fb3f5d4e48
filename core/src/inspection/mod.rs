//! Inspection packs and readiness: what would fail, what is unknown, what stops.
//!
//! A [`Pack`] says what is looked at in a place. [`judge_item`] judges one item of it from the bike, its answers and
//! its derived quantities; [`readiness`] folds the verdicts. Not knowing is never a pass, anywhere on the way.

mod answer;
mod equipped;
mod judge;
mod message;
mod pack;
mod page;
mod verdict;
mod wording;
mod written;

pub(crate) use message::{InspectionMessage, PackMessage};

pub use judge::{ItemVerdict, judge_item};
pub use pack::{Item, Limit, Measure, Pack, PackCard};
pub use page::{InspectionAnswer, InspectionAsk, Readiness, inspection_answer, readiness};
pub use verdict::Verdict;
pub use written::packs;
