//! What is wrong with a harness as it was entered: refusals for what cannot be worked out, findings for the rest.

use std::collections::{BTreeMap, BTreeSet};

use super::colour::check_colour;
use super::element::{Condition, Element, Harness};
use super::message::ModelMessage;
use crate::bounds;
use crate::check;
use crate::electrical::check_wire;
use crate::error::{Refused, RefusedMessage};
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::Component;
use crate::units::Unit;

/// Difference of two sources on the same two points above which they work against each other, volts.
const IN_CONFLICT_VOLTS: f64 = 0.3;

/// Checks a harness: refused is what cannot be worked out; parts that hang in the air, a missing earth and sources that
/// work against each other are findings.
pub fn check_harness(harness: &Harness) -> Result<Vec<Finding>, Refused> {
    refuse_unsound(harness)?;
    let mut findings = Vec::new();
    let all = Joined::by(harness, |_| true);
    let plain = plainly_joined(harness);
    if harness.frame != harness.earth && !plain.same(&harness.frame, &harness.earth) {
        let text = ModelMessage::NoWayBack { frame: harness.frame.clone(), earth: harness.earth.clone() };
        findings.push(Finding::new(FindingCode::HarnessNoEarth, Weight::Stopper, text));
    }
    let leads_nowhere = |node: &&str| !all.same(node, &harness.earth) && *node != harness.frame;
    let floating: Vec<Message> = harness.nodes().into_iter().filter(leads_nowhere).map(Message::as_entered).collect();
    if !floating.is_empty() {
        let text = ModelMessage::ConnectedToNothing { points: List(ListStyle::Comma, floating) };
        findings.push(Finding::new(FindingCode::HarnessFloating, Weight::Care, text));
    }
    findings.extend(sources_in_conflict(harness));
    Ok(findings)
}

/// Refuses what cannot be worked out, naming the element and the value.
pub(crate) fn refuse_unsound(harness: &Harness) -> Result<(), Refused> {
    let mut ids = BTreeSet::new();
    let mut source = false;
    for element in &harness.elements {
        if !ids.insert(element.id.as_str()) {
            return Err(conflict(&element.id, ModelMessage::SameId { id: element.id.clone() }));
        }
        source |= element.component.is_source() || matches!(element.component, Component::Regulator { .. });
        refuse_unsound_element(harness, element)?;
    }
    if !source {
        return Err(Refused::Missing {
            field: "elements".to_owned(),
            label: ModelMessage::ABattery.into(),
            help: ModelMessage::AddBattery.into(),
        });
    }
    let touches = |node: &str| harness.elements.iter().any(|element| element.from == node || element.to == node);
    if !touches(&harness.earth) {
        return Err(conflict("earth", ModelMessage::NothingAtEarth { earth: harness.earth.clone() }));
    }
    Ok(())
}

/// The same for one element that is exchanged in a sound harness.
pub(crate) fn refuse_unsound_element(harness: &Harness, element: &Element) -> Result<(), Refused> {
    check_element(harness, element).map_err(|refused| named(refused, &element.label))
}

