//! Every place of a harness at which one of the faults can be.

use super::fault::{Fault, is_contact};
use crate::harness::model::{Element, Harness};
use crate::record::Component;

/// Resistance of a bad joint, ohms: enough to dim a headlamp and to stop a solenoid; our choice.
const BAD_JOINT_OHMS: f64 = 2.0;
/// A bad joint in the path of a starter, ohms: a tenth of a volt too much becomes many.
const BAD_CABLE_OHMS: f64 = 0.1;
/// Currents above this belong to a starter, section in mm².
const CABLE_MM2: f64 = 6.0;

/// Every single fault of a harness.
///
/// ```
/// use layshaft_core::harness::{Fault, fault_places, template};
/// let faults = fault_places(&template("stop-lamp", 12.0).unwrap());
/// assert!(faults.contains(&Fault::StuckContact { element: "brake.rear".to_owned() }));
/// ```
pub fn fault_places(harness: &Harness) -> Vec<Fault> {
    let mut faults: Vec<Fault> = harness.elements.iter().flat_map(|element| at_element(harness, element)).collect();
    let points = harness.nodes().into_iter().filter(|node| *node != harness.frame && *node != harness.earth);
    faults.extend(points.map(|point| Fault::ShortToFrame { point: point.to_owned() }));
    faults.extend(swapped_pairs(harness));
    faults
}

fn at_element(harness: &Harness, element: &Element) -> Vec<Fault> {
    let name = || element.id.clone();
    let bad = |ohms| Fault::BadJoint { element: name(), ohms };
    let to_earth = [&element.from, &element.to].into_iter().any(|end| *end == harness.frame || *end == harness.earth);
    match &element.component {
        Component::Battery { emf_volts, internal_ohms } => vec![
            Fault::Reversed { element: name() },
            // Flat: 11.4 V of 12.6 V and ten times the resistance, our choice.
            Fault::WeakBattery {
                element: name(),
                emf_volts: emf_volts * 11.4 / 12.6,
                internal_ohms: internal_ohms * 10.0,
            },
            Fault::Open { element: name() },
        ],
        Component::Wire { section_mm2, .. } if *section_mm2 >= CABLE_MM2 => {
            vec![Fault::Open { element: name() }, bad(BAD_CABLE_OHMS)]
        }
        Component::Strap { .. } => vec![Fault::MissingEarth { element: name() }, bad(BAD_CABLE_OHMS)],
        Component::Joint { .. } if to_earth => vec![Fault::MissingEarth { element: name() }, bad(BAD_JOINT_OHMS)],
        component if is_contact(component) => {
            vec![Fault::DeadContact { element: name() }, Fault::StuckContact { element: name() }, bad(BAD_JOINT_OHMS)]
        }
        Component::Filament { watts, .. } => {
            let wrong = if *watts > 15.0 { 5.0 } else { 21.0 };
            vec![Fault::Open { element: name() }, Fault::WrongLamp { element: name(), watts: wrong }]
        }
        // On alternating current neither way round is wrong: what blocks one half of the wave passes the other.
        Component::LedDriven { .. } | Component::LedSeries { .. } | Component::Diode { .. }
            if harness.is_alternating() =>
        {
            vec![Fault::Open { element: name() }]
        }
        Component::LightingCoil { .. } => vec![Fault::Open { element: name() }, bad(BAD_JOINT_OHMS)],
        Component::LedDriven { .. } | Component::LedSeries { .. } | Component::Diode { .. } => {
            vec![Fault::Open { element: name() }, Fault::Reversed { element: name() }]
        }
        Component::Wire { .. } | Component::Joint { .. } | Component::Fuse { .. } => {
            vec![Fault::Open { element: name() }, bad(BAD_JOINT_OHMS)]
        }
        _ => vec![Fault::Open { element: name() }],
    }
}

/// Every pair of contacts of one plug.
fn swapped_pairs(harness: &Harness) -> Vec<Fault> {
    let plug = |element: &Element| match &element.component {
        Component::Joint { plug, .. } => plug.clone(),
        _ => None,
    };
    let contacts: Vec<(&Element, String)> =
        harness.elements.iter().filter_map(|element| Some((element, plug(element)?))).collect();
    let mut pairs = Vec::new();
    for (at, (one, plug)) in contacts.iter().enumerate() {
        for (other, _) in contacts.iter().skip(at + 1).filter(|(_, others)| others == plug) {
            // Exchanging contacts that end at the same point, or that would then end where they begin, changes nothing.
            if one.to != other.to && one.from != other.to && other.from != one.to {
                pairs.push(Fault::Swapped { one: one.id.clone(), other: other.id.clone() });
            }
        }
    }
    pairs
}
