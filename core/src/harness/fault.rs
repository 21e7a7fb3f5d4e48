//! Faults: what can be wrong at one place, and the harness with it.

use layshaft_wire::wire;

use super::element::{Component, Condition, Element, Harness};
use crate::error::Refused;

/// Resistance of a chafed wire on the frame, ohms: our assumption.
const CHAFED_OHMS: f64 = 0.02;

/// One fault.
#[wire]
pub enum Fault {
    /// Broken, unplugged or burnt out.
    Open {
        /// Mark of the element.
        element: String,
    },
    /// A corroded or loose joint in series.
    BadJoint {
        /// Mark of the element.
        element: String,
        /// Its resistance, ohms.
        ohms: f64,
    },
    /// A point that touches the frame.
    ShortToFrame {
        /// The point.
        point: String,
    },
    /// Two contacts of a plug exchanged.
    Swapped {
        /// Mark of the one contact.
        one: String,
        /// Mark of the other.
        other: String,
    },
    /// Something with a polarity fitted the wrong way round.
    Reversed {
        /// Mark of the element.
        element: String,
    },
    /// A lamp of other watts.
    WrongLamp {
        /// Mark of the lamp.
        element: String,
        /// Watts of what was fitted.
        watts: f64,
    },
    /// An earth strap or earth point that makes no contact.
    MissingEarth {
        /// Mark of the element.
        element: String,
    },
    /// A contact that is always made.
    StuckContact {
        /// Mark of the contact.
        element: String,
    },
    /// A contact that never makes.
    DeadContact {
        /// Mark of the contact.
        element: String,
    },
    /// A battery that is flat or worn out.
    WeakBattery {
        /// Mark of the battery.
        element: String,
        /// Voltage without load, volts.
        emf_volts: f64,
        /// Internal resistance, ohms.
        internal_ohms: f64,
    },
}

impl Fault {
    /// The fault in words.
    pub fn spoken(&self, harness: &Harness) -> String {
        let label = |id: &str| harness.element(id).map_or(id, |element| element.label.as_str()).to_owned();
        match self {
            Fault::Open { element } => format!("{} is open", label(element)),
            Fault::BadJoint { element, ohms } => format!("{} has a bad joint of {ohms} Ω", label(element)),
            Fault::ShortToFrame { point } => format!("“{point}” touches the frame"),
            Fault::Swapped { one, other } => format!("{} and {} are swapped", label(one), label(other)),
            Fault::Reversed { element } => format!("{} is the wrong way round", label(element)),
            Fault::WrongLamp { element, watts } => format!("{} holds a lamp of {watts} W", label(element)),
            Fault::MissingEarth { element } => format!("{} makes no contact", label(element)),
            Fault::StuckContact { element } => format!("{} is always made", label(element)),
            Fault::DeadContact { element } => format!("{} never makes", label(element)),
            Fault::WeakBattery { element, .. } => format!("{} is flat or worn out", label(element)),
        }
    }
}

/// The harness with a fault in it, or the refusal that says why the fault cannot be there.
pub fn with_fault(harness: &Harness, fault: &Fault) -> Result<Harness, Refused> {
    let mut faulty = harness.clone();
    match fault {
        Fault::Open { element } | Fault::DeadContact { element } | Fault::MissingEarth { element } => {
            find(&mut faulty, element)?.condition = Some(Condition::Open);
        }
        Fault::BadJoint { element, ohms } => {
            find(&mut faulty, element)?.condition = Some(Condition::BadJoint { ohms: *ohms });
        }
        Fault::StuckContact { element } => {
            let element = find(&mut faulty, element)?;
            if !is_contact(&element.component) {
                return Err(cannot(element, "has no contacts that could stick"));
            }
            element.condition = Some(Condition::Stuck);
        }
        Fault::ShortToFrame { point } => short_to_frame(&mut faulty, point)?,
        Fault::Swapped { one, other } => {
            let (first, second) = (find(&mut faulty, one)?.to.clone(), find(&mut faulty, other)?.to.clone());
            find(&mut faulty, one)?.to = second;
            find(&mut faulty, other)?.to = first;
        }
        Fault::Reversed { element } => {
            let element = find(&mut faulty, element)?;
            std::mem::swap(&mut element.from, &mut element.to);
        }
        Fault::WrongLamp { element, watts: fitted } => {
            let element = find(&mut faulty, element)?;
            match &mut element.component {
                Component::Filament { watts, .. } | Component::LedDriven { watts, .. } => *watts = *fitted,
                _ => return Err(cannot(element, "is no lamp")),
            }
        }
        Fault::WeakBattery { element, emf_volts: emf, internal_ohms: ohms } => {
            let element = find(&mut faulty, element)?;
            match &mut element.component {
                Component::Battery { emf_volts, internal_ohms } => (*emf_volts, *internal_ohms) = (*emf, *ohms),
                _ => return Err(cannot(element, "is no battery")),
            }
        }
    }
    Ok(faulty)
}

pub(super) fn is_contact(component: &Component) -> bool {
    matches!(component, Component::Contact { .. } | Component::RelayContact { .. } | Component::Flasher { .. })
}

fn short_to_frame(harness: &mut Harness, point: &str) -> Result<(), Refused> {
    if !harness.nodes().contains(&point) {
        return Err(Refused::Unknown { what: "point".to_owned(), id: point.to_owned() });
    }
    if point == harness.frame {
        let reason = format!("{point} is the frame itself");
        return Err(Refused::Conflict { field: "point".to_owned(), reason });
    }
    harness.elements.push(Element {
        id: "fault.short".to_owned(),
        label: "Chafed wire on the frame".to_owned(),
        from: point.to_owned(),
        to: harness.frame.clone(),
        component: Component::Resistor { ohms: CHAFED_OHMS },
        colour: None,
        condition: None,
    });
    Ok(())
}

fn find<'a>(harness: &'a mut Harness, id: &str) -> Result<&'a mut Element, Refused> {
    let found = harness.elements.iter_mut().find(|element| element.id == id);
    found.ok_or_else(|| Refused::Unknown { what: "element".to_owned(), id: id.to_owned() })
}

fn cannot(element: &Element, why: &str) -> Refused {
    Refused::Conflict { field: "element".to_owned(), reason: format!("{} {why}", element.label) }
}
