//! The harness: a circuit as a graph, what it does in every switch position, and what a wrong connection looks like.
//!
//! Reading order: what a harness is made of (`model`), the circuits of small motorcycles and of this bike (`templates`), how a
//! circuit is worked out (`solver`), what goes wrong in it (`diagnosis`), what lamps and indicators do in it (`lamps`), its
//! drawing (`drawing`), and the pages (`page`).

mod diagnosis;
mod drawing;
mod lamps;
mod model;
mod page;
mod solver;
mod templates;

pub use diagnosis::{Fault, Symptom, SymptomKind, fault_places, look_id, look_spoken, symptoms, with_fault};
pub(crate) use diagnosis::{FaultMessage, Predictions, SymptomMessage};
pub use drawing::{Diagram, DiagramBox, DiagramLabel, DiagramLine, LineKind, Spot, layout};
pub(crate) use lamps::IndicatorMessage;
pub use lamps::{Indicators, PilotBehaviour, derive_indicators, indicators, pilot_behaviour};
pub(crate) use model::ModelMessage;
pub use model::{
    COLOUR_CODES, Condition, Element, Harness, NotThere, Setting, SwitchCard, SwitchPosition, WireColour, adapted,
    apply, change_id, check_colour, check_harness, every_setting,
};
pub use page::{
    CircuitCard, FaultPlace, FlashColumn, FlashCount, HarnessAnswer, HarnessAsk, LampAnswer, LampColumn, LampSide,
    LampsAsk, WayDrop, circuit_of, harness_answer, harness_sources, lamp_answer,
};
pub(crate) use page::{CircuitMessage, HarnessWorking, LampsMessage};
pub(crate) use solver::SolverMessage;
pub use solver::{
    Device, Flow, LampLook, LampState, Law, Netlist, NodeVolts, OperatingPoint, Overload, Unsolved, netlist, solve,
};
pub use templates::bike_circuit;

pub use templates::{TEMPLATES, Template, template};
