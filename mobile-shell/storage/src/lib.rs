//! The only crate that knows SQLite: the append-only table of changes, bundles and attachments.
//!
//! Reading order: [`Store`] is the device's own database, [`Bundle`] is one that came from elsewhere, [`StoreError`]
//! says what went wrong. A write is one transaction; what returned without an error is on disk.

#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing))]

#[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
mod file;
#[cfg(all(target_family = "wasm", target_os = "unknown"))]
mod pool;
mod store;

mod commit;

mod bundle;
mod bundle_check;

mod layout;
mod rows;
mod views;

mod error;
mod message;

pub use bundle::{Attachment, Bundle, Clash, Received};
pub use commit::Settings;
pub use error::StoreError;
#[cfg(not(all(target_family = "wasm", target_os = "unknown")))]
pub use file::set_aside_files;
pub use message::MESSAGES;
#[cfg(all(target_family = "wasm", target_os = "unknown"))]
pub use pool::{open_pool, set_aside_files};
pub use store::{AsideFile, Opened, Store, content_hash};
