//! The answer of the wiring page: a circuit of the bike in a switch position, with or without a fault, and its drawing.

use layshaft_wire::wire;

use super::alternating::of_circuit;
use super::message::CircuitMessage;
use super::sources::harness_sources;
use crate::error::Refused;
use crate::harness::diagnosis::{Fault, Symptom, difference, fault_places, with_fault};
use crate::harness::drawing::{Diagram, layout};
use crate::harness::model::{Harness, NotThere, Setting, adapted, change_id, check_harness, not_there};
use crate::harness::solver::{OperatingPoint, Unsolved, solve};
use crate::harness::templates::{TEMPLATES, bike_circuit};
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Source, Standing, Weight};
use crate::record::Bike;
use crate::units::Unit;

/// Which circuit, in which position.
#[wire(lenient)]
pub struct HarnessAsk {
    /// Id of the circuit; left out: the first of those that the bike has, its lights.
    pub circuit: Option<String>,
    /// Switch positions that are not the resting ones; left out: every switch rests.
    #[wire(default)]
    pub setting: Setting,
    /// A fault to try.
    pub fault: Option<Fault>,
}

/// A circuit to choose.
#[wire]
pub struct CircuitCard {
    /// Its id.
    pub circuit: String,
    /// What it is.
    pub name: String,
    /// Elements that the owner changed.
    pub changed: u32,
}

/// A fault that can be tried.
#[wire]
pub struct FaultPlace {
    /// The fault.
    pub fault: Fault,
    /// In words.
    pub text: Message,
}

/// Volts lost on the way to and from a part that takes current.
#[wire]
pub struct WayDrop {
    /// Id of the part.
    pub element: String,
    /// In words.
    pub label: String,
    /// Lost between the source and the part, volts.
    pub feed_volts: f64,
    /// Lost between the part and the point that voltages are measured from, volts.
    pub earth_volts: f64,
    /// Whether both are within what is accepted.
    pub accepted: bool,
}

/// The wiring page.
#[wire]
pub struct HarnessAnswer {
    /// The circuits of the bike to choose from, and the one asked for.
    pub circuits: Vec<CircuitCard>,
    /// Id of this one.
    pub circuit: String,
    /// The circuit with the owner's changes and the bike's lamps; sound.
    pub harness: Harness,
    /// Whether a coil feeds it with alternating current: voltages and currents are effective values, read with the meter on V~.
    pub alternating: bool,
    /// The setting.
    pub setting: Setting,
    /// What the owner marked as not there, each with the change that puts it back.
    pub not_there: Vec<NotThere>,
    /// What it does; none when it did not settle.
    pub point: Option<OperatingPoint>,
    /// Volts lost on the way to each part that takes current.
    pub drops: Vec<WayDrop>,
    /// The fault that is tried, in words.
    pub fault: Option<Message>,
    /// What the fault shows in this position; empty: it hides.
    pub symptoms: Vec<Symptom>,
    /// The faults that can be tried.
    pub places: Vec<FaultPlace>,
    /// The drawing.
    pub diagram: Diagram,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// Where it comes from.
    pub sources: Vec<Source>,
}

/// Volts that may be lost before a part (switches and fuse with it), for every 12 V: a starter circuit's total.
const FEED_VOLTS: f64 = 0.5;
/// Volts that may be lost behind it, for every 12 V.
const EARTH_VOLTS: f64 = 0.1;
/// Currents below this lose nothing worth showing, amperes.
const LEAST_AMPERES: f64 = 0.02;

/// A circuit as it is on this bike, with the owner's changes; an unknown id is refused.
pub fn circuit_of(bike: &Bike, id: &str) -> Result<Harness, Refused> {
    adapted(drawn(bike, id)?, id, &bike.circuits)
}

/// The same before the owner changed anything.
fn drawn(bike: &Bike, id: &str) -> Result<Harness, Refused> {
    let unknown = || Refused::Unknown { what: CircuitMessage::WhatCircuit.into(), id: id.to_owned() };
    bike_circuit(&bike.standard, &bike.fitted, id).ok_or_else(unknown)
}

