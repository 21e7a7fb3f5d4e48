//! What a harness does at its operating point: voltages, currents, lamps, overloaded wires, blown fuses.

use layshaft_wire::wire;

use super::message::SolverMessage;
use super::settled::Settled;
use crate::electrical::{BLOWS_FROM, BURNS_OUT, CurrentList, ampacity};
use crate::harness::model::Element;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::Component;
use crate::units::Unit;

/// Light of a filament goes with this power of its voltage (handbook value, second hand).
const LIGHT: f64 = 3.4;

/// Voltage of a point.
#[wire]
pub struct NodeVolts {
    /// The point.
    pub node: String,
    /// Voltage against earth, volts.
    pub volts: f64,
}

/// What flows through an element.
#[wire]
pub struct Flow {
    /// Id of the element.
    pub element: String,
    /// Voltage from its first end to its last, volts.
    pub volts: f64,
    /// Current from its first end to its last, amperes.
    pub amperes: f64,
    /// Power it takes, watts; negative when it gives.
    pub watts: f64,
}

/// What a lamp, horn or starter looks or sounds like. The limits are our own judgement.
#[wire]
pub enum LampLook {
    /// Dark, silent, still.
    Off,
    /// A glow that is seen in the dark only; a horn that clicks.
    Glow,
    /// Plainly too weak.
    Dim,
    /// As it should be.
    Full,
    /// A filament far above its voltage: it does not last.
    TooBright,
}

/// The state of a lamp, horn, consumer or starter.
#[wire]
pub struct LampState {
    /// Id of the element.
    pub element: String,
    /// In words.
    pub label: String,
    /// Light (of a lamp) or voltage (of anything else) against the rated one, 1 is as rated.
    pub share: f64,
    /// What that looks like.
    pub look: LampLook,
}

/// A wire that carries more than its list of currents allows.
#[wire]
pub struct Overload {
    /// Id of the wire.
    pub element: String,
    /// Current, amperes.
    pub amperes: f64,
    /// What it may carry by the conservative list, amperes.
    pub may_carry_amperes: f64,
}

/// Everything at an operating point.
#[wire]
pub struct OperatingPoint {
    /// Voltages of the points.
    pub nodes: Vec<NodeVolts>,
    /// What flows through the elements.
    pub flows: Vec<Flow>,
    /// Lamps, horns, consumers and starters.
    pub lamps: Vec<LampState>,
    /// Wires that carry too much.
    pub overloads: Vec<Overload>,
    /// Fuses that have blown.
    pub blown: Vec<String>,
    /// Coils that pull.
    pub pulled: Vec<String>,
    /// Coils that pull in and let go again and again; values are those of the moment in which they pull.
    pub chattering: Vec<String>,
    /// Flashers with too little load to flash.
    pub not_flashing: Vec<String>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
}

impl OperatingPoint {
    /// Voltage from one point to another, volts; none when there is no such point.
    pub fn between(&self, one: &str, other: &str) -> Option<f64> {
        let at = |node: &str| self.nodes.iter().find(|at| at.node == node).map(|at| at.volts);
        Some(at(one)? - at(other)?)
    }

    /// What flows through an element.
    pub fn flow(&self, element: &str) -> Option<&Flow> {
        self.flows.iter().find(|flow| flow.element == element)
    }

    /// What a lamp or other consumer looks like.
    pub fn look(&self, element: &str) -> Option<LampLook> {
        self.lamps.iter().find(|lamp| lamp.element == element).map(|lamp| lamp.look)
    }
}

pub(crate) fn operating_point(settled: &Settled<'_>) -> OperatingPoint {
    let harness = settled.circuit.harness;
    let nodes = harness.nodes().into_iter();
    let nodes = nodes.map(|node| NodeVolts { node: node.to_owned(), volts: settled.at(node) }).collect();
    let elements = || harness.elements.iter().enumerate();
    let flows: Vec<Flow> = elements().map(|(at, element)| flow(settled, at, element)).collect();
    let lamp = |(at, element): (usize, &Element)| {
        let (share, look) = lamp_look(settled, at)?;
        Some(LampState { element: element.id.clone(), label: element.label.clone(), share, look })
    };
    let lamps = elements().filter_map(lamp).collect();
    let overloads: Vec<Overload> = harness.elements.iter().zip(&flows).filter_map(overload).collect();
    let blown: Vec<String> = settled.states.blown.iter().cloned().collect();
    let chattering: Vec<String> = settled.chattering.iter().cloned().collect();
    let not_flashing: Vec<String> = harness.elements.iter().zip(&flows).filter_map(not_flashing).collect();
    let mut point = OperatingPoint {
        nodes,
        flows,
        lamps,
        overloads,
        blown,
        pulled: settled.states.pulled.iter().cloned().collect(),
        chattering,
        not_flashing,
        findings: Vec::new(),
    };
    point.findings = findings(settled, &point);
    point
}

