//! What a harness is made of, which one is sound, and how the owner adapts it.

mod adapt;
mod check;
mod colour;
mod element;
mod message;

pub(crate) use adapt::not_there;
pub use adapt::{NotThere, adapted, apply, change_id};
pub use check::check_harness;
pub(crate) use check::{refuse_unsound, refuse_unsound_element};
pub use colour::{COLOUR_CODES, check_colour};
pub use element::{Condition, Element, Harness, Setting, SwitchCard, SwitchPosition, every_setting};
pub(crate) use message::ModelMessage;
pub use message::WireColour;
