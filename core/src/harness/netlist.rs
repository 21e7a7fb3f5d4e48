//! The bare network behind a harness in one setting: numbered points and laws.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use super::element::{Component, Condition, Element, Harness, Setting};
use super::law::Law;
use super::newton::LEAK;
use crate::electrical::{Conductor, wire_resistance};

/// Thermal voltage at 27 °C, volts: k T / q.
pub(super) const THERMAL: f64 = 8.617_333e-5 * 300.15;
/// Saturation current of one LED, amperes, its emission coefficient and its own resistance, ohms: a textbook model, our
/// choice of numbers.
const LED: (f64, f64, f64) = (1e-18, 2.0, 5.0);
/// Shares of its rated voltage at which an LED driver starts and is full: our assumption.
const DRIVER_START: f64 = 0.5;
const DRIVER_FULL: f64 = 0.75;
/// Least resistance in series with a junction, ohms.
const LEAST_OHMS: f64 = 1e-4;

/// One law between two points.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Device {
    /// Mark of the element it comes from.
    pub element: String,
    /// Number of the point it begins at; none is earth.
    pub from: Option<usize>,
    /// Number of the point it ends at; none is earth.
    pub to: Option<usize>,
    /// Its law.
    pub law: Law,
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
pub(super) struct States {
    /// Coils that pull.
    pub(super) pulled: BTreeSet<String>,
    /// Fuses that have blown.
    pub(super) blown: BTreeSet<String>,
}

/// The network of a harness in a setting with all relays at rest and all fuses sound.
pub fn netlist(harness: &Harness, setting: &Setting) -> Netlist {
    network_of(harness, setting, &States::default())
}

/// The network of a harness in a setting. An element that passes nothing in this state has no device.
pub(super) fn network_of(harness: &Harness, setting: &Setting, states: &States) -> Netlist {
    let nodes = harness.nodes();
    let mut points: Vec<String> =
        nodes.iter().filter(|node| **node != harness.earth).map(|node| (*node).to_owned()).collect();
    let numbers: BTreeMap<String, usize> = points.iter().cloned().zip(0..).collect();
    let number = |node: &str| numbers.get(node).copied();
    let mut devices = Vec::with_capacity(harness.elements.len());
    for element in &harness.elements {
        let Some(law) = law_of(harness, element, setting, states) else { continue };
        let (from, to) = (number(&element.from), number(&element.to));
        let name = || element.id.clone();
        match (&element.condition, law) {
            (Some(Condition::BadJoint { ohms }), law) => match with_series(&law, *ohms) {
                Some(law) => devices.push(Device { element: name(), from, to, law }),
                None => {
                    let joint = points.len();
                    points.push(format!("{} joint", element.id));
                    devices.push(Device { element: name(), from, to: Some(joint), law });
                    let law = Law::Resistance { ohms: *ohms };
                    devices.push(Device { element: String::new(), from: Some(joint), to, law });
                }
            },
            (_, law) => devices.push(Device { element: name(), from, to, law }),
        }
    }
    Netlist { points, leak_siemens: LEAK, devices }
}

/// The law with a resistance in series, where the law itself has a place for it.
fn with_series(law: &Law, more: f64) -> Option<Law> {
    match *law {
        Law::Resistance { ohms } => Some(Law::Resistance { ohms: ohms + more }),
        Law::Emf { volts, ohms } => Some(Law::Emf { volts, ohms: ohms + more }),
        Law::Junction { saturation_amperes, slope_volts, ohms } => {
            Some(Law::Junction { saturation_amperes, slope_volts, ohms: ohms + more })
        }
        Law::Filament { .. } | Law::Driver { .. } | Law::Regulated { .. } => None,
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
