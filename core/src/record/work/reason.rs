//! What a job puts right.

use layshaft_wire::wire;

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
