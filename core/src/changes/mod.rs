//! Facts that are never lost: change records, their hybrid clock, the fold to the present state, and the merge.
//!
//! The present state is the fold of all changes; nothing else is stored as truth. Merging two devices is the union of
//! their changes, so it is commutative, associative and idempotent by construction.

mod change;
mod fold;
mod record;
mod stamp;
mod stored;

pub use change::{Change, Key};
pub use fold::{Entry, Fields, GONE, History, Ledger, Rival};
pub use record::{Edit, Record, edits, read};
pub(crate) use stamp::ChangesMessage;
pub use stamp::{Device, Stamp};
pub use stored::{Field, RecordKind, Stored};
