//! What the core says: a message by its id, with typed arguments. The words stand in the catalogue (`fixtures/words`), and
//! whoever shows a message renders it there: the pages, a script, a file.
//!
//! An area declares its messages as an enum marked `#[message]`; each variant is one message, its fields are the arguments.

mod argue;
mod declared;
mod field;
mod shape;

pub(crate) use argue::choices;
pub use argue::{Argue, Duration, List, Measure, camel_name};
pub use declared::{ArgumentKind, Declared};
pub use field::FieldMessage;
pub use shape::{Argument, Joint, Message, NamedArgument};
