//! A case from a harness: every fault at every place is a suspect, and the solver says what each would show.
//!
//! Method: the operating point of the harness with each fault in each setting (see `harness`); a lamp check has the look of
//! the lamp as its outcome, a voltage check the groups into which the predicted voltages fall.

use layshaft_wire::wire;

use super::belief::{ON_BATTERY, ON_COIL, is_reversed};
use super::case::{Check, CheckOutcome, Cover, Metering, Suspect, TroubleCase};
use super::message::{CircuitCheckMessage, FaultsMessage};
use crate::bounds;
use crate::error::Refused;
use crate::harness::{Fault, Harness, LampLook, Predictions, Setting, fault_places, look_id, look_spoken};
use crate::message::{ListStyle, Message};
use crate::record::Component;
use crate::units::Unit;

/// Share of answers that are mistaken (a lamp misjudged, a probe slipped). Our judgement.
const MISTAKEN: f64 = 0.03;
/// The same for a reading in volts: as small as the share of slips with which a reading is weighed.
const MISREAD: f64 = super::belief::SLIP;
/// Predicted voltages closer than so many tolerances of a reading belong to one answer.
const APART: f64 = 2.0;
/// Range of the meter, volts.
const METER_RANGE: f64 = 40.0;
/// The same on alternating current: a coil without a load gives many times what its lamps are made for.
const COIL_RANGE: f64 = 150.0;

/// A point that can be reached with a probe.
#[wire]
pub struct Probe {
    /// The point.
    pub point: String,
    /// Ids of the covers that must be off to reach it.
    pub covers: Vec<String>,
    /// Minutes to measure there.
    pub minutes: f64,
    /// Where it is.
    pub place: Option<Message>,
}

/// What to make a case from.
#[wire]
pub struct WiringAsk {
    /// What is wrong, in words.
    pub complaint: String,
    /// The harness as it should be.
    pub harness: Harness,
    /// The switch positions that the checks use.
    pub settings: Vec<Setting>,
    /// The points that can be reached.
    pub probes: Vec<Probe>,
    /// The covers.
    pub covers: Vec<Cover>,
    /// Age of the harness, years: joints corrode with age.
    pub age_years: f64,
    /// Whether somebody has worked on the wiring lately: then wrong connections are likelier.
    pub reworked: bool,
}

/// The case of a harness: suspects, lamp checks and voltage checks. Checks that tell nothing apart are left out.
pub fn wiring_case(ask: &WiringAsk) -> Result<TroubleCase, Refused> {
    case_of_faults(ask, &fault_places(&ask.harness))
}

/// The same with no other suspects than these.
pub(super) fn case_of_faults(ask: &WiringAsk, faults: &[Fault]) -> Result<TroubleCase, Refused> {
    bounds::HARNESS_AGE.check(ask.age_years)?;
    let nodes = ask.harness.nodes();
    for probe in &ask.probes {
        if !nodes.contains(&probe.point.as_str()) {
            return Err(Refused::Unknown { what: FaultsMessage::WhatPoint.into(), id: probe.point.clone() });
        }
    }
    let predicted = Predictions::of(&ask.harness, faults, &ask.settings)?;
    let mut checks = Vec::new();
    for (which, setting) in ask.settings.iter().enumerate() {
        for (at, element) in ask.harness.elements.iter().enumerate() {
            checks.extend(lamp_check(&predicted.looks(which, at), setting, &element.id, &element.label));
        }
        for probe in &ask.probes {
            checks.extend(voltage_check(ask, predicted.volts(which, &probe.point), setting, probe));
        }
    }
    let suspects = faults.iter().map(|fault| suspect(ask, fault)).collect();
    Ok(TroubleCase { name: Message::as_entered(&ask.complaint), suspects, covers: ask.covers.clone(), checks })
}

fn suspect(ask: &WiringAsk, fault: &Fault) -> Suspect {
    let (weight, try_minutes) = weight(ask, fault);
    let (label, cure) = (fault.spoken(&ask.harness), cure(&ask.harness, fault));
    let job = Some(job(&ask.harness, fault).to_owned());
    Suspect { id: fault.id(), label, weight, cure, try_minutes, job, caution: None }
}