fn check_element(harness: &Harness, element: &Element) -> Result<(), Refused> {
    let ohms = |value: f64| bounds::CIRCUIT_OHMS.check(value);
    let watts = |value: f64| bounds::CIRCUIT_WATTS.check(value);
    let volts = |value: f64| bounds::CIRCUIT_VOLTS.check(value);
    let switch = |id: &str, positions: &[String]| known_positions(harness, id, positions);
    check::check_text("from", ModelMessage::FieldPoint, &element.from, 80)?;
    check::check_text("to", ModelMessage::FieldPoint, &element.to, 80)?;
    if element.from == element.to {
        return Err(conflict("to", ModelMessage::SamePoint { point: element.from.clone() }));
    }
    if let Some(code) = &element.colour {
        check_colour(code)?;
    }
    if let Some(Condition::BadJoint { ohms: joint }) = element.condition {
        ohms(joint)?;
    }
    match &element.component {
        Component::Battery { emf_volts, internal_ohms } => {
            bounds::EMF.check(*emf_volts)?;
            ohms(*internal_ohms)?;
        }
        Component::Regulator { regulated_volts, engine, output } => {
            volts(*regulated_volts)?;
            let positions: Vec<String> = output.iter().map(|output| output.position.clone()).collect();
            switch(engine, &positions)?;
            output.iter().try_for_each(|output| bounds::AMPERES.check(output.amperes).map(drop))?;
        }
        Component::LightingCoil { engine, ohms: value, output } => {
            ohms(*value)?;
            let positions: Vec<String> = output.iter().map(|output| output.position.clone()).collect();
            switch(engine, &positions)?;
            for output in output {
                bounds::COIL_EMF.check(output.emf_volts)?;
                ohms(output.reactance_ohms)?;
            }
        }
        Component::ShuntRegulator { regulated_volts, ohms: value } => {
            volts(*regulated_volts)?;
            ohms(*value)?;
        }
        Component::Wire { section_mm2, length_metres, celsius } => check_wire(*section_mm2, *length_metres, *celsius)?,
        Component::Joint { ohms: value, .. }
        | Component::Resistor { ohms: value }
        | Component::Strap { ohms: value } => drop(ohms(*value)?),
        Component::Contact { switch: id, closed_in, ohms: value } => {
            switch(id, closed_in)?;
            ohms(*value)?;
        }
        Component::Fuse { rated_amperes, ohms: value } => {
            bounds::FUSE_RATING.check(*rated_amperes)?;
            ohms(*value)?;
        }
        Component::Filament { watts: power, test_volts: at }
        | Component::LedDriven { watts: power, rated_volts: at }
        | Component::Horn { watts: power, rated_volts: at }
        | Component::Load { watts: power, rated_volts: at } => {
            watts(*power)?;
            volts(*at)?;
        }
        Component::LedSeries { in_series, ohms: value } => {
            bounds::COUNT.check(f64::from(*in_series))?;
            ohms(*value)?;
        }
        Component::Diode { saturation_amperes, emission, ohms: value } => {
            bounds::SATURATION.check(*saturation_amperes)?;
            bounds::EMISSION.check(*emission)?;
            ohms(*value)?;
        }
        Component::Coil { ohms: value, pull_in_volts, let_go_volts } => {
            ohms(*value)?;
            volts(*pull_in_volts)?;
            volts(*let_go_volts)?;
            if let_go_volts > pull_in_volts {
                let (lets_go, pulls_in) = (Unit::Volt.of(*let_go_volts), Unit::Volt.of(*pull_in_volts));
                return Err(conflict("letGoVolts", ModelMessage::LetsGoAbovePullIn { lets_go, pulls_in }));
            }
        }
        Component::RelayContact { coil, ohms: value, .. } => {
            let is_coil = |element: &Element| matches!(element.component, Component::Coil { .. });
            if !harness.element(coil).is_some_and(is_coil) {
                return Err(Refused::Unknown { what: ModelMessage::WhatCoil.into(), id: coil.clone() });
            }
            ohms(*value)?;
        }
        Component::Flasher { beat, lit, least_amperes, ohms: value } => {
            switch(beat, std::slice::from_ref(lit))?;
            bounds::AMPERES.check_known(*least_amperes)?;
            ohms(*value)?;
        }
        Component::Starter { rated_volts, stalled_ohms, turning_ohms, crank, turns } => {
            switch(crank, std::slice::from_ref(turns))?;
            volts(*rated_volts)?;
            ohms(*stalled_ohms)?;
            ohms(*turning_ohms)?;
        }
    }
    Ok(())
}

fn known_positions(harness: &Harness, id: &str, positions: &[String]) -> Result<(), Refused> {
    let unknown = |what: ModelMessage, id: &str| Refused::Unknown { what: what.into(), id: id.to_owned() };
    let card = harness.switches.iter().find(|card| card.id == id);
    let card = card.ok_or_else(|| unknown(ModelMessage::WhatSwitch, id))?;
    match positions.iter().find(|position| !card.positions.contains(position)) {
        Some(position) => Err(unknown(ModelMessage::WhatPosition { switch: card.label.clone() }, position)),
        None => Ok(()),
    }
}

fn conflict(field: &str, reason: ModelMessage) -> Refused {
    Refused::Conflict { field: field.to_owned(), reason: reason.into() }
}

/// The refusal with the element's name beside its label.
fn named(refused: Refused, element: &str) -> Refused {
    let of = |label| RefusedMessage::OfElement { element: element.to_owned(), label }.into();
    match refused {
        Refused::OutOfRange { bound, field, label, value, min, max, unit } => {
            Refused::OutOfRange { bound, field, label: of(label), value, min, max, unit }
        }
        Refused::NotANumber { bound, field, label, min, max, unit } => {
            Refused::NotANumber { bound, field, label: of(label), min, max, unit }
        }
        Refused::Conflict { field, reason } => {
            let reason = ModelMessage::OfElement { element: element.to_owned(), reason };
            Refused::Conflict { field, reason: reason.into() }
        }
        Refused::Unreadable { field, label, reason } => Refused::Unreadable { field, label: of(label), reason },
        other => other,
    }
}

/// Two batteries on the same two points (through nothing but wire) whose voltages differ.
fn sources_in_conflict(harness: &Harness) -> Vec<Finding> {
    let plain = plainly_joined(harness);
    let emf = |element: &Element| match element.component {
        Component::Battery { emf_volts, .. } => Some(emf_volts),
        _ => None,
    };
    let sources: Vec<(&Element, f64)> =
        harness.elements.iter().filter_map(|element| Some((element, emf(element)?))).collect();
    let mut findings = Vec::new();
    for (at, (one, volts)) in sources.iter().enumerate() {
        for (other, others) in sources.iter().skip(at + 1) {
            let same_way = plain.same(&one.from, &other.from) && plain.same(&one.to, &other.to);
            let crossed = plain.same(&one.from, &other.to) && plain.same(&one.to, &other.from);
            if crossed || (same_way && (volts - others).abs() > IN_CONFLICT_VOLTS) {
                let text = ModelMessage::SourcesInConflict { one: one.label.clone(), other: other.label.clone() };
                findings.push(Finding::new(FindingCode::HarnessSourcesInConflict, Weight::Stopper, text));
            }
        }
    }
    findings
}

