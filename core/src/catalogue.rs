//! Every message that the core can say, listed once: what the catalogue of a language must have words for.

use crate::error::RefusedMessage;
use crate::events::{EventMessage, EventsMessage};
use crate::inspection::InspectionMessage;
use crate::message::{ArgumentKind, Declared};

/// The messages of each enum marked `#[message]`. `tests/suite/words.rs` finds one that is missing here.
pub const MESSAGES: &[&[Declared]] =
    &[SHARED, EventMessage::DECLARED, EventsMessage::DECLARED, InspectionMessage::DECLARED, RefusedMessage::DECLARED];

/// What every area says with.
const SHARED: &[Declared] = &[
    Declared { id: "as-entered", arguments: &[("text", ArgumentKind::Text)] },
    Declared { id: "joined", arguments: &[("items", ArgumentKind::List)] },
];
