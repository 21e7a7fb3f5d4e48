//! Every message that the core can say, listed once: what the catalogue of a language must have words for.

use crate::electrical::{
    ChargingMessage, ChargingPageMessage, ElectricalMessage, ElectricalSource, FuseColour, LoadMessage,
    LoadPageMessage, WireMessage,
};
use crate::error::RefusedMessage;
use crate::events::{EventMessage, EventsMessage};
use crate::faults::{CircuitCheckMessage, FaultsMessage, FaultsSource, ReachMessage};
use crate::harness::{
    CircuitMessage, FaultMessage, IndicatorMessage, LampsMessage, ModelMessage, SolverMessage, SymptomMessage,
    WireColour,
};
use crate::inspection::InspectionMessage;
use crate::message::{ArgumentKind, Declared};

/// The messages of each enum marked `#[message]`. `tests/suite/words.rs` finds one that is missing here.
pub const MESSAGES: &[&[Declared]] = &[
    SHARED,
    ChargingMessage::DECLARED,
    ChargingPageMessage::DECLARED,
    CircuitCheckMessage::DECLARED,
    CircuitMessage::DECLARED,
    ElectricalMessage::DECLARED,
    ElectricalSource::DECLARED,
    EventMessage::DECLARED,
    EventsMessage::DECLARED,
    FaultMessage::DECLARED,
    FaultsMessage::DECLARED,
    FaultsSource::DECLARED,
    FuseColour::DECLARED,
    IndicatorMessage::DECLARED,
    InspectionMessage::DECLARED,
    LampsMessage::DECLARED,
    LoadMessage::DECLARED,
    LoadPageMessage::DECLARED,
    ModelMessage::DECLARED,
    ReachMessage::DECLARED,
    RefusedMessage::DECLARED,
    SolverMessage::DECLARED,
    SymptomMessage::DECLARED,
    WireColour::DECLARED,
    WireMessage::DECLARED,
];

/// What every area says with.
const SHARED: &[Declared] = &[
    Declared { id: "as-entered", arguments: &[("text", ArgumentKind::Text)] },
    Declared { id: "joined", arguments: &[("items", ArgumentKind::List)] },
];