/// How likely a kind of fault is against the others, and minutes to try its cure. Judgement, editable in the case.
fn weight(ask: &WiringAsk, fault: &Fault) -> (f64, f64) {
    let aged = 1.0 + ask.age_years / 10.0;
    let rework = if ask.reworked { 4.0 } else { 0.3 };
    let component = |id: &str| ask.harness.element(id).map(|element| &element.component);
    match fault {
        Fault::MissingEarth { .. } => (2.0 * aged, 10.0),
        Fault::BadJoint { .. } => (aged, 10.0),
        Fault::Open { element } => match component(element) {
            Some(Component::Filament { .. }) => (8.0, 5.0),
            Some(Component::Fuse { .. }) => (4.0, 2.0),
            Some(Component::Joint { .. }) => (1.5 * aged, 8.0),
            Some(Component::Wire { .. }) => (1.0, 30.0),
            _ => (1.5, 30.0),
        },
        Fault::ShortToFrame { .. } => (0.5, 45.0),
        Fault::Swapped { .. } | Fault::Reversed { .. } => (rework, 10.0),
        Fault::WrongLamp { .. } => (rework, 5.0),
        Fault::StuckContact { .. } => (1.0, 20.0),
        Fault::DeadContact { .. } => (2.0 * aged, 20.0),
        Fault::WeakBattery { .. } => (6.0, 15.0),
    }
}

/// The ready-made job in which a fault is put right: the same for everything wrong with one element.
fn job(harness: &Harness, fault: &Fault) -> &'static str {
    let element = match fault {
        Fault::ShortToFrame { .. } | Fault::Swapped { .. } => None,
        Fault::Open { element }
        | Fault::BadJoint { element, .. }
        | Fault::MissingEarth { element }
        | Fault::StuckContact { element }
        | Fault::DeadContact { element }
        | Fault::Reversed { element }
        | Fault::WrongLamp { element, .. }
        | Fault::WeakBattery { element, .. } => harness.element(element),
    };
    match element.map(|element| &element.component) {
        Some(Component::Battery { .. }) => "battery-fit",
        Some(Component::Contact { .. }) => "horn-switches",
        Some(Component::Filament { .. } | Component::LedDriven { .. }) => "lamp-swap",
        _ => "wiring-repair",
    }
}

/// What puts a fault right. Everything wrong with one element is put right in one go.
fn cure(harness: &Harness, fault: &Fault) -> Message {
    let label = |id: &str| harness.element(id).map_or(id, |element| element.label.as_str()).to_owned();
    let said = match fault {
        Fault::ShortToFrame { point } => CircuitCheckMessage::CureShort { point: point.clone() },
        Fault::Swapped { one, other } => CircuitCheckMessage::CureSwapped { one: label(one), other: label(other) },
        Fault::Reversed { element } => CircuitCheckMessage::CureReversed { element: label(element) },
        Fault::WrongLamp { element, .. } => CircuitCheckMessage::CureRenew { element: label(element) },
        Fault::Open { element }
        | Fault::BadJoint { element, .. }
        | Fault::MissingEarth { element }
        | Fault::StuckContact { element }
        | Fault::DeadContact { element }
        | Fault::WeakBattery { element, .. } => match harness.element(element).map(|element| &element.component) {
            Some(Component::Joint { .. } | Component::Strap { .. }) => {
                CircuitCheckMessage::CureClean { element: label(element) }
            }
            _ => CircuitCheckMessage::CureRenew { element: label(element) },
        },
    };
    said.into()
}

/// A look at one lamp; none when every suspect shows it alike.
fn lamp_check(looks: &[Option<LampLook>], setting: &Setting, id: &str, label: &str) -> Option<Check> {
    let mut seen: Vec<LampLook> = looks.iter().flatten().copied().collect();
    seen.sort();
    seen.dedup();
    if seen.len() < 2 {
        return None;
    }
    let outcome = |look: &LampLook| CheckOutcome { id: look_id(*look).to_owned(), label: look_spoken(*look) };
    let lines = looks
        .iter()
        .map(|look| line(MISTAKEN, seen.len(), look.and_then(|look| seen.iter().position(|at| *at == look))));
    Some(Check {
        id: format!("look {id} / {}", setting.id()),
        label: CircuitCheckMessage::Look { setting: setting.spoken(), lamp: label.to_owned() }.into(),
        place: None,
        position: Some(setting.spoken()),
        outcomes: seen.iter().map(outcome).collect(),
        minutes: 0.5,
        danger_minutes: 0.0,
        covers: Vec::new(),
        free_look: true,
        after: Vec::new(),
        caution: caution(setting, None),
        likelihoods: lines.collect(),
        metering: None,
    })
}

