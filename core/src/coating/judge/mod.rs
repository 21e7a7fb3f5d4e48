//! What a coat keeps from being done, and what paint a job still takes.

mod hold;
mod need;

pub use hold::{Hold, OnHold, holds_of};
pub(crate) use hold::{on_hold, together};
pub use need::{PaintNeed, paint_needs};
