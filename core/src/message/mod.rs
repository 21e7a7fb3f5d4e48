//! What the core says: a message by its id, with typed arguments. The words stand in the catalogue (`fixtures/words`), and
//! whoever shows a message renders it there: the pages, a script, a file.
//!
//! An area declares its messages as an enum marked `#[message]`; each variant is one message, its fields are the arguments.

mod data;
mod declared;
mod field;
mod identifier;
mod into_argument;

pub use data::{Argument, ListStyle, Message, NamedArgument};
pub use declared::{ArgumentKind, Declared};
pub use field::FieldMessage;
pub use identifier::Identifier;
pub(crate) use into_argument::choices;
pub use into_argument::{Duration, IntoArgument, List, Measure};