/// The wiring page of a bike. Nothing is stored.
pub fn harness_answer(bike: &Bike, ask: &HarnessAsk) -> Result<HarnessAnswer, Refused> {
    let suited = TEMPLATES.iter().filter(|template| template.suits(bike));
    let first = || suited.clone().next().map_or("lighting", |template| template.id).to_owned();
    let circuit = ask.circuit.clone().unwrap_or_else(first);
    let harness = circuit_of(bike, &circuit)?;
    let mut findings = check_harness(&harness)?;
    findings.extend(of_circuit(&bike.fitted.supply, &harness));
    harness.check_setting(&ask.setting)?;
    let faulty = ask.fault.as_ref().map(|fault| with_fault(&harness, fault)).transpose()?;
    let shown = faulty.as_ref().unwrap_or(&harness);
    let point = settled(solve(shown, &ask.setting), &mut findings)?;
    let mut symptoms = Vec::new();
    if faulty.is_some()
        && let Some(sound) = settled(solve(&harness, &ask.setting), &mut findings)?
        && let Some(point) = &point
    {
        symptoms = difference(&harness, &sound, point);
    }
    let drops = point.as_ref().map(|point| drops(shown, point)).unwrap_or_default();
    if let Some(point) = &point {
        findings.extend(point.findings.iter().cloned());
    }
    findings.extend(drops.iter().filter(|drop| !drop.accepted).map(|drop| {
        let text = CircuitMessage::LosesVolts {
            element: drop.label.clone(),
            before: Unit::Volt.of(drop.feed_volts),
            behind: Unit::Volt.of(drop.earth_volts),
            accepted_before: Unit::Volt.of(FEED_VOLTS),
            accepted_behind: Unit::Volt.of(EARTH_VOLTS),
        };
        Finding::new(FindingCode::HarnessDrop, Weight::Care, text)
    }));
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    let card = |id: &str, name: &str| CircuitCard {
        circuit: id.to_owned(),
        name: name.to_owned(),
        changed: changes(bike, id),
    };
    Ok(HarnessAnswer {
        circuits: TEMPLATES
            .iter()
            .filter(|template| template.suits(bike) || template.id == circuit)
            .map(|template| card(template.id, template.name()))
            .collect(),
        alternating: harness.is_alternating(),
        not_there: not_there(&drawn(bike, &circuit)?, &circuit, &bike.circuits),
        circuit,
        setting: ask.setting.clone(),
        point,
        drops,
        fault: ask.fault.as_ref().map(|fault| fault.spoken(&harness)),
        symptoms,
        places: fault_places(&harness)
            .into_iter()
            .map(|fault| FaultPlace { text: fault.spoken(&harness), fault })
            .collect(),
        diagram: layout(&harness),
        findings,
        sources: sources(&harness),
        harness,
    })
}

fn changes(bike: &Bike, circuit: &str) -> u32 {
    let prefix = change_id(circuit, "");
    u32::try_from(bike.circuits.keys().filter(|id| id.starts_with(&prefix)).count()).unwrap_or(u32::MAX)
}

/// The point, or nothing and a finding when the circuit did not settle: rather nothing than something wrong.
fn settled(
    point: Result<OperatingPoint, Unsolved>,
    findings: &mut Vec<Finding>,
) -> Result<Option<OperatingPoint>, Refused> {
    match point {
        Ok(point) => Ok(Some(point)),
        Err(Unsolved::Refused(refused)) => Err(*refused),
        Err(unsettled @ Unsolved::NotSettled { .. }) => {
            findings.push(Finding::new(FindingCode::HarnessNotSettled, Weight::Care, unsettled.message()));
            Ok(None)
        }
    }
}

