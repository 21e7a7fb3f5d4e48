//! The bare network behind a harness in one setting: numbered points and laws.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use super::law::Law;
use crate::electrical::{Conductor, wire_resistance};
use crate::harness::model::{Condition, Element, Harness, Setting};
use crate::record::Component;

/// Thermal voltage at 27 °C, volts: k T / q.
pub(crate) const THERMAL: f64 = 8.617_333e-5 * 300.15;
/// Saturation current of one LED, amperes, its emission coefficient and its own resistance, ohms: a textbook model, our
/// choice of numbers.
const LED: (f64, f64, f64) = (1e-18, 2.0, 5.0);
/// Shares of its rated voltage at which an LED driver starts and is full: our assumption.
const DRIVER_START: f64 = 0.5;
const DRIVER_FULL: f64 = 0.75;
/// Least resistance in series with a junction or a coil, ohms.
const LEAST_OHMS: f64 = 1e-4;

/// One law between two points.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Device {
    /// Id of the element it comes from.
    pub element: String,
    /// Number of the point it begins at; none is earth.
    pub from: Option<usize>,
    /// Number of the point it ends at; none is earth.
    pub to: Option<usize>,
    /// Its law.
    pub law: Law,
}

/// What an element is in a state: a law between its ends, or none where it passes nothing.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Branch {
    pub(crate) from: Option<usize>,
    pub(crate) to: Option<usize>,
    pub(crate) law: Option<Law>,
}

/// A harness with its points numbered, and with some of its elements exchanged or added where a fault is tried.
#[derive(Clone)]
pub(crate) struct Circuit<'a> {
    pub(crate) harness: &'a Harness,
    pub(crate) elements: Vec<&'a Element>,
    /// Names of the points that are not earth, by number.
    pub(crate) points: Vec<&'a str>,
    numbers: BTreeMap<&'a str, usize>,
}

/// The bare network, as an outside circuit program wants it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Netlist {
    /// Names of the points, by number.
    pub points: Vec<String>,
    /// Conductance of every point to earth, siemens.
    pub leak_siemens: f64,
    /// The laws.
    pub devices: Vec<Device>,
}

/// What the coils and fuses are doing.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct States {
    /// Coils that pull.
    pub(crate) pulled: BTreeSet<String>,
    /// Fuses that have blown.
    pub(crate) blown: BTreeSet<String>,
}

/// The network of a harness in a setting with all relays at rest and all fuses sound. An element that passes nothing in this
/// state has no device.
pub fn netlist(harness: &Harness, setting: &Setting) -> Netlist {
    let circuit = Circuit::of(harness);
    let branches = circuit.branches(setting, &States::default());
    let points = circuit.points.iter().map(|point| (*point).to_owned()).chain(circuit.joints());
    let names = circuit.elements.iter().map(|element| element.id.clone()).chain(std::iter::repeat(String::new()));
    let device = |(element, Branch { from, to, law }): (String, Branch)| Some(Device { element, from, to, law: law? });
    Netlist { points: points.collect(), leak_siemens: LEAK, devices: names.zip(branches).filter_map(device).collect() }
}

impl<'a> Circuit<'a> {
    pub(crate) fn of(harness: &'a Harness) -> Self {
        let points: Vec<&str> = harness.nodes().into_iter().filter(|node| *node != harness.earth).collect();
        let numbers = points.iter().copied().zip(0..).collect();
        Self { harness, elements: harness.elements.iter().collect(), points, numbers }
    }

    /// Number of a point; none is earth.
    pub(crate) fn number(&self, node: &str) -> Option<usize> {
        self.numbers.get(node).copied()
    }

    /// The branch of each element in its place, and behind them the joints that need a point of their own.
    pub(crate) fn branches(&self, setting: &Setting, states: &States) -> Vec<Branch> {
        let mut branches: Vec<Branch> =
            self.elements.iter().map(|element| self.branch(element, setting, states)).collect();
        for (joint, (at, ohms)) in (self.points.len()..).zip(self.with_joints()) {
            let Some(branch) = branches.get_mut(at) else { continue };
            let to = branch.to.replace(joint);
            let law = branch.law.is_some().then_some(Law::Resistance { ohms });
            branches.push(Branch { from: Some(joint), to, law });
        }
        branches
    }

