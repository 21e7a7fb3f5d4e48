//! What a coat keeps from being done, and what paint a job still takes.

mod hold;
mod need;
mod walk;

pub use hold::{Hold, OnHold, holds_of};
pub(crate) use hold::{on_hold, together};
pub use need::{PaintNeed, paint_needs};
pub use walk::CoatsToCome;
pub(crate) use walk::{Paint, Walked, all_cured_ms, walk};