fn drops(harness: &Harness, point: &OperatingPoint) -> Vec<WayDrop> {
    let gives = |volts: &f64| *volts > 0.1;
    let source = harness.elements.iter().find(|element| element.component.is_source());
    let Some(plus) = source.and_then(|source| point.between(&source.from, &harness.earth)).filter(gives) else {
        return Vec::new();
    };
    let scale = plus.max(1.0) / 12.6;
    let drop = |lamp: &crate::harness::solver::LampState| {
        let element = harness.element(&lamp.element)?;
        let amperes = point.flow(&lamp.element)?.amperes;
        if amperes.abs() < LEAST_AMPERES {
            return None;
        }
        let (near, far) = if amperes > 0.0 { (&element.from, &element.to) } else { (&element.to, &element.from) };
        let feed_volts = plus - point.between(near, &harness.earth)?;
        let earth_volts = point.between(far, &harness.earth)?;
        Some(WayDrop {
            element: lamp.element.clone(),
            label: lamp.label.clone(),
            feed_volts,
            earth_volts,
            accepted: feed_volts <= FEED_VOLTS * scale && earth_volts <= EARTH_VOLTS * scale,
        })
    };
    point.lamps.iter().filter_map(drop).collect()
}

fn sources(harness: &Harness) -> Vec<Source> {
    let mut sources = harness_sources();
    if harness.is_alternating() {
        sources.push(Source::new(CircuitMessage::SourceEffective, Standing::Computed));
    }
    sources.push(Source::new(CircuitMessage::SourceAcceptedLoss, Standing::SecondHand));
    sources
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;
    use crate::harness::solver::LampLook;
    use crate::record::ElementChange;

    fn ask(circuit: &str, setting: &[(&str, &str)], fault: Option<Fault>) -> HarnessAsk {
        HarnessAsk { circuit: Some(circuit.to_owned()), setting: Setting::of(setting), fault }
    }

    const NIGHT: [(&str, &str); 2] = [("key", "on"), ("lights", "head")];

    #[test]
    fn a_sound_circuit_lights_its_lamps_within_the_accepted_loss() {
        let sheet = harness_answer(&Bike::default(), &ask("lighting", &NIGHT, None)).unwrap();
        let point = sheet.point.unwrap();
        assert_eq!(point.look("head.low"), Some(LampLook::Full));
        assert!(sheet.drops.iter().all(|drop| drop.accepted && drop.feed_volts > 0.0), "{:?}", sheet.drops);
        assert!(sheet.findings.is_empty(), "{:?}", sheet.findings);
    }

    #[test]
    fn a_tried_fault_shows_its_symptoms_and_the_lost_volts() {
        let fault = Fault::BadJoint { element: "head.earth".to_owned(), ohms: 1.0 };
        let sheet = harness_answer(&Bike::default(), &ask("lighting", &NIGHT, Some(fault))).unwrap();
        assert!(sheet.symptoms.iter().any(|symptom| symptom.element == "head.low"), "{:?}", sheet.symptoms);
        let drop = sheet.drops.iter().find(|drop| drop.element == "head.low").unwrap();
        assert!(!drop.accepted && drop.earth_volts > 1.0);
        assert_eq!(sheet.harness.element("head.earth").unwrap().condition, None, "the circuit shown is the sound one");
    }

    #[test]
    fn the_owners_changes_count_and_are_counted() {
        let mut bike = Bike::default();
        let change = ElementChange { section_mm2: Some(0.5), ..ElementChange::default() };
        bike.circuits = BTreeMap::from([("lighting/head.low.feed.wire".to_owned(), change)]);
        let sheet = harness_answer(&bike, &ask("lighting", &NIGHT, None)).unwrap();
        let lighting = sheet.circuits.iter().find(|card| card.circuit == "lighting").unwrap();
        assert_eq!(lighting.changed, 1);
        let thin = sheet.drops.iter().find(|drop| drop.element == "head.low").unwrap().feed_volts;
        let sheet = harness_answer(&Bike::default(), &ask("lighting", &NIGHT, None)).unwrap();
        assert!(thin > sheet.drops.iter().find(|drop| drop.element == "head.low").unwrap().feed_volts);
    }

    #[test]
    fn bad_input_is_said_plainly() {
        let refused = |ask: &HarnessAsk| harness_answer(&Bike::default(), ask).unwrap_err().english();
        assert!(refused(&ask("toaster", &[], None)).contains("no circuit with the id toaster"));
        assert!(refused(&ask("horn", &[("key", "half")], None)).contains("no position of Key with the id half"));
        let fault = Fault::Open { element: "sidecar".to_owned() };
        assert!(refused(&ask("horn", &[], Some(fault))).contains("sidecar"));
    }
}