    /// Puts an element in the place of the one with its id, or behind all others; returns its number.
    pub(crate) fn exchange(&mut self, element: &'a Element) -> usize {
        match self.elements.iter_mut().enumerate().find(|(_, old)| old.id == element.id) {
            Some((at, old)) => {
                *old = element;
                at
            }
            None => {
                self.elements.push(element);
                self.elements.len() - 1
            }
        }
    }

    /// The branches at rest when the elements in these places were exchanged in a circuit with those branches.
    pub(crate) fn exchanged(&self, at_rest: &[Branch], places: &[usize], setting: &Setting) -> Vec<Branch> {
        if self.with_joints().next().is_some() {
            return self.branches(setting, &States::default());
        }
        let mut branches = at_rest.to_vec();
        for at in places {
            let Some(element) = self.elements.get(*at) else { continue };
            let branch = self.branch(element, setting, &States::default());
            match branches.get_mut(*at) {
                Some(old) => *old = branch,
                None => branches.push(branch),
            }
        }
        branches
    }

    /// How many points its branches have.
    pub(crate) fn points_with_joints(&self) -> usize {
        self.points.len() + self.with_joints().count()
    }

    fn branch(&self, element: &Element, setting: &Setting, states: &States) -> Branch {
        let law = law_of(self.harness, element, setting, states);
        let law = match (&element.condition, law) {
            (Some(Condition::BadJoint { ohms }), Some(law)) => Some(with_series(&law, *ohms).unwrap_or(law)),
            (_, law) => law,
        };
        Branch { from: self.number(&element.from), to: self.number(&element.to), law }
    }

    /// The elements with a bad joint that their law has no place for, by their number, with its resistance.
    fn with_joints(&self) -> impl Iterator<Item = (usize, f64)> {
        self.elements.iter().enumerate().filter_map(|(at, element)| match element.condition {
            Some(Condition::BadJoint { ohms }) if needs_a_joint(&element.component) => Some((at, ohms)),
            _ => None,
        })
    }

    fn joints(&self) -> impl Iterator<Item = String> {
        let named = |(at, _): (usize, f64)| self.elements.get(at).map(|element| format!("{} joint", element.id));
        self.with_joints().filter_map(named)
    }

    /// The branches in another state of coils and fuses than the one at rest, from those at rest.
    pub(crate) fn in_state(&self, at_rest: &[Branch], setting: &Setting, states: &States) -> Vec<Branch> {
        let mut branches = at_rest.to_vec();
        for (element, branch) in self.elements.iter().zip(&mut branches) {
            if matches!(element.component, Component::RelayContact { .. } | Component::Fuse { .. }) {
                *branch = self.branch(element, setting, states);
            }
        }
        branches
    }
}

/// Whether the law of a component has no place for a resistance in series.
fn needs_a_joint(component: &Component) -> bool {
    matches!(
        component,
        Component::Filament { .. }
            | Component::LedDriven { .. }
            | Component::Regulator { .. }
            | Component::ShuntRegulator { .. }
    )
}

/// The law with a resistance in series, where the law itself has a place for it.
fn with_series(law: &Law, more: f64) -> Option<Law> {
    match *law {
        Law::Resistance { ohms } => Some(Law::Resistance { ohms: ohms + more }),
        Law::Emf { volts, ohms } => Some(Law::Emf { volts, ohms: ohms + more }),
        Law::Junction { saturation_amperes, slope_volts, ohms } => {
            Some(Law::Junction { saturation_amperes, slope_volts, ohms: ohms + more })
        }
        Law::Coil { volts, ohms, reactance_ohms } => Some(Law::Coil { volts, ohms: ohms + more, reactance_ohms }),
        Law::Shunt { .. } | Law::Filament { .. } | Law::Driver { .. } | Law::Regulated { .. } => None,
    }
}

