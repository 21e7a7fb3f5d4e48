//! What can be got at on a small motorcycle: for each circuit the switch positions that show something, and for each point
//! where it is, what is in the way, and how long a measurement takes.
//!
//! Minutes are our judgement for a commuter of the age; the owner's hands decide.

use super::case::Cover;
use super::circuit::{Probe, WiringAsk};
use super::message::ReachMessage;
use crate::harness::{Harness, Setting};

/// Circuits in which a fault can be searched, with the positions that are tried.
type Positions = &'static [&'static [(&'static str, &'static str)]];
const CIRCUITS: [(&str, Positions); 12] = [
    ("lighting", &[&[("key", "on"), ("lights", "head")], &[("key", "on"), ("lights", "head"), ("dip", "high")]]),
    (
        "coil-lighting",
        &[
            &[("engine speed", "fast"), ("lights", "head")],
            &[("engine speed", "fast"), ("lights", "head"), ("dip", "high")],
        ],
    ),
    ("coil-stop-lamp", &[&[("engine speed", "fast")], &[("engine speed", "fast"), ("rear brake", "pressed")]]),
    ("coil-horn", &[&[("engine speed", "fast")], &[("engine speed", "fast"), ("horn button", "pressed")]]),
    (
        "stop-lamp",
        &[&[("key", "on")], &[("key", "on"), ("front brake", "pulled")], &[("key", "on"), ("rear brake", "pressed")]],
    ),
    ("indicators-one-pilot", &[&[("key", "on"), ("indicators", "left")], &[("key", "on"), ("indicators", "right")]]),
    ("indicators-two-pilots", &[&[("key", "on"), ("indicators", "left")], &[("key", "on"), ("indicators", "right")]]),
    ("horn", &[&[("key", "on")], &[("key", "on"), ("horn button", "pressed")]]),
    ("neutral", &[&[("key", "on")], &[("key", "on"), ("gearbox", "in gear")]]),
    (
        "starter",
        &[
            &[("key", "on")],
            &[("key", "on"), ("start button", "pressed")],
            &[("key", "on"), ("start button", "pressed"), ("gearbox", "in gear"), ("clutch lever", "pulled")],
        ],
    ),
    ("charging", &[&[("key", "on")], &[("key", "on"), ("engine speed", "fast")]]),
    ("charging-three-phase", &[&[("key", "on")], &[("key", "on"), ("engine speed", "fast")]]),
];

/// Covers of a small motorcycle: id, in words, minutes off and on.
const COVERS: [(&str, ReachMessage, f64); 4] = [
    ("headlamp", ReachMessage::HeadlampOut, 6.0),
    ("seat", ReachMessage::SeatOff, 2.0),
    ("side", ReachMessage::SidePanelOff, 3.0),
    ("lens", ReachMessage::LensOff, 3.0),
];

/// Words in the name of a point, where it is, and the cover in the way (none: an empty mark). The first that fits counts.
const PLACES: [(&[&str], ReachMessage, &str); 9] = [
    (&["battery", "fuse"], ReachMessage::AtBattery, "seat"),
    (&["flywheel", "coil feed"], ReachMessage::AtEngine, ""),
    (&["regulator", "solenoid", "coil", "starter", "lock", "ignition"], ReachMessage::BehindSidePanel, "side"),
    (&["flasher"], ReachMessage::AtFlasher, "seat"),
    (&["front body", "rear body", "front in", "rear in"], ReachMessage::InIndicator, "lens"),
    (&["tail", "stop", "rear"], ReachMessage::InRearLamp, "lens"),
    (&["horn"], ReachMessage::AtHorn, ""),
    (&["gearbox", "engine", "clutch"], ReachMessage::AtEngine, ""),
    (&["frame"], ReachMessage::OnFrame, ""),
];
/// Where everything else is: the plugs of switches and instruments.
const ELSEWHERE: (ReachMessage, &str) = (ReachMessage::InHeadlampShell, "headlamp");
/// Minutes for a measurement at a point within reach.
const MEASURE_MINUTES: f64 = 2.0;

/// Ids of the circuits in which a fault can be searched.
pub fn searchable() -> impl Iterator<Item = &'static str> {
    CIRCUITS.iter().map(|(mark, _)| *mark)
}

/// What to make a case from, for a circuit; none when it cannot be searched.
///
/// ```
/// use layshaft_core::faults::circuit_checks;
/// use layshaft_core::harness::template;
/// let ask = circuit_checks("horn", template("horn", 12.0).unwrap(), 40.0, false).unwrap();
/// assert_eq!(ask.settings.len(), 2);
/// ```
pub fn circuit_checks(mark: &str, harness: Harness, age_years: f64, reworked: bool) -> Option<WiringAsk> {
    let (_, positions) = CIRCUITS.iter().find(|(circuit, _)| *circuit == mark)?;
    let points = harness.nodes().into_iter().filter(|point| *point != harness.earth);
    let probes = points.map(probe).collect();
    let cover =
        |(id, label, minutes): (&str, ReachMessage, f64)| Cover { id: id.to_owned(), label: label.into(), minutes };
    Some(WiringAsk {
        complaint: harness.name.clone(),
        settings: positions.iter().map(|pairs| Setting::of(pairs)).collect(),
        probes,
        covers: COVERS.into_iter().map(cover).collect(),
        harness,
        age_years,
        reworked,
    })
}

fn probe(point: &str) -> Probe {
    let found = PLACES.iter().find(|(words, _, _)| words.iter().any(|word| point.contains(word)));
    let (place, cover) = found.map_or(ELSEWHERE, |(_, place, cover)| (*place, *cover));
    Probe {
        point: point.to_owned(),
        covers: if cover.is_empty() { Vec::new() } else { vec![cover.to_owned()] },
        minutes: MEASURE_MINUTES,
        place: Some(place.into()),
    }
}
