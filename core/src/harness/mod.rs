//! The harness: a circuit as a graph, what it does in every switch position, and what a wrong connection looks like.
//!
//! Reading order: what a harness is made of (`element`, `colour`, `check`), the circuits of small motorcycles
//! (`templates`), how a circuit is worked out (`law`, `netlist`, `network`, `newton`, `solve`), what comes out (`point`), and
//! what goes wrong (`fault`, `places`, `symptom`, and `predict` for many faults at once). A bike's own circuits come from `of_bike` and `adapt`, their drawing from
//! `nets`, `layout` and `diagram`; `sheet` is the answer of the page.

mod adapt;
mod check;
mod colour;
mod derived;
mod diagram;
mod element;
mod fault;
#[cfg(test)]
mod fault_tests;
mod indicators;
mod lamp_sheet;
mod law;
mod layout;
mod netlist;
mod nets;
mod network;
mod newton;
mod of_bike;
mod pilot;
mod places;
mod point;
mod predict;
mod sheet;
mod solve;
#[cfg(test)]
mod solve_tests;
mod sources;
mod symptom;
mod templates;

pub use derived::derive_indicators;
pub use indicators::{Indicators, indicators};
pub use lamp_sheet::{FlashColumn, FlashCount, LampColumn, LampSheet, LampSide, LampsAsk, lamp_sheet};
pub use pilot::{PilotBehaviour, pilot_behaviour};

pub use adapt::{NotThere, adapted, apply, change_mark};
pub use check::check_harness;
pub use colour::{COLOUR_CODES, check_colour};
pub use diagram::{Diagram, DiagramBox, DiagramLabel, DiagramLine, LineKind, Spot};
pub use element::{Condition, Element, Harness, Setting, SwitchCard, SwitchPosition, every_setting};
pub use fault::{Fault, with_fault};
pub use law::Law;
pub use layout::layout;
pub use netlist::{Device, Netlist, netlist};
pub use of_bike::bike_circuit;
pub use places::fault_places;
pub use point::{Flow, LampLook, LampState, NodeVolts, OperatingPoint, Overload};
pub(crate) use predict::Predictions;
pub use sheet::{CircuitCard, FaultPlace, HarnessAsk, HarnessSheet, WayDrop, circuit_of, harness_sheet};
pub use solve::{Unsolved, solve};
pub use sources::harness_sources;
pub use symptom::{Symptom, SymptomKind, look_spoken, symptoms};
pub use templates::{TEMPLATES, Template, template};
