//! Every command of the registry, done to one bike one after the other. A command's id is its name, so what it makes can
//! be named by those that follow.

use layshaft_door::Bench;
use layshaft_door::query::BareAsk;
use serde_json::{Value, json};

use super::{NOW, camel};
use crate::{HOUR, at};

macro_rules! make_names {
    ($($(#[$doc:meta])* $method:ident $name:ident;)*) => {
        const COMMANDS: &[&str] = &[$(stringify!($name),)*];
    };
}
layshaft_door::commands!(make_names);

/// The names of all commands, as they stand in JSON.
pub fn all_commands() -> Vec<String> {
    COMMANDS.iter().map(|name| camel(name)).collect()
}

/// A command's id and what it says, worked out when its turn comes.
pub type Turn = (&'static str, fn(&Bench) -> Value);

/// Commands that write no fact: they only move a setting of the device.
pub const WITHOUT_FACTS: [&str; 2] = ["openBike", "noteExport"];

/// What the bike's own page says of a part of it, with some fields told otherwise.
fn with(bench: &Bench, part: &str, changes: Value) -> Value {
    let sheet = serde_json::to_value(bench.bike(&BareAsk {}, &at(NOW)).unwrap()).unwrap();
    let mut value = sheet.pointer(part).unwrap_or_else(|| panic!("{part}")).clone();
    for (field, new) in changes.as_object().unwrap() {
        value[field] = new.clone();
    }
    value
}

fn job(bench: &Bench, id: &str, changes: Value) -> Value {
    let ask = layshaft_door::query::IdAsk { id: id.to_owned() };
    let mut job = serde_json::to_value(bench.job(&ask, &at(NOW)).unwrap().job).unwrap();
    for (field, new) in changes.as_object().unwrap() {
        job[field] = new.clone();
    }
    job
}

/// A check of the open search, answered as it is likeliest.
fn evidence(bench: &Bench) -> Value {
    let sheet = bench.fault(&layshaft_door::query::FaultAsk { search: None }, &at(NOW)).unwrap();
    let state = sheet.state.unwrap();
    let check = state.question.unwrap().check;
    json!({ "kind": "seen", "check": check, "outcome": state.meanings[0].outcome })
}

/// The job that puts an item of the inspection right.
fn puts_right(bench: &Bench, id: &str) -> String {
    let ask = layshaft_core::inspection::InspectionAsk { pack: Some("gb".to_owned()) };
    let items = bench.inspection(&ask, &at(NOW)).unwrap().items;
    items.into_iter().find(|item| item.item.id == id).unwrap().job.unwrap().job
}

/// The job that puts a finding right.
fn works_on(bench: &Bench, code: &str) -> String {
    let ask = json!({ "reasons": [{ "kind": "finding", "code": code }] });
    let found = bench.found(&serde_json::from_value(ask).unwrap(), &at(NOW)).unwrap().found;
    found[0].job.clone().unwrap().job
}

/// The value of the bike that lost a concurrent edit.
fn rival(bench: &Bench) -> Value {
    let rival = bench.bike(&BareAsk {}, &at(NOW)).unwrap().rivals.remove(0);
    json!({ "kind": "settle", "recordKind": rival.record_kind, "record": rival.record, "field": rival.field, "stamp": rival.stamp })
}

const PLAIN_PRODUCT: &str = "Colour, spray can";

fn product(bench: &Bench) -> Value {
    let products = bench.products(&BareAsk {}, &at(NOW)).unwrap().products;
    let product = products.into_iter().find(|product| product.name == PLAIN_PRODUCT).unwrap();
    serde_json::to_value(product).unwrap()
}

/// A paint job with as many coats.
fn process(bench: &Bench, coats: usize, job: Option<&str>) -> Value {
    let plans = bench.products(&BareAsk {}, &at(NOW)).unwrap().processes;
    let mut process = plans.into_iter().find(|plan| plan.title == "Side panel").unwrap();
    process.steps.truncate(coats);
    process.job = job.map(str::to_owned);
    serde_json::to_value(process).unwrap()
}

/// What another device with the same bike did to it meanwhile.
fn bundle(bench: &Bench) -> Value {
    let bytes = super::elsewhere(bench);
    let encoded = serde_json::to_value(layshaft_door::command::ReceiveBundle { bundle: bytes, as_second_bike: false });
    json!({ "kind": "receiveBundle", "bundle": encoded.unwrap()["bundle"], "asSecondBike": false })
}

/// The story: at its end the bike has records of every kind.
pub const STORY: &[Turn] = &[
    ("startBike", |_| json!({ "kind": "startBike", "identity": { "name": "Barn find", "invented": true } })),
    ("loadDemo", |_| json!({ "kind": "loadDemo" })),
    ("putBikeAway", |_| json!({ "kind": "putBikeAway", "bike": "startBike" })),
    ("bringBikeBack", |_| json!({ "kind": "bringBikeBack", "bike": "startBike" })),
    ("openBike", |_| json!({ "kind": "openBike", "bike": "demo" })),
    ("describeBike", |bench| {
        let changes =
            json!({ "name": "Tern", "modelYear": 1979, "dryMassKg": 120.0, "peakPowerKw": 11.0, "cooling": "air" });
        json!({ "kind": "describeBike", "identity": with(bench, "/identity", changes) })
    }),
    ("describeKind", |_| {
        let bike_kind = json!({ "starter": "kick", "strokes": "two" });
        json!({ "kind": "describeKind", "bikeKind": bike_kind, "names": [] })
    }),
    (
        "describePlace",
        |_| json!({ "kind": "describePlace", "place": { "nightCelsius": 12.0, "dayCelsius": 18.0, "humidity": 60.0 } }),
    ),
    ("setBenchTime", |bench| {
        let spans = json!([{ "weekday": 3, "fromMinute": 1200, "toMinute": 1290 }]);
        json!({ "kind": "setBenchTime", "benchTime": with(bench, "/benchTime", json!({ "spans": spans })) })
    }),
    (
        "recordDrive",
        |bench| json!({ "kind": "recordDrive", "side": "standard", "drive": with(bench, "/standard/drive", json!({ "rearTeeth": 42 })) }),
    ),
    ("recordWheel", |bench| {
        let wheel = with(bench, "/standard/rearWheel", json!({ "tyre": "3.25-18", "axleLoadKg": 125.0 }));
        json!({ "kind": "recordWheel", "side": "standard", "end": "rear", "wheel": wheel })
    }),
    ("recordConsumer", |_| {
        let consumer =
            json!({ "name": "Heated grips", "watts": 20.0, "count": 1, "used": "steady", "source": "electronics" });
        json!({ "kind": "recordConsumer", "side": "standard", "id": null, "consumer": consumer })
    }),
    ("removeConsumer", |_| json!({ "kind": "removeConsumer", "side": "fitted", "id": "recordConsumer" })),
    ("fitConsumer", |_| {
        let led = json!({ "name": "LED", "watts": 3.0, "count": 2, "used": "indicating", "source": "led" });
        json!({ "kind": "fitConsumer", "id": "indicators", "consumer": led })
    }),
    // Two drums: no fault of a hydraulic brake is searched on it.
    ("recordBrake-3", |bench| {
        let brake = with(bench, "/standard/frontBrake", json!({ "brake": "drum", "rotorMm": 130.0 }));
        json!({ "kind": "recordBrake", "side": "standard", "end": "front", "brake": brake })
    }),
    ("recordBrake", |bench| {
        let disc = json!({ "brake": "disc", "rotorMm": 220.0, "masterMm": 13.0, "leverRatio": 5.0 });
        let brake = with(bench, "/standard/frontBrake", disc);
        json!({ "kind": "recordBrake", "side": "standard", "end": "front", "brake": brake })
    }),
    // Two discs: nothing on the bike is worked by a cable any more, which the inspection knows.
    ("recordBrake-2", |bench| {
        let brake = with(bench, "/standard/rearBrake", json!({ "brake": "disc" }));
        json!({ "kind": "recordBrake", "side": "standard", "end": "rear", "brake": brake })
    }),
    ("fitBrake", |_| json!({ "kind": "fitBrake", "end": "front", "brake": { "pistons": 2, "pistonMm": 27.0 } })),
    (
        "recordFluid",
        |_| json!({ "kind": "recordFluid", "side": "standard", "id": "fork-oil", "fluid": { "name": "Fork oil", "litres": 0.3 } }),
    ),
    ("fitSprockets", |_| json!({ "kind": "fitSprockets", "frontTeeth": 16, "rearTeeth": 38, "chainLinks": null })),
    ("fitTyre", |_| json!({ "kind": "fitTyre", "end": "front", "wheel": { "tyre": "3.00-18 47P" } })),
    ("recordIndication", |bench| {
        let indication = with(bench, "/standard/indication", json!({ "flasherWatts": 23.0 }));
        json!({ "kind": "recordIndication", "side": "standard", "indication": indication })
    }),
    (
        "fitFlasher",
        |_| json!({ "kind": "fitFlasher", "indication": { "flasher": "electronicTwo", "resistorOhms": 12.0, "resistorsPerSide": 1 } }),
    ),
    (
        "adaptCircuit",
        |_| json!({ "kind": "adaptCircuit", "circuit": "indicators-one-pilot", "element": "earth.frame", "change": { "ohms": 2.0 } }),
    ),
    ("startFault", |_| json!({ "kind": "startFault", "trouble": { "kind": "table", "table": "charging-weak" } })),
    ("answerFault", |bench| json!({ "kind": "answerFault", "search": "startFault", "answer": evidence(bench) })),
    ("undoFaultStep", |_| json!({ "kind": "undoFaultStep", "search": "startFault" })),
    ("putRight", |_| {
        let reason = json!({ "kind": "fault", "search": "startFault", "suspect": "stator" });
        json!({ "kind": "putRight", "reason": reason })
    }),
    (
        "closeFault",
        |_| json!({ "kind": "closeFault", "search": "startFault", "closing": { "kind": "givenUp" }, "learned": "Not now." }),
    ),
    (
        "startFault-2",
        |_| json!({ "kind": "startFault", "trouble": { "kind": "wiring", "circuit": "indicators-one-pilot", "reworked": null } }),
    ),
    ("recordSupply", |bench| {
        let supply = with(bench, "/standard/supply", json!({ "systemVolts": 6.0, "chargingVolts": 7.2 }));
        json!({ "kind": "recordSupply", "side": "standard", "supply": supply })
    }),
    ("recordSupply-2", |bench| {
        let twelve = json!({ "systemVolts": 12.0, "chargingVolts": 14.4, "batteryAh": 10.0 });
        json!({ "kind": "recordSupply", "side": "standard", "supply": with(bench, "/standard/supply", twelve) })
    }),
    ("addJob", |bench| {
        let own = json!({ "title": "Wax the chain", "after": [], "parts": [], "tools": ["Chain brush"] });
        json!({ "kind": "addJob", "job": job(bench, "sprockets", own) })
    }),
    ("addReadyMade", |_| json!({ "kind": "addReadyMade", "readyMade": "tank-drain" })),
    ("addPackages", |_| json!({ "kind": "addPackages", "packages": ["tyres-and-chain"] })),
    (
        "changeJob",
        |bench| json!({ "kind": "changeJob", "id": "addJob", "job": job(bench, "addJob", json!({ "title": "Wax the new chain", "splittable": true })) }),
    ),
    ("lackTool", |_| json!({ "kind": "lackTool", "id": "addJob", "tool": "Chain brush" })),
    ("putJobAway", |_| json!({ "kind": "putJobAway", "id": "addReadyMade" })),
    ("bringBack", |_| json!({ "kind": "bringBack", "recordKind": "job", "id": "addReadyMade" })),
    ("beginJob", |_| json!({ "kind": "beginJob", "id": "sprockets" })),
    ("tickStep", |_| json!({ "kind": "tickStep", "id": "sprockets", "stepsDone": 1 })),
    (
        "finishJob",
        |_| json!({ "kind": "finishJob", "id": "sprockets", "minutesTaken": 80.0, "note": "The nut was tight." }),
    ),
    ("addJob-2", |bench| {
        let soak = json!({ "title": "Soak the chain", "state": "open", "after": ["addJob"], "parts": [], "wait": { "name": "soaks", "hours": 48.0 } });
        json!({ "kind": "addJob", "job": job(bench, "sprockets", soak) })
    }),
    ("finishJob-2", |_| json!({ "kind": "finishJob", "id": "addJob-2" })),
    ("reopenJob", |_| json!({ "kind": "reopenJob", "id": "sprockets" })),
    ("recordPart", |_| {
        let part = json!({ "title": "Chain", "state": "ordered", "expected": "2026-04-20", "priceMinor": 3000, "currency": "EUR" });
        json!({ "kind": "recordPart", "id": "sprockets", "part": part })
    }),
    (
        "recordPart-2",
        |_| json!({ "kind": "recordPart", "id": "lackTool", "part": { "title": "Chain brush", "state": "here" } }),
    ),
    ("putPartAway", |_| json!({ "kind": "putPartAway", "id": "fork-seals" })),
    ("recordTightening", |_| {
        let tightening = json!({ "joint": "Rear axle nut", "torqueNm": 60.0, "source": "invented" });
        json!({ "kind": "recordTightening", "id": "rear-axle", "tightening": tightening })
    }),
    ("putTighteningAway", |_| json!({ "kind": "putTighteningAway", "id": "front-sprocket" })),
    (
        "attachPhoto",
        |_| json!({ "kind": "attachPhoto", "ofKind": "bike", "of": "bike", "media": "image/png", "bytes": "AAECAw==", "caption": null }),
    ),
    (
        "attachPhoto-2",
        |_| json!({ "kind": "attachPhoto", "ofKind": "bike", "of": "bike", "media": "image/png", "bytes": "AAEC", "caption": null }),
    ),
    ("putPhotoAway", |_| json!({ "kind": "putPhotoAway", "id": "attachPhoto-2" })),
    ("startCure", |bench| {
        let (product, applied) = (product(bench), NOW - 2 * HOUR);
        json!({ "kind": "startCure", "title": "Bracket", "product": product, "job": "addJob", "appliedMs": applied })
    }),
    ("moveCoat", |_| json!({ "kind": "moveCoat", "id": "tank-liner", "place": "house", "celsius": 21.0 })),
    ("endCure", |_| json!({ "kind": "endCure", "id": "startCure" })),
    ("startProcess", |bench| json!({ "kind": "startProcess", "process": process(bench, 3, Some("addJob")) })),
    ("layCoat", |_| json!({ "kind": "layCoat", "process": "startProcess", "appliedMs": NOW - 300 * HOUR })),
    ("sandCoat", |_| json!({ "kind": "sandCoat", "process": "startProcess" })),
    ("startProcess-2", |bench| json!({ "kind": "startProcess", "process": process(bench, 1, None) })),
    ("layCoat-2", |_| json!({ "kind": "layCoat", "process": "startProcess-2", "appliedMs": NOW - HOUR / 4 })),
    ("startProcess-3", |bench| json!({ "kind": "startProcess", "process": process(bench, 2, None) })),
    ("endProcess", |_| json!({ "kind": "endProcess", "process": "startProcess-2" })),
    ("noteClimate", |_| json!({ "kind": "noteClimate", "fromMs": NOW - HOUR, "celsius": 19.0, "humidity": 55.0 })),
    ("putRight-3", |_| json!({ "kind": "putRight", "reason": { "kind": "finding", "code": "chain.worn-out" } })),
    ("finishJob-4", |bench| json!({ "kind": "finishJob", "id": works_on(bench, "chain.worn-out") })),
    (
        "wantPart",
        |_| json!({ "kind": "wantPart", "reason": { "kind": "finding", "code": "speedometer.reads-low" }, "title": "Corrector" }),
    ),
    (
        "putRight-4",
        |_| json!({ "kind": "putRight", "reason": { "kind": "change", "change": "consumer", "slot": "indicators" } }),
    ),
    (
        "takeReading",
        |_| json!({ "kind": "takeReading", "reading": { "what": "chain.elongation", "value": 1.2, "unit": "percent" } }),
    ),
    (
        "answerItem-3",
        |_| json!({ "kind": "answerItem", "pack": "gb", "item": "chain.adjuster", "answer": { "word": "notGood" } }),
    ),
    (
        "putRight-2",
        |_| json!({ "kind": "putRight", "reason": { "kind": "item", "pack": "gb", "item": "chain.adjuster" } }),
    ),
    ("finishJob-3", |bench| json!({ "kind": "finishJob", "id": puts_right(bench, "chain.adjuster") })),
    (
        "answerItem",
        |_| json!({ "kind": "answerItem", "pack": "gb", "item": "chain.adjuster", "answer": { "word": "doesNotApply" } }),
    ),
    (
        "answerItem-2",
        |_| json!({ "kind": "answerItem", "pack": "eu", "item": "identity.plate", "answer": { "word": "good" } }),
    ),
    ("receiveBundle", bundle),
    ("settle", rival),
    ("undo", |_| json!({ "kind": "undo", "batch": "recordTightening" })),
    ("noteExport", |_| json!({ "kind": "noteExport" })),
];
