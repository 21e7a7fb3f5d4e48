//! The invented bikes: each is loaded by the one command, and every page opens on each.

use std::collections::BTreeSet;

use layshaft_core::record::{ElectricalSystem, End, Indication, Side};
use layshaft_door::Bench;
use layshaft_door::command::{
    Command, DemoBike, DescribeBike, DescribePlace, LoadDemo, RecordBrake, RecordConsumer, RecordDrive, RecordFluid,
    RecordIndication, RecordPart, RecordSupply, RecordTightening, RecordWheel,
};
use layshaft_door::query::{BareAsk, BikeAnswer, ChargingAsk, LoadAsk};
use serde_json::{Value, json};

use crate::stale::all_queries;
use crate::{English, SATURDAY, act, at};

fn loaded(demo: DemoBike) -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo { demo: Some(demo) }, SATURDAY).unwrap();
    bench
}

/// A question to every query, as the pages of the small two-stroke ask it.
fn questions() -> Vec<Value> {
    let ratio =
        json!({ "kind": "overallRatio", "primaryRatio": 3.4, "gearRatio": 2.0, "frontTeeth": 12, "rearTeeth": 34 });
    let lamp = json!({ "name": "Lamp", "watts": 10.0, "count": 1, "used": "lights", "source": "filament" });
    let mut asked = vec![
        json!({ "kind": "today", "lastSeenMs": 0 }),
        json!({ "kind": "job", "id": "carburettor" }),
        json!({ "kind": "sprocketChoice", "goal": { "kind": "speedometer" } }),
        json!({ "kind": "brakes", "end": "front" }),
        json!({ "kind": "brakes", "end": "rear", "leverNewtons": 100.0, "roadSpeedKmh": 40.0 }),
        json!({ "kind": "tyres", "end": "front" }),
        json!({ "kind": "tyres", "end": "rear" }),
        json!({ "kind": "fasteners", "diameterMm": 6.0, "pitchMm": 1.0, "propertyClass": "8.8" }),
        json!({ "kind": "filling", "filling": "gearbox-oil", "cupsMl": [500] }),
        json!({ "kind": "mixing", "mix": { "kind": "premix", "fuelLitres": 5.0, "partsFuel": 25.0 } }),
        json!({ "kind": "wire", "watts": 15.0, "systemVolts": 6.0, "system": "lightingCoil" }),
        json!({ "kind": "lamps", "place": "headlamp", "proposed": lamp }),
        json!({ "kind": "charging", "idleVolts": 3.0, "fastVolts": 6.8 }),
        json!({ "kind": "inspection", "pack": "eu" }),
        json!({ "kind": "ripple", "proposals": [
            { "kind": "sprockets", "frontTeeth": 11, "rearTeeth": 34, "chainLinks": 104 },
            { "kind": "consumer", "id": "headlamp", "consumer": lamp },
        ] }),
        json!({ "kind": "calendar", "entries": [{ "id": "one", "atMs": SATURDAY, "summary": "Shoes", "text": "Here." }] }),
        json!({ "kind": "cure", "coat": "stand" }),
        json!({ "kind": "evaluate", "formula": ratio }),
        json!({ "kind": "history", "recordKind": "supply", "record": "standard/supply" }),
    ];
    let bare = [
        "shelf",
        "tables",
        "putAway",
        "plan",
        "readyMade",
        "gearing",
        "sprocketChoice",
        "chainWear",
        "thrust",
        "load",
        "usualConsumers",
        "starting",
        "lamps",
        "charging",
        "filling",
        "fault",
        "products",
        "inspection",
        "found",
        "alarms",
        "bike",
        "handbook",
        "bundle",
    ];
    asked.extend(bare.map(|kind| json!({ "kind": kind })));
    let circuits = ["lighting", "stop-lamp", "horn", "charging", "whole"];
    asked.extend(
        circuits.map(|circuit| json!({ "kind": "harness", "circuit": circuit, "setting": { "positions": [] } })),
    );
    asked
}

