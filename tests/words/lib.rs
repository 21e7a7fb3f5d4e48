//! What the core says, held against the words that the catalogue has for it. The tests demand that nothing is found; the command
//! `words` prints what is.

mod catalogue;
mod declared;
mod places;

pub use catalogue::{Used, english};
pub use declared::{declared, not_of_the_core, unknown, unused, without_words};
pub use places::places;
