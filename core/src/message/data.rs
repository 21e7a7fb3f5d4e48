//! A message and what goes into it, as they cross the door.

use layshaft_wire::wire;
use serde::{Deserialize, Serialize};

use super::Identifier;
use crate::units::Unit;

/// Something to say: which message, and what goes into it.
///
/// Crosses the door like a type with `#[wire]`; only that the pages, whose desk puts every answer into words, know it as a text.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "ts", derive(ts_rs::TS), ts(export_to = "door.ts", type = "string"))]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Message {
    /// Id in the catalogue: `chain-too-slack`.
    #[serde(rename = "messageId")]
    pub message_id: Identifier,
    /// What goes into it, in the order of the declaration.
    pub arguments: Vec<NamedArgument>,
}

/// Id of the message that is one text as it was entered, or a name that no language changes.
const AS_ENTERED: &str = "as-entered";

impl Message {
    /// A message from its id and arguments.
    pub fn new(id: impl Into<Identifier>, arguments: Vec<NamedArgument>) -> Self {
        Self { message_id: id.into(), arguments }
    }

    /// A text that stays as it is: what the owner entered, the name of a standard.
    pub fn as_entered(text: impl Into<String>) -> Self {
        Self::new(AS_ENTERED, vec![Argument::Text { text: text.into() }.named("text")])
    }

    /// The text, where the message is one text as it was entered.
    pub fn entered(&self) -> Option<&str> {
        match (self.message_id.as_str(), self.arguments.as_slice()) {
            (AS_ENTERED, [NamedArgument { value: Argument::Text { text }, .. }]) => Some(text),
            _ => None,
        }
    }

    /// Several messages as one.
    pub fn joined(style: ListStyle, mut items: Vec<Message>) -> Self {
        if items.len() == 1 {
            return items.remove(0);
        }
        Self::new("joined", vec![Argument::Several { items, style }.named("items")])
    }
}

#[cfg(test)]
impl Message {
    /// The message as an English reader sees it, with ordinary spaces.
    pub(crate) fn english(&self) -> String {
        layshaft_words::say(self).replace(['\u{a0}', '\u{202f}'], " ")
    }
}

/// A test compares with what an English reader sees.
#[cfg(test)]
impl PartialEq<&str> for Message {
    fn eq(&self, text: &&str) -> bool {
        self.english() == *text
    }
}

#[cfg(test)]
impl PartialEq<String> for Message {
    fn eq(&self, text: &String) -> bool {
        self.english() == *text
    }
}

/// For logs and tests, in no language: the id and what goes into it.
impl std::fmt::Display for Message {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if let Some(text) = self.entered() {
            return f.write_str(text);
        }
        f.write_str(self.message_id.as_str())?;
        let mut open = " (";
        for NamedArgument { name, value } in &self.arguments {
            write!(f, "{open}{}: {value}", name.as_str())?;
            open = ", ";
        }
        if open == ", " { f.write_str(")") } else { Ok(()) }
    }
}

/// How the parts of a list are joined.
#[wire]
pub enum ListStyle {
    /// The last two by “and”.
    And,
    /// The last two by “or”.
    Or,
    /// By commas alone.
    Comma,
    /// One sentence after the other.
    Sentences,
}

/// What goes into a place of a message.
#[wire]
pub enum Argument {
    /// A quantity.
    Quantity {
        /// Value.
        value: f64,
        /// Unit.
        unit: Unit,
    },
    /// How many. Chooses the plural.
    Count {
        /// The number.
        count: i64,
    },
    /// A text that no language changes: what was entered, a name, a size as it is stamped.
    Text {
        /// The text.
        text: String,
    },
    /// Another message inside this one.
    Message {
        /// The message.
        message: Message,
    },
    /// Several messages.
    Several {
        /// The messages.
        items: Vec<Message>,
        /// How they are joined.
        style: ListStyle,
    },
    /// One of a fixed set. Chooses a form, and is not shown itself.
    Choice {
        /// Which one, in camelCase.
        choice: Identifier,
    },
    /// A local day.
    Day {
        /// `YYYY-MM-DD`.
        day: String,
    },
    /// A local day with the time of day.
    LocalTime {
        /// `YYYY-MM-DD`.
        day: String,
        /// Minutes after midnight.
        minute: u32,
    },
    /// A length of time.
    Duration {
        /// Minutes.
        minutes: f64,
    },
}

/// An argument with its name.
#[wire]
pub struct NamedArgument {
    /// Name in the message.
    pub name: Identifier,
    /// What goes there.
    pub value: Argument,
}

impl Argument {
    /// The argument with its name.
    pub fn named(self, name: &'static str) -> NamedArgument {
        NamedArgument { name: name.into(), value: self }
    }
}

/// For logs and tests, in no language.
impl std::fmt::Display for Argument {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Argument::Quantity { value, unit } => write!(f, "{value} {}", unit.symbol()),
            Argument::Count { count } => write!(f, "{count}"),
            Argument::Text { text } | Argument::Day { day: text } => f.write_str(text),
            Argument::Choice { choice } => f.write_str(choice.as_str()),
            Argument::Message { message } => write!(f, "{message}"),
            Argument::Several { items, .. } => {
                let items: Vec<String> = items.iter().map(ToString::to_string).collect();
                f.write_str(&items.join("; "))
            }
            Argument::LocalTime { day, minute } => write!(f, "{day} {:02}:{:02}", minute / 60, minute % 60),
            Argument::Duration { minutes } => write!(f, "{minutes} min"),
        }
    }
}
