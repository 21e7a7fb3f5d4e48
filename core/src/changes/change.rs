//! One fact of the record.

use serde_json::Value;

use super::stamp::Stamp;

/// Which record a change belongs to.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key {
    /// The bike.
    pub project: String,
    /// Kind of record, as `job`, `part` or `drive`.
    pub kind: String,
    /// The record's id within its kind.
    pub record: String,
}

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
