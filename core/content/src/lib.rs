//! What the program brings along, read from TOML while it is built: ready-made jobs, inspection packs, tables of faults,
//! product sheets, paint jobs, and the names in the circuits.
//!
//! `kinds` says which kinds there are and which of their fields are texts; everything else is data and the same in every
//! language. [`Content::read`] reads the English files, strictly, and [`Content::json`] is what the core includes. Each text
//! has a key, `jobs/brake-bleed/steps/if-soft/text`: the path at which a translation says it. A key goes by ids, never by
//! places, so that a step may move.
//!
//! A translation is a second file beside the first, in a folder named after its language, and holds texts only.
//! [`Content::language`] puts it in; [`Content::merged`] does the same from a map, for languages that are made up.
//!
//! Nothing of this is in the program that runs.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

mod kinds;
mod language;
mod part;
mod problem;
mod read;
mod texts;
mod translation;

pub use kinds::folders;
pub use language::{Content, Merged, STILL_ENGLISH};
pub use problem::Problem;
pub use read::plain;
