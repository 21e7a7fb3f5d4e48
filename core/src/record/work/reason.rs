//! What a job puts right.

use layshaft_wire::wire;

use crate::changes::{Field, Stored};
use crate::quantity::FindingCode;

/// What is changed on a bike where something is tried before it is bought.
#[wire(stored)]
pub enum ChangeKind {
    /// Other sprockets.
    Sprockets,
    /// Another consumer.
    Consumer,
    /// Other parts in a brake.
    Brake,
    /// Another flasher, other pilots, load resistors.
    Flasher,
    /// Another tyre, tube or rim.
    Tyre,
}

/// Something that was found and that a job puts right.
#[wire(stored)]
pub enum JobReason {
    /// An inspection item that is not met.
    Item {
        /// Id of the pack in which it was looked at.
        pack: String,
        /// Id of the item.
        item: String,
    },
    /// What a search for a fault points at.
    Fault {
        /// Id of the search.
        search: String,
        /// The first suspect of the case that the same cure puts right, by its id.
        suspect: String,
    },
    /// A reading beyond its limit, or another thing that is worth saying about the bike.
    Finding {
        /// What it is about.
        code: FindingCode,
        /// Where it was found, for what a bike has twice: `front`, `rear`.
        slot: Option<String>,
    },
    /// A change that was tried and is wanted.
    Change {
        /// What is changed.
        change: ChangeKind,
        /// Where: `front`, `rear`, the consumer's id.
        slot: Option<String>,
    },
}

impl Stored for FindingCode {
    const FIELDS: &'static [Field] = &[];
}

impl JobReason {
    /// Whether two reasons are put right by the same work. An item is the same one in every pack.
    pub fn same_as(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Item { item: one, .. }, Self::Item { item: other, .. }) => one == other,
            _ => self == other,
        }
    }
}