/// The law of an element in a setting; none where it passes no current.
fn law_of(harness: &Harness, element: &Element, setting: &Setting, states: &States) -> Option<Law> {
    if element.condition == Some(Condition::Open) {
        return None;
    }
    let stuck = element.condition == Some(Condition::Stuck);
    let at = |switch: &str| harness.position(switch, setting).unwrap_or_default();
    let resistance = |ohms: f64| Some(Law::Resistance { ohms });
    let made = |closed: bool, ohms: f64| (closed || stuck).then_some(Law::Resistance { ohms });
    match &element.component {
        Component::Battery { emf_volts, internal_ohms } => Some(Law::Emf { volts: *emf_volts, ohms: *internal_ohms }),
        Component::Regulator { regulated_volts, engine, output } => {
            let now = output.iter().find(|output| output.position == at(engine))?;
            Some(Law::Regulated { amperes: now.amperes, volts: *regulated_volts })
        }
        Component::LightingCoil { engine, ohms, output } => {
            let now = output.iter().find(|output| output.position == at(engine))?;
            let (volts, reactance_ohms) = (now.emf_volts, now.reactance_ohms);
            Some(Law::Coil { volts, ohms: ohms.max(LEAST_OHMS), reactance_ohms })
        }
        Component::ShuntRegulator { regulated_volts, ohms } => {
            Some(Law::Shunt { volts: *regulated_volts, ohms: *ohms })
        }
        Component::Wire { section_mm2, length_metres, celsius } => {
            resistance(wire_resistance(*section_mm2, Conductor::Flexible, *celsius) / 1000.0 * length_metres)
        }
        Component::Joint { ohms, .. } | Component::Resistor { ohms } | Component::Strap { ohms } => resistance(*ohms),
        Component::Coil { ohms, .. } => resistance(*ohms),
        Component::Contact { switch, closed_in, ohms } => {
            made(closed_in.iter().any(|position| position == at(switch)), *ohms)
        }
        Component::Fuse { ohms, .. } => {
            (!states.blown.contains(&element.id)).then_some(Law::Resistance { ohms: *ohms })
        }
        Component::Filament { watts, test_volts } => {
            Some(Law::Filament { amperes: watts / test_volts, volts: *test_volts })
        }
        Component::LedDriven { watts, rated_volts } => Some(Law::Driver {
            amperes: watts / rated_volts,
            start_volts: DRIVER_START * rated_volts,
            full_volts: DRIVER_FULL * rated_volts,
        }),
        Component::LedSeries { in_series, ohms } => {
            let (saturation_amperes, emission, own) = LED;
            let count = f64::from(*in_series);
            Some(Law::Junction {
                saturation_amperes,
                slope_volts: count * emission * THERMAL,
                ohms: count * own + ohms,
            })
        }
        Component::Diode { saturation_amperes, emission, ohms } => Some(Law::Junction {
            saturation_amperes: *saturation_amperes,
            slope_volts: emission * THERMAL,
            ohms: ohms.max(LEAST_OHMS),
        }),
        Component::RelayContact { coil, made_when_pulled, ohms } => {
            made(states.pulled.contains(coil) == *made_when_pulled, *ohms)
        }
        Component::Flasher { beat, lit, ohms, .. } => made(at(beat) == lit, *ohms),
        Component::Horn { watts, rated_volts } | Component::Load { watts, rated_volts } => {
            resistance(rated_volts * rated_volts / watts)
        }
        Component::Starter { stalled_ohms, turning_ohms, crank, turns, .. } => {
            resistance(if at(crank) == turns { *turning_ohms } else { *stalled_ohms })
        }
    }
}

/// Conductance of every point to earth, siemens: a gigohm, far above any meter. It gives cut-off parts a voltage.
pub(crate) const LEAK: f64 = 1e-9;
