//! The store from outside: what is on disk, what a bundle carries, what is refused, and that views and fold agree.

#![allow(missing_docs, clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod bench;

mod bundle;
mod bundle_refused;
mod file;
mod merge;
mod views;
