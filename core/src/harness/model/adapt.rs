//! What the owner changed in a circuit: colours, lengths, sections, joints, wires of their own. Everything may be left out;
//! then it is as in the template.

use std::collections::BTreeMap;

use layshaft_wire::wire;

use super::colour::check_colour;
use super::element::{Element, Harness};
use super::message::ModelMessage;
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::record::{Component, ElementChange};

/// An element that the owner marked as not there.
#[wire]
pub struct NotThere {
    /// Id of the element.
    pub element: String,
    /// In words.
    pub label: String,
    /// The change that puts it back, with whatever else the owner had changed of it.
    pub change: ElementChange,
}

/// Id of the record that changes an element of a circuit.
///
/// ```
/// assert_eq!(layshaft_core::harness::change_id("horn", "horn.feed.wire"), "horn/horn.feed.wire");
/// ```
pub fn change_id(circuit: &str, element: &str) -> String {
    format!("{circuit}/{element}")
}

/// The circuit with the owner's changes, those whose id begins with the circuit's.
pub fn adapted(
    mut harness: Harness,
    circuit: &str,
    changes: &BTreeMap<String, ElementChange>,
) -> Result<Harness, Refused> {
    let prefix = change_id(circuit, "");
    for (mark, change) in changes {
        if let Some(element) = mark.strip_prefix(&prefix) {
            apply(&mut harness, element, change)?;
        }
    }
    Ok(harness)
}

/// The elements of a circuit that the owner marked as not there. `drawn` is the circuit before any change; what neither it
/// nor the owner describes cannot be put back and is left out.
pub(crate) fn not_there(drawn: &Harness, circuit: &str, changes: &BTreeMap<String, ElementChange>) -> Vec<NotThere> {
    let prefix = change_id(circuit, "");
    let gone = changes.iter().filter(|(_, change)| change.taken_off == Some(true));
    let listed = gone.filter_map(|(mark, change)| {
        let id = mark.strip_prefix(&prefix)?;
        let change = ElementChange { taken_off: None, ..change.clone() };
        let label = match drawn.element(id) {
            Some(element) => change.label.clone().unwrap_or_else(|| element.label.clone()),
            None => added(id, &change).ok()?.label,
        };
        Some(NotThere { element: id.to_owned(), label, change })
    });
    listed.collect()
}

/// Applies one change, or says what cannot be changed.
pub fn apply(harness: &mut Harness, id: &str, change: &ElementChange) -> Result<(), Refused> {
    if let Some(code) = &change.colour {
        check_colour(code)?;
    }
    let at = match harness.elements.iter().position(|element| element.id == id) {
        Some(at) => at,
        None if change.taken_off == Some(true) => return Ok(()),
        None => {
            harness.elements.push(added(id, change)?);
            harness.elements.len() - 1
        }
    };
    if change.taken_off == Some(true) {
        harness.elements.remove(at);
        return Ok(());
    }
    let Some(element) = harness.elements.get_mut(at) else { return Ok(()) };
    if let Some(label) = &change.label {
        element.label = check::check_title("label", ModelMessage::FieldName, label)?;
    }
    for (end, to) in [(&mut element.from, &change.from), (&mut element.to, &change.to)] {
        if let Some(to) = to {
            *end = check::check_text("point", ModelMessage::FieldPoint, to, 80)?;
        }
    }
    if let Some(component) = &change.component {
        element.component = component.clone();
    }
    if change.colour.is_some() {
        element.colour.clone_from(&change.colour);
    }
    figures(element, change)
}

fn added(id: &str, change: &ElementChange) -> Result<Element, Refused> {
    let missing = |field: &str, label: ModelMessage| Refused::Missing {
        field: field.to_owned(),
        label: label.into(),
        help: ModelMessage::NotInCircuit { element: id.to_owned() }.into(),
    };
    let id = check::check_text("element", ModelMessage::FieldId, id, 80)?;
    Ok(Element {
        label: change.label.clone().unwrap_or_else(|| id.clone()),
        from: change.from.clone().ok_or_else(|| missing("from", ModelMessage::FieldFrom))?,
        to: change.to.clone().ok_or_else(|| missing("to", ModelMessage::FieldTo))?,
        component: change.component.clone().ok_or_else(|| missing("component", ModelMessage::FieldComponent))?,
        colour: None,
        condition: None,
        id,
    })
}

