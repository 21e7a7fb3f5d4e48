//! Every message that the core can say, listed once: what the catalogue of a language must have words for.

use crate::coating::{CoatingMessage, CureMessage, ProcessMessage};
use crate::error::RefusedMessage;
use crate::events::{EventMessage, EventsMessage};
use crate::fasteners::{ScrewMessage, ThreadMessage};
use crate::fluids::{FillMessage, MixMessage};
use crate::inspection::{InspectionMessage, PackMessage};
use crate::message::{ArgumentKind, Declared};

/// The messages of each enum marked `#[message]`. `tests/suite/words.rs` finds one that is missing here.
pub const MESSAGES: &[&[Declared]] = &[
    SHARED,
    CoatingMessage::DECLARED,
    CureMessage::DECLARED,
    EventMessage::DECLARED,
    EventsMessage::DECLARED,
    FillMessage::DECLARED,
    InspectionMessage::DECLARED,
    MixMessage::DECLARED,
    PackMessage::DECLARED,
    ProcessMessage::DECLARED,
    RefusedMessage::DECLARED,
    ScrewMessage::DECLARED,
    ThreadMessage::DECLARED,
];

/// What every area says with.
const SHARED: &[Declared] = &[
    Declared { id: "as-entered", arguments: &[("text", ArgumentKind::Text)] },
    Declared { id: "joined", arguments: &[("items", ArgumentKind::List)] },
];
