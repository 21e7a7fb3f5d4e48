//! Renders what the core says: the catalogue of a language (Project Fluent) with numbers, days and lengths of time.
//!
//! Knows a message by its JSON alone, so that the core's own tests may use it too.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

mod catalogue;
mod functions;
mod numbers;
mod raw_message;
mod times;

use serde::Serialize;
use serde_json::Value;

pub use catalogue::{Catalogue, FILES, english};

/// A message of the core, or whatever has its shape in JSON, in English.
pub fn say(message: &impl Serialize) -> String {
    serde_json::to_value(message).map_or_else(|error| error.to_string(), |message| english().say_json(&message))
}

/// Puts the words in place of every message in an answer.
pub fn put_into_words(catalogue: &Catalogue, answer: &mut Value) {
    match answer {
        Value::Object(fields) if fields.contains_key("messageId") => *answer = catalogue.say_json(answer).into(),
        Value::Object(fields) => fields.values_mut().for_each(|field| put_into_words(catalogue, field)),
        Value::Array(items) => items.iter_mut().for_each(|item| put_into_words(catalogue, item)),
        _ => {}
    }
}