#[test]
fn every_page_opens_on_the_small_two_stroke() {
    let bench = loaded(DemoBike::OrrinWren50);
    let moment = serde_json::to_value(at(SATURDAY)).unwrap();
    let asked: BTreeSet<String> = questions().iter().map(|query| query["kind"].as_str().unwrap().to_owned()).collect();
    // It has no photo and no paint job of several coats, and nothing was set aside.
    let left: Vec<String> = all_queries().difference(&asked).cloned().collect();
    assert_eq!(left, ["photo", "process", "setAside"]);
    let refused = questions().into_iter().filter_map(|query| {
        let answer = bench.ask_json(&json!({ "moment": moment, "query": query }).to_string());
        answer.err().map(|refusal| format!("{query}: {refusal}"))
    });
    assert_eq!(refused.collect::<Vec<_>>(), Vec::<String>::new());
}

#[test]
fn the_two_stroke_has_a_lighting_coil_and_no_battery_and_nothing_asks_for_one() {
    let bench = loaded(DemoBike::OrrinWren50);
    let load = bench.load(&LoadAsk::default(), &at(SATURDAY)).unwrap();
    assert_eq!(load.system, ElectricalSystem::LightingCoil);
    assert!(!load.coil.is_empty() && load.balances.is_empty() && load.stationary.is_empty());
    assert!(bench.charging(&ChargingAsk::default(), &at(SATURDAY)).unwrap().cells.is_none());
}

#[test]
fn both_stand_on_the_shelf_and_are_marked_as_invented_and_the_first_is_the_one_without_a_name() {
    let mut bench = loaded(DemoBike::OrrinWren50);
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let shelf = bench.shelf(&BareAsk {}, &at(SATURDAY)).unwrap();
    let mut names: Vec<&str> = shelf.bikes.iter().filter(|bike| bike.invented).map(|bike| bike.name.as_str()).collect();
    names.sort_unstable();
    assert_eq!(names, ["Orrin Tern 175", "Orrin Wren 50"]);
    let open = shelf.bikes.iter().find(|bike| Some(&bike.id) == shelf.open.as_ref()).unwrap();
    assert_eq!(open.name, "Orrin Tern 175");
}

/// The commands with which a user enters the bike as it stands: each goes through every check that an owner meets.
fn entered(bike: &BikeAnswer) -> Vec<Command> {
    let side = Side::Standard;
    let spec = &bike.standard;
    let mut commands: Vec<Command> = vec![
        DescribeBike { identity: bike.identity.clone() }.into(),
        DescribePlace { place: bike.place.clone() }.into(),
        RecordDrive { side, drive: spec.drive.clone() }.into(),
        RecordSupply { side, supply: spec.supply.clone() }.into(),
        RecordBrake { side, end: End::Front, brake: spec.front_brake.clone() }.into(),
        RecordBrake { side, end: End::Rear, brake: spec.rear_brake.clone() }.into(),
    ];
    for (side, spec) in [(side, spec), (Side::Fitted, &bike.fitted)] {
        commands.push(RecordWheel { side, end: End::Front, wheel: spec.front_wheel.clone() }.into());
        commands.push(RecordWheel { side, end: End::Rear, wheel: spec.rear_wheel.clone() }.into());
    }
    if spec.indication != Indication::default() {
        commands.push(RecordIndication { side, indication: spec.indication.clone() }.into());
    }
    commands.extend(spec.consumers.iter().map(|slot| {
        let (id, consumer) = (Some(slot.id.clone()), slot.consumer.clone());
        RecordConsumer { side, id, consumer }.into()
    }));
    commands.extend(
        spec.fluids
            .iter()
            .map(|slot| RecordFluid { side, id: Some(slot.id.clone()), fluid: slot.fluid.clone() }.into()),
    );
    commands
        .extend(bike.parts.iter().map(|card| RecordPart { id: Some(card.id.clone()), part: card.part.clone() }.into()));
    commands.extend(bike.tightenings.iter().map(|card| {
        let (id, tightening) = (Some(card.id.clone()), card.tightening.clone());
        RecordTightening { id, tightening }.into()
    }));
    commands
}

#[test]
fn what_an_invented_bike_says_is_what_a_user_could_have_entered() {
    for demo in [DemoBike::OrrinTern175, DemoBike::OrrinWren50] {
        let mut bench = loaded(demo);
        let bike = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
        let facts = bench.facts().count();
        for command in entered(&bike) {
            let said = format!("{demo:?}: {command:?}");
            act(&mut bench, command, SATURDAY)
                .unwrap_or_else(|refusal| panic!("{}, {said}", refusal.message.english()));
            assert_eq!(bench.facts().count(), facts, "nothing is left to enter: {said}");
        }
    }
}
