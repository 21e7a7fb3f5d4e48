//! Faults: what can be wrong at one place, and the harness with it.

use layshaft_wire::wire;

use super::message::FaultMessage;
use crate::error::Refused;
use crate::harness::model::{Condition, Element, Harness};
use crate::message::Message;
use crate::record::Component;
use crate::units::Unit;

/// Resistance of a chafed wire on the frame, ohms: our assumption.
const CHAFED_OHMS: f64 = 0.02;

/// One fault.
#[wire]
pub enum Fault {
    /// Broken, unplugged or burnt out.
    Open {
        /// Id of the element.
        element: String,
    },
    /// A corroded or loose joint in series.
    BadJoint {
        /// Id of the element.
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
        /// Id of the one contact.
        one: String,
        /// Id of the other.
        other: String,
    },
    /// Something with a polarity fitted the wrong way round.
    Reversed {
        /// Id of the element.
        element: String,
    },
    /// A lamp of other watts.
    WrongLamp {
        /// Id of the lamp.
        element: String,
        /// Watts of what was fitted.
        watts: f64,
    },
    /// An earth strap or earth point that makes no contact.
    MissingEarth {
        /// Id of the element.
        element: String,
    },
    /// A contact that is always made.
    StuckContact {
        /// Id of the contact.
        element: String,
    },
    /// A contact that never makes.
    DeadContact {
        /// Id of the contact.
        element: String,
    },
    /// A battery that is flat or worn out.
    WeakBattery {
        /// Id of the battery.
        element: String,
        /// Voltage without load, volts.
        emf_volts: f64,
        /// Internal resistance, ohms.
        internal_ohms: f64,
    },
}

impl Fault {
    /// What tells it from every other fault of a harness.
    pub fn id(&self) -> String {
        match self {
            Fault::Open { element } => format!("open {element}"),
            Fault::BadJoint { element, ohms } => format!("bad joint {element} {ohms}"),
            Fault::ShortToFrame { point } => format!("short {point}"),
            Fault::Swapped { one, other } => format!("swapped {one} / {other}"),
            Fault::Reversed { element } => format!("reversed {element}"),
            Fault::WrongLamp { element, watts } => format!("wrong lamp {element} {watts}"),
            Fault::MissingEarth { element } => format!("no earth {element}"),
            Fault::StuckContact { element } => format!("stuck {element}"),
            Fault::DeadContact { element } => format!("dead {element}"),
            Fault::WeakBattery { element, .. } => format!("weak {element}"),
        }
    }

    /// The fault in words.
    pub fn spoken(&self, harness: &Harness) -> Message {
        let label = |id: &str| harness.element(id).map_or(id, |element| element.label.as_str()).to_owned();
        let said = match self {
            Fault::Open { element } => FaultMessage::Open { element: label(element) },
            Fault::BadJoint { element, ohms } => {
                FaultMessage::BadJoint { element: label(element), ohms: Unit::Ohm.of(*ohms) }
            }
            Fault::ShortToFrame { point } => FaultMessage::ShortToFrame { point: point.clone() },
            Fault::Swapped { one, other } => FaultMessage::Swapped { one: label(one), other: label(other) },
            Fault::Reversed { element } => FaultMessage::Reversed { element: label(element) },
            Fault::WrongLamp { element, watts } => {
                FaultMessage::WrongLamp { element: label(element), watts: Unit::Watt.of(*watts) }
            }
            Fault::MissingEarth { element } => FaultMessage::MissingEarth { element: label(element) },
            Fault::StuckContact { element } => FaultMessage::StuckContact { element: label(element) },
            Fault::DeadContact { element } => FaultMessage::DeadContact { element: label(element) },
            Fault::WeakBattery { element, .. } => FaultMessage::WeakBattery { element: label(element) },
        };
        said.into()
    }
}

/// The harness with a fault in it, or the refusal that says why the fault cannot be there.
pub fn with_fault(harness: &Harness, fault: &Fault) -> Result<Harness, Refused> {
    let mut faulty = harness.clone();
    for changed in touched(harness, fault)? {
        match faulty.elements.iter_mut().find(|element| element.id == changed.id) {
            Some(element) => *element = changed,
            None => faulty.elements.push(changed),
        }
    }
    Ok(faulty)
}

/// The elements that a fault touches, as they are with it; one that the harness does not have is added.
pub(crate) fn touched(harness: &Harness, fault: &Fault) -> Result<Vec<Element>, Refused> {
    let one = |element: &str, change: &dyn Fn(&mut Element)| {
        let mut element = find(harness, element)?.clone();
        change(&mut element);
        Ok(vec![element])
    };
    match fault {
        Fault::Open { element } | Fault::DeadContact { element } | Fault::MissingEarth { element } => {
            one(element, &|element| element.condition = Some(Condition::Open))
        }
        Fault::BadJoint { element, ohms } => {
            one(element, &|element| element.condition = Some(Condition::BadJoint { ohms: *ohms }))
        }
        Fault::StuckContact { element } => {
            let sound = find(harness, element)?;
            if !is_contact(&sound.component) {
                return Err(cannot(FaultMessage::CannotStick { element: sound.label.clone() }));
            }
            one(element, &|element| element.condition = Some(Condition::Stuck))
        }
        Fault::ShortToFrame { point } => Ok(vec![short_to_frame(harness, point)?]),
        Fault::Swapped { one, other } => {
            let (mut first, mut second) = (find(harness, one)?.clone(), find(harness, other)?.clone());
            std::mem::swap(&mut first.to, &mut second.to);
            Ok(vec![first, second])
        }
        Fault::Reversed { element } => one(element, &|element| std::mem::swap(&mut element.from, &mut element.to)),
        Fault::WrongLamp { element, watts: fitted } => {
            let mut lamp = find(harness, element)?.clone();
            match &mut lamp.component {
                Component::Filament { watts, .. } | Component::LedDriven { watts, .. } => *watts = *fitted,
                _ => return Err(cannot(FaultMessage::NoLamp { element: lamp.label })),
            }
            Ok(vec![lamp])
        }
        Fault::WeakBattery { element, emf_volts: emf, internal_ohms: ohms } => {
            let mut battery = find(harness, element)?.clone();
            match &mut battery.component {
                Component::Battery { emf_volts, internal_ohms } => (*emf_volts, *internal_ohms) = (*emf, *ohms),
                _ => return Err(cannot(FaultMessage::NoBattery { element: battery.label })),
            }
            Ok(vec![battery])
        }
    }
}

pub(crate) fn is_contact(component: &Component) -> bool {
    matches!(component, Component::Contact { .. } | Component::RelayContact { .. } | Component::Flasher { .. })
}

fn short_to_frame(harness: &Harness, point: &str) -> Result<Element, Refused> {
    if !harness.elements.iter().any(|element| element.from == point || element.to == point) {
        return Err(Refused::Unknown { what: FaultMessage::WhatPoint.into(), id: point.to_owned() });
    }
    if point == harness.frame {
        let reason = FaultMessage::FrameItself { point: point.to_owned() };
        return Err(Refused::Conflict { field: "point".to_owned(), reason: reason.into() });
    }
    let chafed = Component::Resistor { ohms: CHAFED_OHMS };
    Ok(Element::named("fault.short", point, &harness.frame, chafed))
}

fn find<'a>(harness: &'a Harness, id: &str) -> Result<&'a Element, Refused> {
    harness.element(id).ok_or_else(|| Refused::Unknown { what: FaultMessage::WhatElement.into(), id: id.to_owned() })
}

fn cannot(why: FaultMessage) -> Refused {
    Refused::Conflict { field: "element".to_owned(), reason: why.into() }
}
