//! Every message that the core can say, listed once: what the catalogue of a language must have words for.

use crate::error::RefusedMessage;
use crate::inspection::InspectionMessage;
use crate::message::{ArgumentKind, Declared};
use crate::plan::{
    PlanAskedMessage, PlanDateMessage, PlanFindingMessage, PlanNeverFitsMessage, PlanOrderMessage, PlanRefusedMessage,
    PlanWaitMessage,
};
use crate::today::TodayMessage;

/// The messages of each enum marked `#[message]`. `tests/suite/words.rs` finds one that is missing here.
pub const MESSAGES: &[&[Declared]] = &[
    SHARED,
    InspectionMessage::DECLARED,
    PlanAskedMessage::DECLARED,
    PlanDateMessage::DECLARED,
    PlanFindingMessage::DECLARED,
    PlanNeverFitsMessage::DECLARED,
    PlanOrderMessage::DECLARED,
    PlanRefusedMessage::DECLARED,
    PlanWaitMessage::DECLARED,
    RefusedMessage::DECLARED,
    TodayMessage::DECLARED,
];

/// What every area says with.
const SHARED: &[Declared] = &[
    Declared { id: "as-entered", arguments: &[("text", ArgumentKind::Text)] },
    Declared { id: "joined", arguments: &[("items", ArgumentKind::List)] },
];
