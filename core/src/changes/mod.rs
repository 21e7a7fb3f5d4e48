//! Facts that are never lost: change records, their hybrid clock, the fold to the present state, and the merge.
//!
//! The present state is the fold of all changes; nothing else is stored as truth. Merging two devices is the union of
//! their changes, so it is commutative, associative and idempotent by construction.

mod fold;
mod record;
mod stamp;

pub use fold::{Entry, Fields, History, Key, Ledger, Rival};
pub use record::{Edit, GONE, Record, edits, read};
pub use stamp::{Device, Stamp};

use serde_json::Value;

/// One fact: on this device, at this stamp, this field of this record got this value.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The record that it belongs to.
    pub key: Key,
    /// The field of the record.
    pub field: String,
    /// The value; `null` means "not known any more".
    pub value: Value,
    /// When and where.
    pub stamp: Stamp,
    /// Stamp of the value that the author saw and replaced; `None` for the first value. It tells a later edit from a
    /// concurrent one.
    pub seen: Option<Stamp>,
    /// The command that wrote it. All changes of one command share it, and are undone together.
    pub batch: String,
}
