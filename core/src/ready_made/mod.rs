//! What the program brings along: ready-made jobs and typical product sheets, both to be taken over and changed.

mod jobs;
mod message;
mod products;

pub use jobs::{ReadyMade, WorkKind, last_steps, ready_made, ready_made_job};
pub(crate) use message::ReadyMadeSource;
pub use products::{products, source_of, typical_product};
