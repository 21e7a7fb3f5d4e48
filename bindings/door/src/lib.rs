//! The one typed way in: `act(Command)` changes, `ask(Query)` answers.
//!
//! The browser worker, the Tauri window and the UniFFI languages call nothing else. The [`registry`] lists every
//! command and query once; from it come the dispatch, the TypeScript map and one typed method for each language.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

pub mod registry;

pub mod command;
pub mod query;

mod act;
mod ask;
mod bench;
mod commands;
mod demo;
mod found;
mod json;
mod keep;
mod message;
mod planned;
mod stale;
mod undo;
mod write;

pub use bench::Bench;
#[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
pub use bench::fresh_id;
pub use command::Command;
pub use json::{ActCall, AskCall, moment_of};
pub use message::{HostMessage, MESSAGES};
pub use query::Query;

#[cfg(feature = "uniffi")]
uniffi::setup_scaffolding!();