/// Points that hang together through nothing but sound wire.
fn plainly_joined(harness: &Harness) -> Joined<'_> {
    Joined::by(harness, |element| {
        matches!(
            element.component,
            Component::Wire { .. } | Component::Joint { .. } | Component::Strap { .. } | Component::Fuse { .. }
        ) && element.condition.is_none()
    })
}

/// Which points hang together through the elements that were let in.
struct Joined<'a> {
    group: BTreeMap<&'a str, usize>,
}

impl<'a> Joined<'a> {
    fn by(harness: &'a Harness, lets: impl Fn(&Element) -> bool) -> Self {
        let mut group: BTreeMap<&str, usize> = harness.nodes().into_iter().zip(0..).collect();
        loop {
            let mut changed = false;
            for element in harness.elements.iter().filter(|element| lets(element)) {
                let both = (group.get(element.from.as_str()).copied(), group.get(element.to.as_str()).copied());
                let (Some(one), Some(other)) = both else { continue };
                if one != other {
                    group.insert(&element.from, one.min(other));
                    group.insert(&element.to, one.min(other));
                    changed = true;
                }
            }
            if !changed {
                return Self { group };
            }
        }
    }

    fn same(&self, one: &str, other: &str) -> bool {
        self.group.get(one).is_some_and(|group| self.group.get(other) == Some(group))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::harness::templates::template;

    fn sound() -> Harness {
        template("lighting", 12.0).unwrap()
    }

    fn set(harness: &mut Harness, id: &str, change: impl FnOnce(&mut Element)) {
        change(harness.elements.iter_mut().find(|element| element.id == id).unwrap());
    }

    fn codes(harness: &Harness) -> Vec<&'static str> {
        check_harness(harness).unwrap().into_iter().map(|finding| finding.code.as_str()).collect()
    }

    #[test]
    fn a_sound_template_has_no_finding() {
        assert_eq!(codes(&sound()), Vec::<&str>::new());
    }

    #[test]
    fn a_wire_of_no_length_is_refused_by_its_name() {
        let mut harness = sound();
        set(&mut harness, "main.wire", |element| {
            element.component = Component::Wire { section_mm2: 2.0, length_metres: 0.0, celsius: 20.0 };
        });
        let text = check_harness(&harness).unwrap_err().english();
        assert!(text.contains("Main live") && text.contains("0 m is outside 0.01 to 30 m"), "{text}");
    }

    #[test]
    fn an_unknown_colour_switch_position_coil_and_a_doubled_mark_are_refused() {
        let refuses = |change: &dyn Fn(&mut Harness)| {
            let mut harness = sound();
            change(&mut harness);
            check_harness(&harness).unwrap_err().english()
        };
        assert!(
            refuses(&|h| set(h, "main.wire", |e| e.colour = Some("QQ".to_owned()))).contains("QQ is no colour code")
        );
        assert!(refuses(&|h| h.switches.retain(|card| card.id != "dip")).contains("no switch with the id dip"));
        assert!(refuses(&|h| h.switches[0].positions[1] = "auf".to_owned()).contains("no position of"));
        assert!(refuses(&|h| h.elements.push(h.elements[3].clone())).contains("two elements have the id"));
        assert!(refuses(&|h| h.elements.retain(|e| e.id != "battery")).contains("A battery or coil is not known yet"));
        assert!(refuses(&|h| set(h, "main.wire", |e| e.to = e.from.clone())).contains("same point"));
        assert!(refuses(&|h| h.earth = "nowhere".to_owned()).contains("no element ends at nowhere"));
    }

    #[test]
    fn a_part_in_the_air_a_missing_earth_and_opposed_batteries_are_findings() {
        let mut harness = sound();
        let mut stray = harness.element("tail").unwrap().clone();
        (stray.id, stray.from, stray.to) = ("stray".to_owned(), "a".to_owned(), "b".to_owned());
        harness.elements.push(stray);
        assert_eq!(codes(&harness), ["harness.floating"]);

        let mut harness = sound();
        harness.elements.retain(|element| !element.id.starts_with("earth.frame"));
        assert!(codes(&harness).contains(&"harness.no-earth"));

        let mut harness = sound();
        let mut second = harness.element("battery").unwrap().clone();
        second.id = "second".to_owned();
        second.component = Component::Battery { emf_volts: 6.3, internal_ohms: 0.02 };
        harness.elements.push(second);
        assert_eq!(codes(&harness), ["harness.sources-in-conflict"]);
    }
}
