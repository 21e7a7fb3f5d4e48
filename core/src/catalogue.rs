//! Every message that the core can say, listed once: what the catalogue of a language must have words for.

use crate::bounds;
use crate::brakes::message::{
    BleedingMessage, BrakesFinding, BrakesMessage, BrakesRefused, BrakesSource, BrakesWorking,
};
use crate::changes::ChangesMessage;
use crate::coating::{CoatingMessage, CoatingWorking, CureMessage, ProcessMessage};
use crate::content::ContentMessage;
use crate::electrical::{
    ChargingMessage, ChargingPageMessage, ElectricalMessage, ElectricalSource, ElectricalWorking, FuseColour,
    LoadMessage, LoadPageMessage, WireMessage,
};
use crate::error::RefusedMessage;
use crate::events::{EventMessage, EventsMessage};
use crate::fasteners::{FastenersWorking, ScrewMessage, ThreadMessage};
use crate::faults::{CircuitCheckMessage, FaultsMessage, FaultsNotice, FaultsSource, ReachMessage};
use crate::fluids::{FillMessage, FluidsWorking, MixMessage};
use crate::gearing::message::{
    ChainMeshMessage, ChainWearMessage, GearingFinding, GearingMessage, GearingRefused, GearingSource, GearingWorking,
    SprocketChoiceMessage, SprocketChoiceWorking, ThrustMessage, ThrustWorking,
};
use crate::handbook::handbook;
use crate::harness::{
    CircuitMessage, FaultMessage, HarnessWorking, IndicatorMessage, LampsMessage, ModelMessage, SolverMessage,
    SymptomMessage, WireColour,
};
use crate::inspection::{InspectionMessage, PackMessage};
use crate::message::{ArgumentKind, Declared, FieldMessage};
use crate::plan::{
    PlanAskedMessage, PlanDateMessage, PlanFindingMessage, PlanNeverFitsMessage, PlanOrderMessage, PlanRefusedMessage,
    PlanWaitMessage,
};
use crate::quantity::FormulaSource;
use crate::ready_made::{KindMessage, ReadyMadeFit, ReadyMadeSource, Remedied, WeekMessage};
use crate::record::LampCap;
use crate::record::{JobMessage, PaintMessage, RecordMessage, SidewallMessage, SpecMessage};
use crate::ripple::message::{RippleChange, RippleFollows, RippleMessage};
use crate::time::TimeMessage;
use crate::today::TodayMessage;
use crate::tyres::message::{TyreCheckMessage, TyresFinding, TyresMessage, TyresRefused, TyresSource, TyresWorking};

/// The messages of each enum marked `#[message]`. `tests/suite/words.rs` finds one that is missing here.
pub const MESSAGES: &[&[Declared]] = &[
    SHARED,
    BleedingMessage::DECLARED,
    BrakesFinding::DECLARED,
    BrakesMessage::DECLARED,
    BrakesRefused::DECLARED,
    BrakesSource::DECLARED,
    BrakesWorking::DECLARED,
    ChainMeshMessage::DECLARED,
    ChainWearMessage::DECLARED,
    ChangesMessage::DECLARED,
    ChargingMessage::DECLARED,
    ChargingPageMessage::DECLARED,
    CircuitCheckMessage::DECLARED,
    CircuitMessage::DECLARED,
    CoatingMessage::DECLARED,
    CoatingWorking::DECLARED,
    ContentMessage::DECLARED,
    CureMessage::DECLARED,
    ElectricalMessage::DECLARED,
    ElectricalSource::DECLARED,
    ElectricalWorking::DECLARED,
    EventMessage::DECLARED,
    EventsMessage::DECLARED,
    FastenersWorking::DECLARED,
    FaultMessage::DECLARED,
    FaultsMessage::DECLARED,
    FaultsNotice::DECLARED,
    FaultsSource::DECLARED,
    FieldMessage::DECLARED,
    FillMessage::DECLARED,
    FluidsWorking::DECLARED,
    FormulaSource::DECLARED,
    FuseColour::DECLARED,
    GearingFinding::DECLARED,
    GearingMessage::DECLARED,
    GearingRefused::DECLARED,
    GearingSource::DECLARED,
    GearingWorking::DECLARED,
    HarnessWorking::DECLARED,
    IndicatorMessage::DECLARED,
    InspectionMessage::DECLARED,
    JobMessage::DECLARED,
    KindMessage::DECLARED,
    LampsMessage::DECLARED,
    LoadMessage::DECLARED,
    LoadPageMessage::DECLARED,
    MixMessage::DECLARED,
    ModelMessage::DECLARED,
    PackMessage::DECLARED,
    PaintMessage::DECLARED,
    PlanAskedMessage::DECLARED,
    PlanDateMessage::DECLARED,
    PlanFindingMessage::DECLARED,
    PlanNeverFitsMessage::DECLARED,
    PlanOrderMessage::DECLARED,
    PlanRefusedMessage::DECLARED,
    PlanWaitMessage::DECLARED,
    ProcessMessage::DECLARED,
    ReachMessage::DECLARED,
    ReadyMadeFit::DECLARED,
    ReadyMadeSource::DECLARED,
    Remedied::DECLARED,
    RecordMessage::DECLARED,
    RefusedMessage::DECLARED,
    RippleChange::DECLARED,
    RippleFollows::DECLARED,
    RippleMessage::DECLARED,
    ScrewMessage::DECLARED,
    SidewallMessage::DECLARED,
    SolverMessage::DECLARED,
    SpecMessage::DECLARED,
    SprocketChoiceMessage::DECLARED,
    SprocketChoiceWorking::DECLARED,
    SymptomMessage::DECLARED,
    ThreadMessage::DECLARED,
    ThrustMessage::DECLARED,
    ThrustWorking::DECLARED,
    TimeMessage::DECLARED,
    TodayMessage::DECLARED,
    TyreCheckMessage::DECLARED,
    TyresFinding::DECLARED,
    TyresMessage::DECLARED,
    TyresRefused::DECLARED,
    TyresSource::DECLARED,
    TyresWorking::DECLARED,
    WeekMessage::DECLARED,
    WireColour::DECLARED,
    WireMessage::DECLARED,
];

/// What every area says with.
const SHARED: &[Declared] = &[
    Declared { id: "as-entered", arguments: &[("text", ArgumentKind::Text)] },
    Declared { id: "joined", arguments: &[("items", ArgumentKind::List)] },
];

/// The ids that are made of other names: of each formula what it works out, its inputs, its results and where it holds; the
/// label of each range, the looks of each lamp cap.
pub fn made_ids() -> Vec<String> {
    let cards = handbook().into_iter();
    let said = cards.flat_map(|card| {
        let inputs = card.inputs.into_iter().map(|input| input.label);
        let outputs = card.outputs.into_iter().map(|output| output.label);
        [card.title, card.range].into_iter().chain(inputs).chain(outputs)
    });
    let labels = bounds::ALL.iter().map(|bound| bound.card().label);
    let caps = LampCap::ALL.iter().map(|cap| cap.looks());
    said.chain(labels).chain(caps).map(|message| message.message_id.into()).collect()
}
