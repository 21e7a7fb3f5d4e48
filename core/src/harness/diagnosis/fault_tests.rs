//! Every fault in every position of every template settles, and the well-known ones look as they should.

use super::*;
use crate::harness::solver::few_settings;
use crate::harness::{Harness, Setting, TEMPLATES, every_setting, solve, template};

/// Settles every fault of a template in these settings; returns how many were worked out.
fn settles(id: &str, settings: impl Fn(&Harness) -> Vec<Setting>) -> usize {
    let harness = template(id, 12.0).unwrap();
    let mut solved = 0;
    for fault in fault_places(&harness) {
        let faulty = with_fault(&harness, &fault).unwrap();
        for setting in settings(&faulty) {
            let point = solve(&faulty, &setting);
            let point = point.unwrap_or_else(|why| panic!("{id}, {}, {}: {why}", fault.id(), setting.id()));
            assert!(point.nodes.iter().all(|node| node.volts.is_finite() && node.volts.abs() < 60.0));
            solved += 1;
        }
    }
    solved
}

#[test]
fn every_template_settles_in_every_position_with_any_one_fault() {
    let mut solved = 0;
    for template in TEMPLATES.iter().filter(|template| !template.id.ends_with("whole")) {
        solved += settles(template.id, every_setting);
    }
    assert!(solved > 5000, "{solved}");
}

#[test]
fn the_whole_machine_settles_with_any_one_fault_and_any_one_switch_moved() {
    assert!(settles("whole", |harness| few_settings(harness).into_iter().step_by(4).collect()) > 1000);
}

#[test]
fn every_kind_of_fault_has_its_places() {
    let faults = fault_places(&template("whole", 12.0).unwrap());
    let has = |kind: fn(&Fault) -> bool| faults.iter().any(kind);
    assert!(has(|fault| matches!(fault, Fault::Open { .. })));
    assert!(has(|fault| matches!(fault, Fault::BadJoint { .. })));
    assert!(has(|fault| matches!(fault, Fault::ShortToFrame { .. })));
    assert!(has(|fault| matches!(fault, Fault::Swapped { .. })));
    assert!(has(|fault| matches!(fault, Fault::Reversed { .. })));
    assert!(has(|fault| matches!(fault, Fault::WrongLamp { .. })));
    assert!(has(|fault| matches!(fault, Fault::MissingEarth { .. })));
    assert!(has(|fault| matches!(fault, Fault::StuckContact { .. })));
    assert!(has(|fault| matches!(fault, Fault::DeadContact { .. })));
    assert!(has(|fault| matches!(fault, Fault::WeakBattery { .. })));
}

fn seen(id: &str, fault: &Fault, setting: &[(&str, &str)]) -> Vec<String> {
    let harness = template(id, 12.0).unwrap();
    symptoms(&harness, fault, &Setting::of(setting))
        .unwrap()
        .into_iter()
        .map(|symptom| symptom.text.english())
        .collect()
}

#[test]
fn a_tail_unit_without_earth_finds_its_way_back_through_the_other_filament_only_when_there_is_one() {
    let fault = Fault::MissingEarth { element: "rear.earth".to_owned() };
    let braking = [("key", "on"), ("rear brake", "pressed")];
    // Both filaments are fed from the same live: neither finds a way back.
    assert_eq!(
        seen("stop-lamp", &fault, &braking),
        ["Tail lamp: off instead of full", "Stop lamp: off instead of full"]
    );
    // On the whole machine with the lights on and the brake free, the tail lamp looks for earth through the stop filament.
    let night = [("key", "on"), ("lights", "position")];
    assert!(seen("whole", &fault, &night).contains(&"Tail lamp: off instead of full".to_owned()));
}

#[test]
fn a_headlamp_without_earth_feeds_the_other_filament_and_the_tell_tale_backwards() {
    let fault = Fault::MissingEarth { element: "head.earth".to_owned() };
    let seen = seen("lighting", &fault, &[("key", "on"), ("lights", "head")]);
    assert!(seen.contains(&"Headlamp, dipped: off instead of full".to_owned()), "{seen:?}");
    assert!(
        seen.iter().any(|text| text.starts_with("Main-beam tell-tale:") && text.ends_with("instead of off")),
        "{seen:?}"
    );
}

#[test]
fn a_chafed_live_blows_the_main_fuse_and_everything_is_dead() {
    let fault = Fault::ShortToFrame { point: "lights in".to_owned() };
    let seen = seen("lighting", &fault, &[("key", "on"), ("lights", "head")]);
    assert!(seen.contains(&"Main fuse blows".to_owned()), "{seen:?}");
    assert!(seen.contains(&"Headlamp, dipped: off instead of full".to_owned()));
}

#[test]
fn swapped_plug_contacts_of_the_headlamp_exchange_the_beams() {
    let fault = Fault::Swapped { one: "head.low.feed.plug".to_owned(), other: "head.high.feed.plug".to_owned() };
    let seen = seen("lighting", &fault, &[("key", "on"), ("lights", "head")]);
    assert!(seen.contains(&"Headlamp, main beam: full instead of off".to_owned()), "{seen:?}");
}

#[test]
fn a_stuck_brake_switch_lights_the_stop_lamp_and_a_dead_one_hides_until_that_brake_is_used() {
    let stuck = Fault::StuckContact { element: "brake.rear".to_owned() };
    assert_eq!(seen("stop-lamp", &stuck, &[("key", "on")]), ["Stop lamp: full instead of off"]);
    let dead = Fault::DeadContact { element: "brake.front".to_owned() };
    assert_eq!(seen("stop-lamp", &dead, &[("key", "on")]), Vec::<String>::new());
    let both = [("key", "on"), ("front brake", "pulled"), ("rear brake", "pressed")];
    assert_eq!(seen("stop-lamp", &dead, &both), Vec::<String>::new());
    let front = [("key", "on"), ("front brake", "pulled")];
    assert_eq!(seen("stop-lamp", &dead, &front), ["Stop lamp: off instead of full"]);
}

#[test]
fn a_burnt_out_indicator_stops_the_flasher_and_a_corroded_cable_slows_the_starter() {
    let out = Fault::Open { element: "left.rear".to_owned() };
    let seen_left = seen("indicators-two-pilots", &out, &[("key", "on"), ("indicators", "left")]);
    assert!(seen_left.contains(&"Flasher does not flash".to_owned()), "{seen_left:?}");
    let cable = Fault::BadJoint { element: "cable.battery".to_owned(), ohms: 0.1 };
    let seen_start = seen("starter", &cable, &[("key", "on"), ("start button", "pressed")]);
    assert_eq!(seen_start, ["Starter motor: dim instead of full"]);
}

#[test]
fn a_fault_where_it_cannot_be_is_refused() {
    let harness = template("horn", 12.0).unwrap();
    let refused = |fault: Fault| with_fault(&harness, &fault).unwrap_err().english();
    assert!(refused(Fault::Open { element: "sidecar".to_owned() }).contains("no element with the id sidecar"));
    assert!(refused(Fault::StuckContact { element: "horn".to_owned() }).contains("no contacts"));
    assert!(refused(Fault::ShortToFrame { point: "frame".to_owned() }).contains("the frame itself"));
    assert!(refused(Fault::WrongLamp { element: "horn".to_owned(), watts: 5.0 }).contains("is no lamp"));
}