/// A voltage against the point that all are measured from; none when every suspect predicts the same.
fn voltage_check(
    ask: &WiringAsk,
    predicted_volts: Vec<Option<f64>>,
    setting: &Setting,
    probe: &Probe,
) -> Option<Check> {
    let (setting_spoken, from, to) = (setting.spoken(), probe.point.clone(), ask.harness.earth.clone());
    let (measure, tolerance_share, range_volts) = if ask.harness.is_alternating() {
        (CircuitCheckMessage::MeasureAlternating { setting: setting_spoken, from, to }, ON_COIL, COIL_RANGE)
    } else {
        (CircuitCheckMessage::Measure { setting: setting_spoken, from, to }, ON_BATTERY, METER_RANGE)
    };
    let groups = groups(&predicted_volts, tolerance_share);
    if groups.len() < 2 {
        return None;
    }
    let outcome = |(at, (low, high)): (usize, &(f64, f64))| CheckOutcome {
        id: format!("group {at}"),
        label: if high - low < 0.1 && is_reversed(*low) {
            CircuitCheckMessage::Reversed { volts: Unit::Volt.of(*low) }.into()
        } else if high - low < 0.1 {
            CircuitCheckMessage::About { volts: Unit::Volt.of(low.abs()) }.into()
        } else {
            CircuitCheckMessage::Between { low: Unit::Volt.of(*low), high: Unit::Volt.of(*high) }.into()
        },
    };
    let group = |volts: f64| groups.iter().position(|(low, high)| (*low..=*high).contains(&volts));
    Some(Check {
        id: format!("volts {} / {}", probe.point, setting.id()),
        label: measure.into(),
        place: probe.place.clone(),
        position: Some(setting.spoken()),
        outcomes: groups.iter().enumerate().map(outcome).collect(),
        minutes: probe.minutes,
        danger_minutes: 0.0,
        covers: probe.covers.clone(),
        free_look: false,
        after: Vec::new(),
        caution: caution(setting, Some((&ask.harness, &probe.point))),
        likelihoods: predicted_volts.iter().map(|volts| line(MISREAD, groups.len(), volts.and_then(group))).collect(),
        metering: Some(Metering { predicted_volts, tolerance_share, range_volts }),
    })
}

/// What can hurt in a position, or at a point.
fn caution(setting: &Setting, at_point: Option<(&Harness, &str)>) -> Option<Message> {
    let at = |switch: &str, positions: &[&str]| {
        setting.positions.iter().any(|at| at.switch == switch && positions.contains(&at.position.as_str()))
    };
    let starter = at("start button", &["pressed"]).then_some(CircuitCheckMessage::CautionStarter);
    let engine = at("engine speed", &["idle", "fast"]).then_some(CircuitCheckMessage::CautionEngine);
    let probe = at_point.map(|(harness, point)| match point {
        _ if harness.is_alternating() => CircuitCheckMessage::CautionProbeCoil,
        "battery +" | "fuse in" | "solenoid in" => CircuitCheckMessage::CautionNoFuse,
        _ => CircuitCheckMessage::CautionProbe,
    });
    let said: Vec<Message> = [starter, engine, probe].into_iter().flatten().map(Into::into).collect();
    (!said.is_empty()).then(|| Message::joined(ListStyle::Sentences, said))
}

/// The likelihoods of the outcomes when one is predicted; all alike when none is.
fn line(mistaken: f64, outcomes: usize, predicted: Option<usize>) -> Vec<f64> {
    let count = outcomes as f64;
    let Some(predicted) = predicted else { return vec![1.0 / count; outcomes] };
    let other = mistaken / (count - 1.0);
    (0..outcomes).map(|at| if at == predicted { 1.0 - mistaken } else { other }).collect()
}

/// The predicted voltages in groups with gaps between them, lowest first: least and greatest of each, volts.
fn groups(volts: &[Option<f64>], tolerance_share: f64) -> Vec<(f64, f64)> {
    let mut sorted: Vec<f64> = volts.iter().flatten().copied().collect();
    sorted.sort_by(f64::total_cmp);
    let mut groups: Vec<(f64, f64)> = Vec::new();
    for volt in sorted {
        match groups.last_mut() {
            Some((_, high)) if volt - *high <= APART * super::belief::tolerance(volt, tolerance_share) => *high = volt,
            _ => groups.push((volt, volt)),
        }
    }
    groups
}