fn flow(settled: &Settled<'_>, at: usize, element: &Element) -> Flow {
    let volts = settled.at(&element.from) - settled.at(&element.to);
    let amperes = settled.through(at).map_or(0.0, |(_, amperes)| amperes);
    Flow { element: element.id.clone(), volts, amperes, watts: volts * amperes }
}

/// What the element with this number looks or sounds like, and its share of what it should do; none when it is no consumer.
pub(crate) fn lamp_look(settled: &Settled<'_>, at: usize) -> Option<(f64, LampLook)> {
    let element = settled.circuit.elements.get(at)?;
    let (volts, amperes) = settled.through(at).unwrap_or_default();
    Some(match element.component {
        Component::Filament { test_volts, .. } => {
            let over = volts.abs() / test_volts;
            let share = over.powf(LIGHT);
            (share, if over > BURNS_OUT { LampLook::TooBright } else { look(share, [0.002, 0.05, 0.45]) })
        }
        Component::LedDriven { watts, rated_volts } => {
            let share = amperes.max(0.0) * rated_volts / watts;
            (share, look(share, [0.002, 0.05, 0.45]))
        }
        // Twenty milliamperes is what small LEDs are made for.
        Component::LedSeries { .. } => (amperes.max(0.0) / 0.02, look(amperes.max(0.0) / 0.02, [0.002, 0.05, 0.25])),
        Component::Horn { rated_volts, .. } | Component::Load { rated_volts, .. } => {
            let share = volts.abs() / rated_volts;
            (share, look(share, [0.1, 0.5, 0.8]))
        }
        Component::Starter { rated_volts, ref crank, ref turns, .. } => {
            let share = volts.abs() / rated_volts;
            let turning = settled.circuit.harness.position(crank, settled.setting) == Some(turns.as_str());
            (
                share,
                if turning { look(share, [0.1, 0.5, 0.85]) } else { look(share, [0.1, f64::INFINITY, f64::INFINITY]) },
            )
        }
        _ => return None,
    })
}

fn look(share: f64, [glow, dim, full]: [f64; 3]) -> LampLook {
    if share >= full {
        LampLook::Full
    } else if share >= dim {
        LampLook::Dim
    } else if share >= glow {
        LampLook::Glow
    } else {
        LampLook::Off
    }
}

/// Starter cables carry their current for seconds; no list of continuous currents applies to them.
fn overload((element, flow): (&Element, &Flow)) -> Option<Overload> {
    let Component::Wire { section_mm2, .. } = element.component else { return None };
    let may_carry_amperes = ampacity(CurrentList::Conservative, section_mm2)?;
    let amperes = flow.amperes.abs();
    (amperes > may_carry_amperes).then(|| Overload { element: element.id.clone(), amperes, may_carry_amperes })
}

fn not_flashing((element, flow): (&Element, &Flow)) -> Option<String> {
    let Component::Flasher { least_amperes: Some(least), .. } = element.component else { return None };
    let amperes = flow.amperes.abs();
    (amperes > 0.005 && amperes < least).then(|| element.id.clone())
}

fn findings(settled: &Settled<'_>, point: &OperatingPoint) -> Vec<Finding> {
    let label = |id: &str| settled.circuit.harness.element(id).map_or(id, |element| element.label.as_str()).to_owned();
    let mut findings = Vec::new();
    for fuse in &point.blown {
        let text = SolverMessage::FuseBlows { fuse: label(fuse), times: Unit::None.of(BLOWS_FROM) };
        findings.push(Finding::new(FindingCode::FuseBlows, Weight::Stopper, text));
    }
    for wire in &point.overloads {
        let text = SolverMessage::WireOverloaded {
            wire: label(&wire.element),
            carries: Unit::Ampere.of(wire.amperes),
            allowed: Unit::Ampere.of(wire.may_carry_amperes),
        };
        findings.push(Finding::new(FindingCode::WireOverloaded, Weight::Care, text));
    }
    for coil in &point.chattering {
        let text = SolverMessage::RelayChatters { relay: label(coil) };
        findings.push(Finding::new(FindingCode::RelayChatters, Weight::Care, text));
    }
    for flasher in &point.not_flashing {
        let text = SolverMessage::FlasherTooLittleLoad { flasher: label(flasher) };
        findings.push(Finding::new(FindingCode::FlasherTooLittleLoad, Weight::Care, text));
    }
    findings
}
