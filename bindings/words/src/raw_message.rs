//! A message as it crosses the door, read from its JSON. The core declares it (`core/src/message`).

use serde::Deserialize;

/// Something to say.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct RawMessage {
    pub message_id: String,
    pub arguments: Vec<Named>,
}

/// An argument with its name.
#[derive(Clone, Debug, Deserialize)]
pub struct Named {
    pub name: String,
    pub value: Argument,
}

/// What goes into a message.
#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "kind", rename_all = "camelCase")]
pub enum Argument {
    Quantity { value: f64, unit: String },
    Count { count: i64 },
    Text { text: String },
    Message { message: RawMessage },
    Several { items: Vec<RawMessage>, style: ListStyle },
    Choice { choice: String },
    Day { day: String },
    LocalTime { day: String, minute: u32 },
    Duration { minutes: f64 },
}

/// How the parts of a list are joined.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq)]
#[serde(rename_all = "camelCase")]
pub enum ListStyle {
    And,
    Or,
    Comma,
    Sentences,
}
