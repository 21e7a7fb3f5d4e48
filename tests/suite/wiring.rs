//! The wiring of the demo bike through the door: a circuit adapted, a fault planted and found, everything taken back.

use layshaft_core::faults::{FaultAsk, SearchStop};
use layshaft_core::harness::{Fault, HarnessAsk, LampLook, OperatingPoint, Setting, look_id, solve, with_fault};
use layshaft_core::message::Message;
use layshaft_core::record::{Component, ElementChange, Evidence, FaultClosing, Trouble};
use layshaft_door::Bench;
use layshaft_door::command::{AdaptCircuit, AnswerFault, CloseFault, DemoBike, LoadDemo, StartFault, UndoFaultStep};

use crate::{English, SATURDAY, act, at};

fn demo() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    bench
}

fn ask(circuit: &str) -> HarnessAsk {
    HarnessAsk { circuit: Some(circuit.to_owned()), ..HarnessAsk::default() }
}

fn adapt(element: &str, change: ElementChange) -> AdaptCircuit {
    AdaptCircuit { circuit: "lighting".to_owned(), element: element.to_owned(), change }
}

#[test]
fn the_whole_machine_of_the_demo_is_solved_and_drawn() {
    let bench = demo();
    let night = Setting::of(&[("key", "on"), ("lights", "head")]);
    let sheet = bench.harness(&HarnessAsk { setting: night, ..ask("whole") }, &at(SATURDAY)).unwrap();
    let point = sheet.point.unwrap();
    assert_eq!((point.look("head.low"), point.look("stop")), (Some(LampLook::Full), Some(LampLook::Off)));
    assert!(sheet.findings.is_empty(), "{:?}", sheet.findings);
    assert!(sheet.diagram.width == 390.0 && sheet.diagram.boxes.len() > 30 && sheet.places.len() > 200);
}

#[test]
fn a_wire_of_the_owners_is_kept_and_an_empty_change_brings_the_template_back() {
    let mut bench = demo();
    let section =
        |bench: &Bench| match bench.harness(&ask("lighting"), &at(SATURDAY)).unwrap().harness.element("main.wire") {
            Some(layshaft_core::harness::Element { component: Component::Wire { section_mm2, .. }, .. }) => {
                *section_mm2
            }
            other => panic!("{other:?}"),
        };
    let thin = ElementChange { section_mm2: Some(1.0), colour: Some("RD/YE".to_owned()), ..ElementChange::default() };
    act(&mut bench, adapt("main.wire", thin), SATURDAY).unwrap();
    assert_eq!(section(&bench), 1.0);
    act(&mut bench, adapt("main.wire", ElementChange::default()), SATURDAY).unwrap();
    assert_eq!(section(&bench), 2.5);
}

#[test]
fn a_part_that_is_not_there_is_listed_and_put_back_with_the_rest_of_its_changes() {
    let mut bench = demo();
    let sheet = |bench: &Bench| bench.harness(&ask("lighting"), &at(SATURDAY)).unwrap();
    let off = ElementChange { taken_off: Some(true), ohms: Some(0.5), ..ElementChange::default() };
    act(&mut bench, adapt("earth.frame", off), SATURDAY).unwrap();
    let listed = sheet(&bench).not_there;
    assert!(sheet(&bench).harness.element("earth.frame").is_none() && listed.len() == 1, "{listed:?}");
    act(&mut bench, adapt(&listed[0].element, listed[0].change.clone()), SATURDAY).unwrap();
    let back = sheet(&bench);
    let strap = &back.harness.element("earth.frame").unwrap().component;
    assert!(matches!(strap, Component::Strap { ohms: 0.5 }), "{strap:?}");
    assert!(back.not_there.is_empty());
}