/// Figures go where the component has a place for them.
fn figures(element: &mut Element, change: &ElementChange) -> Result<(), Refused> {
    let no_place =
        |field: &str, reason: ModelMessage| Err(Refused::Conflict { field: field.to_owned(), reason: reason.into() });
    let named = element.label.clone();
    if change.section_mm2.is_some() || change.length_metres.is_some() {
        let Component::Wire { section_mm2, length_metres, .. } = &mut element.component else {
            return no_place("sectionMm2", ModelMessage::NoWire { element: named });
        };
        *section_mm2 = bounds::WIRE_SECTION.check(change.section_mm2.unwrap_or(*section_mm2))?;
        *length_metres = bounds::WIRE_LENGTH.check(change.length_metres.unwrap_or(*length_metres))?;
    }
    if let Some(new) = change.ohms {
        match &mut element.component {
            Component::Joint { ohms, .. }
            | Component::Contact { ohms, .. }
            | Component::Strap { ohms }
            | Component::Fuse { ohms, .. }
            | Component::Resistor { ohms }
            | Component::Coil { ohms, .. } => *ohms = bounds::CIRCUIT_OHMS.check(new)?,
            _ => return no_place("ohms", ModelMessage::NoResistance { element: named }),
        }
    }
    if let Some(new) = &change.plug {
        let Component::Joint { plug, .. } = &mut element.component else {
            return no_place("plug", ModelMessage::NoJoint { element: named });
        };
        *plug = Some(check::check_title("plug", ModelMessage::FieldPlug, new)?);
    }
    if let Some(new) = change.rated_amperes {
        let Component::Fuse { rated_amperes, .. } = &mut element.component else {
            return no_place("ratedAmperes", ModelMessage::NoFuse { element: named });
        };
        *rated_amperes = bounds::FUSE_RATING.check(new)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::harness::model::check::check_harness;
    use crate::harness::model::element::Setting;
    use crate::harness::solver::solve;
    use crate::harness::templates::template;
    use crate::record::ElementChange;

    fn horn() -> Harness {
        template("horn", 12.0).unwrap()
    }

    fn with(id: &str, change: ElementChange) -> Result<Harness, Refused> {
        adapted(horn(), "horn", &BTreeMap::from([(change_id("horn", id), change)]))
    }

    #[test]
    fn a_wire_gets_its_own_colour_length_and_section_and_the_rest_stays() {
        let change =
            ElementChange { colour: Some("GN/YE".to_owned()), length_metres: Some(1.4), ..ElementChange::default() };
        let harness = with("horn.feed.wire", change).unwrap();
        let wire = harness.element("horn.feed.wire").unwrap();
        assert_eq!(wire.colour.as_deref(), Some("GN/YE"));
        assert_eq!(wire.component, Component::Wire { section_mm2: 1.0, length_metres: 1.4, celsius: 30.0 });
        assert_eq!(harness.elements.len(), horn().elements.len());
        let other = BTreeMap::from([(change_id("lighting", "horn.feed.wire"), ElementChange::default())]);
        assert_eq!(adapted(horn(), "horn", &other).unwrap(), horn(), "changes of another circuit do not count");
    }

    #[test]
    fn an_element_of_the_owner_is_added_and_one_that_is_not_there_is_taken_off() {
        let relay = ElementChange {
            from: Some("switched live".to_owned()),
            to: Some("frame".to_owned()),
            component: Some(Component::Load { watts: 5.0, rated_volts: 12.0 }),
            ..ElementChange::default()
        };
        let harness = with("clock", relay).unwrap();
        assert!(solve(&harness, &Setting::of(&[("key", "on")])).unwrap().flow("clock").unwrap().amperes > 0.3);
        let off = ElementChange { taken_off: Some(true), ..ElementChange::default() };
        let harness = with("earth.frame", off).unwrap();
        assert!(check_harness(&harness).unwrap().iter().any(|finding| finding.code.as_str() == "harness.no-earth"));
    }

    #[test]
    fn what_is_not_there_is_listed_with_the_change_that_puts_it_back() {
        let off = ElementChange { taken_off: Some(true), colour: Some("GN".to_owned()), ..ElementChange::default() };
        let unknown = ElementChange { taken_off: Some(true), ..ElementChange::default() };
        let changes = BTreeMap::from([
            (change_id("horn", "horn.feed.wire"), off.clone()),
            (change_id("horn", "no such"), unknown),
            (change_id("horn", "horn"), ElementChange { ohms: None, ..ElementChange::default() }),
            (change_id("lighting", "main.wire"), off),
        ]);
        let listed = not_there(&horn(), "horn", &changes);
        let [gone] = listed.as_slice() else { panic!("{listed:?}") };
        assert_eq!(gone.label, horn().element("horn.feed.wire").unwrap().label);
        let back = with(&gone.element, gone.change.clone()).unwrap();
        assert_eq!(back.element("horn.feed.wire").unwrap().colour.as_deref(), Some("GN"), "its colour is kept");
    }

    #[test]
    fn what_cannot_be_is_refused_plainly() {
        let refused = |id: &str, change| with(id, change).unwrap_err().english();
        let change = ElementChange { length_metres: Some(0.0), ..ElementChange::default() };
        assert!(refused("horn.feed.wire", change).contains("0 m is outside"));
        let change = ElementChange { colour: Some("QQ".to_owned()), ..ElementChange::default() };
        assert!(refused("horn.feed.wire", change).contains("QQ is no colour code"));
        let change = ElementChange { section_mm2: Some(1.0), ..ElementChange::default() };
        assert!(refused("horn", change).contains("Horn is no wire"));
        let change = ElementChange { to: Some("frame".to_owned()), ..ElementChange::default() };
        assert!(refused("new", change).contains("Where it begins"));
    }
}
