//! Renders what the core says: the catalogue of a language (Project Fluent) with numbers, days and lengths of time.
//!
//! Knows a message by its JSON alone, so that the core's own tests may use it too.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

mod functions;
mod languages;
mod numbers;
mod raw_message;
mod times;
mod words;
#[cfg(test)]
mod words_tests;

use serde::Serialize;

pub use languages::{ENGLISH, files, tags};
pub use words::Words;

/// A message of the core, or whatever has its shape in JSON, in English.
pub fn say(message: &impl Serialize) -> String {
    Words::english().say(message)
}
