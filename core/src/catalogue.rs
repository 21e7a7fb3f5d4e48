//! Every message that the core can say, listed once: what the catalogue of a language must have words for.

use crate::brakes::message::{BleedingMessage, BrakesFinding, BrakesMessage, BrakesRefused, BrakesSource};
use crate::error::RefusedMessage;
use crate::events::{EventMessage, EventsMessage};
use crate::gearing::message::{
    ChainMeshMessage, ChainWearMessage, GearingFinding, GearingMessage, GearingRefused, GearingSource,
    SprocketChoiceMessage, ThrustMessage,
};
use crate::inspection::InspectionMessage;
use crate::message::{ArgumentKind, Declared};
use crate::ripple::message::{RippleFollows, RippleMessage};
use crate::tyres::message::{TyreCheckMessage, TyresFinding, TyresMessage, TyresRefused, TyresSource};

/// The messages of each enum marked `#[message]`. `tests/suite/words.rs` finds one that is missing here.
pub const MESSAGES: &[&[Declared]] = &[
    SHARED,
    BleedingMessage::DECLARED,
    BrakesFinding::DECLARED,
    BrakesMessage::DECLARED,
    BrakesRefused::DECLARED,
    BrakesSource::DECLARED,
    ChainMeshMessage::DECLARED,
    ChainWearMessage::DECLARED,
    EventMessage::DECLARED,
    EventsMessage::DECLARED,
    GearingFinding::DECLARED,
    GearingMessage::DECLARED,
    GearingRefused::DECLARED,
    GearingSource::DECLARED,
    InspectionMessage::DECLARED,
    RefusedMessage::DECLARED,
    RippleFollows::DECLARED,
    RippleMessage::DECLARED,
    SprocketChoiceMessage::DECLARED,
    ThrustMessage::DECLARED,
    TyreCheckMessage::DECLARED,
    TyresFinding::DECLARED,
    TyresMessage::DECLARED,
    TyresRefused::DECLARED,
    TyresSource::DECLARED,
];

/// What every area says with.
const SHARED: &[Declared] = &[
    Declared { id: "as-entered", arguments: &[("text", ArgumentKind::Text)] },
    Declared { id: "joined", arguments: &[("items", ArgumentKind::List)] },
];
