//! The declaration of a message, for whoever checks the catalogue.

/// What kind of argument stands in a place of a message.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ArgumentKind {
    /// A quantity with its unit.
    Quantity,
    /// How many: chooses the plural.
    Count,
    /// A text that no language changes.
    Text,
    /// Another message.
    Message,
    /// Several messages.
    List,
    /// One of a fixed set: chooses a form, and is not shown itself.
    Choice,
    /// A day.
    Day,
    /// A day with the time of day.
    LocalTime,
    /// A length of time.
    Duration,
}

/// A message as it is declared.
#[derive(Clone, Copy, Debug)]
pub struct Declared {
    /// Id in the catalogue.
    pub id: &'static str,
    /// Its arguments, each with its kind and whether it may be absent.
    pub arguments: &'static [(&'static str, ArgumentKind)],
}