#[test]
fn bad_wiring_is_refused_or_said_plainly() {
    let mut bench = demo();
    let before: Vec<_> = bench.facts().collect();
    for (change, says) in [
        (ElementChange { length_metres: Some(0.0), ..ElementChange::default() }, "0 m is outside"),
        (ElementChange { colour: Some("QQ".to_owned()), ..ElementChange::default() }, "QQ is no colour code"),
        (ElementChange { to: Some("battery +".to_owned()), ..ElementChange::default() }, "same point"),
    ] {
        let refusal = act(&mut bench, adapt("main.wire", change), SATURDAY).unwrap_err();
        assert!(refusal.message.english().contains(says), "{}", refusal.message.english());
    }
    assert_eq!(bench.facts().collect::<Vec<_>>(), before, "nothing is stored");

    let off = ElementChange { taken_off: Some(true), ..ElementChange::default() };
    act(&mut bench, adapt("earth.frame", off), SATURDAY).unwrap();
    let second = ElementChange {
        from: Some("battery +".to_owned()),
        to: Some("battery -".to_owned()),
        component: Some(Component::Battery { emf_volts: 6.3, internal_ohms: 0.02 }),
        ..ElementChange::default()
    };
    act(&mut bench, adapt("second", second), SATURDAY).unwrap();
    let stray = ElementChange {
        from: Some("nowhere".to_owned()),
        to: Some("nothing".to_owned()),
        component: Some(Component::Load { watts: 5.0, rated_volts: 12.0 }),
        ..ElementChange::default()
    };
    act(&mut bench, adapt("stray", stray), SATURDAY).unwrap();
    let sheet = bench.harness(&ask("lighting"), &at(SATURDAY)).unwrap();
    for (code, says) in [
        ("harness.no-earth", "has no way back to battery -: fit the earth strap"),
        ("harness.sources-in-conflict", "work against each other: disconnect one of them"),
        ("harness.floating", "Connected to nothing that leads to the battery or coil: nowhere, nothing"),
    ] {
        let said =
            sheet.findings.iter().any(|finding| finding.code.as_str() == code && finding.text.english().contains(says));
        assert!(said, "{code}: {:?}", sheet.findings);
    }
    assert!(sheet.diagram.floating.contains(&"stray".to_owned()));
}

/// What the faulty machine answers to the question.
fn answer(bench: &Bench, search: &str, points: &[(Message, OperatingPoint)]) -> Option<Evidence> {
    let ask = FaultAsk { search: Some(search.to_owned()) };
    let question = bench.fault(&ask, &at(SATURDAY)).unwrap().state.unwrap().question?;
    let position = question.position.unwrap();
    let (_, point) = points.iter().find(|(spoken, _)| *spoken == position).unwrap();
    let name = question.check.split(" / ").next().unwrap();
    let check = question.check.clone();
    Some(match name.strip_prefix("look ") {
        Some(lamp) => Evidence::Seen { check, outcome: look_id(point.look(lamp).unwrap()).to_owned() },
        None => {
            let volts = point.between(name.strip_prefix("volts ").unwrap(), "battery -").unwrap();
            Evidence::Read { check, volts: (volts * 100.0).round() / 100.0 }
        }
    })
}

#[test]
fn a_planted_fault_is_found_through_the_door_undone_and_closed() {
    let mut bench = demo();
    let harness = bench.harness(&ask("stop-lamp"), &at(SATURDAY)).unwrap().harness;
    let fault = Fault::MissingEarth { element: "rear.earth".to_owned() };
    let faulty = with_fault(&harness, &fault).unwrap();
    let settings: [&[(&str, &str)]; 3] =
        [&[("key", "on")], &[("key", "on"), ("front brake", "pulled")], &[("key", "on"), ("rear brake", "pressed")]];
    let points: Vec<_> = settings
        .iter()
        .map(|pairs| (Setting::of(pairs).spoken(), solve(&faulty, &Setting::of(pairs)).unwrap()))
        .collect();
    let trouble = Trouble::Wiring { circuit: "stop-lamp".to_owned(), reworked: None };
    let search = act(&mut bench, StartFault { trouble }, SATURDAY).unwrap().made.unwrap();
    let mut steps = 0;
    while let Some(answer) = answer(&bench, &search, &points) {
        act(&mut bench, AnswerFault { search: search.clone(), answer }, SATURDAY).unwrap();
        steps += 1;
        assert!(steps < 15);
    }
    let state = |bench: &Bench| bench.fault(&FaultAsk::default(), &at(SATURDAY)).unwrap().state.unwrap();
    let found = state(&bench);
    assert_eq!(found.stop, SearchStop::Settled);
    let settled = found.settled.unwrap();
    assert!(settled.suspects.contains(&fault.spoken(&harness)), "{settled:?}");

    act(&mut bench, UndoFaultStep { search: search.clone() }, SATURDAY).unwrap();
    assert_eq!(state(&bench).answers.len(), steps - 1);
    let closing = FaultClosing::Cured { cure: settled.cure.english() };
    act(&mut bench, CloseFault { search: search.clone(), closing, learned: None }, SATURDAY).unwrap();
    assert!(bench.fault(&FaultAsk::default(), &at(SATURDAY)).unwrap().state.is_none());
    let answer = Evidence::Seen { check: "look".to_owned(), outcome: "off".to_owned() };
    assert!(
        act(&mut bench, AnswerFault { search, answer }, SATURDAY).unwrap_err().message.english().contains("has ended")
    );
}

