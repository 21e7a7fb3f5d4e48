//! The types that a field of a message may have: quantities, counts, names, lengths of time, other messages.

use super::{Argument, ArgumentKind, ListStyle, Message};
use crate::units::Unit;

/// A number with its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Value.
    pub value: f64,
    /// Unit.
    pub unit: Unit,
}

impl Unit {
    /// A number in this unit.
    pub fn of(self, value: impl Into<f64>) -> Measure {
        Measure { value: value.into(), unit: self }
    }
}

/// A length of time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Duration {
    /// Minutes.
    pub minutes: f64,
}

impl Duration {
    /// From hours.
    pub fn hours(hours: f64) -> Self {
        Self { minutes: hours * 60.0 }
    }

    /// From milliseconds.
    pub fn ms(ms: i64) -> Self {
        Self { minutes: ms as f64 / 60_000.0 }
    }
}

/// Several messages, and how they are joined.
#[derive(Clone, Debug, PartialEq)]
pub struct List(pub ListStyle, pub Vec<Message>);

/// A type that a field of a message may have.
pub trait IntoArgument {
    /// What kind of argument it is.
    const KIND: ArgumentKind;

    /// The argument.
    fn argument(self) -> Argument;
}

/// One line a type: the kind, and how its value becomes an argument.
macro_rules! arguments {
    ($($type:ty => $kind:ident: $value:ident -> $argument:expr;)*) => {$(
        impl IntoArgument for $type {
            const KIND: ArgumentKind = ArgumentKind::$kind;

            fn argument(self) -> Argument {
                let $value = self;
                $argument
            }
        }
    )*};
}

arguments! {
    Measure => Quantity: measure -> Argument::Quantity { value: measure.value, unit: measure.unit };
    u32 => Count: count -> Argument::Count { count: i64::from(count) };
    usize => Count: count -> Argument::Count { count: i64::try_from(count).unwrap_or(i64::MAX) };
    i64 => Count: count -> Argument::Count { count };
    String => Text: text -> Argument::Text { text };
    &str => Text: text -> Argument::Text { text: text.to_owned() };
    Message => Message: message -> Argument::Message { message };
    List => List: list -> Argument::Several { items: list.1, style: list.0 };
    bool => Choice: yes -> Argument::Choice { choice: if yes { "yes" } else { "no" }.into() };
    Duration => Duration: long -> Argument::Duration { minutes: long.minutes };
}

/// Types of the core that choose a form of a message: `choices! { Stage; End; }`.
macro_rules! choices {
    ($($type:ty;)*) => {$(
        impl $crate::message::IntoArgument for $type {
            const KIND: $crate::message::ArgumentKind = $crate::message::ArgumentKind::Choice;

            fn argument(self) -> $crate::message::Argument {
                $crate::message::Argument::Choice { choice: self.wire_name().into() }
            }
        }
    )*};
}
pub(crate) use choices;