#[test]
fn an_answer_that_fits_nobody_asks_for_the_reading_again_and_loses_nothing() {
    let mut bench = demo();
    let trouble = Trouble::Wiring { circuit: "horn".to_owned(), reworked: None };
    let search = act(&mut bench, StartFault { trouble }, SATURDAY).unwrap().made.unwrap();
    let check = "volts switched live / key on".to_owned();
    let answer = Evidence::Read { check, volts: 27.0 };
    act(&mut bench, AnswerFault { search, answer }, SATURDAY).unwrap();
    let state = bench.fault(&FaultAsk::default(), &at(SATURDAY)).unwrap().state.unwrap();
    assert!(state.answers[0].surprising);
    assert!(
        state.findings.iter().any(|finding| finding.text.english().contains("recheck this first")),
        "{:?}",
        state.findings
    );
}

#[test]
fn a_reading_beyond_the_meter_is_refused_with_its_range_and_the_search_stands_as_it_was() {
    let mut bench = demo();
    let trouble = Trouble::Wiring { circuit: "horn".to_owned(), reworked: None };
    let search = act(&mut bench, StartFault { trouble }, SATURDAY).unwrap().made.unwrap();
    let before: Vec<_> = bench.facts().collect();
    let check = "volts switched live / key on".to_owned();
    for (volts, says) in
        [(230.0, "230 V is outside −40 to 40 V"), (-41.0, "−41 V is outside"), (f64::NAN, "−40 to 40 V")]
    {
        let answer = Evidence::Read { check: check.clone(), volts };
        let refusal = act(&mut bench, AnswerFault { search: search.clone(), answer }, SATURDAY).unwrap_err();
        assert!(refusal.message.english().contains(says), "{}", refusal.message.english());
    }
    assert_eq!(bench.facts().collect::<Vec<_>>(), before, "nothing is stored");
}

#[test]
fn the_moped_without_a_battery_has_circuits_of_its_coil_and_nothing_else() {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo { demo: Some(DemoBike::OrrinWren50) }, SATURDAY).unwrap();
    let asked = |setting: &[(&str, &str)]| {
        let ask = HarnessAsk { setting: Setting::of(setting), ..HarnessAsk::default() };
        bench.harness(&ask, &at(SATURDAY)).unwrap()
    };
    let sheet = asked(&[("engine speed", "fast"), ("lights", "head")]);
    let offered: Vec<&str> = sheet.circuits.iter().map(|card| card.circuit.as_str()).collect();
    assert_eq!(offered, ["coil-lighting", "coil-horn", "coil-whole", "ignition-stop"]);
    assert!(sheet.alternating && sheet.harness.nodes().iter().all(|point| !point.contains("battery")));
    let point = sheet.point.unwrap();
    assert_eq!((point.look("head.low"), point.look("tail")), (Some(LampLook::Full), Some(LampLook::Full)));
    assert!(sheet.findings.iter().any(|finding| finding.text.english().contains("V~")), "{:?}", sheet.findings);
    let dark = asked(&[("lights", "head")]).point.unwrap();
    assert_eq!(dark.look("head.low"), Some(LampLook::Off), "no light with the engine off");
}
