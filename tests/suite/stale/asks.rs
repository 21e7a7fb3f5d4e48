//! Questions to every query of the registry, several where one would not look at all that its answers are made of.

use std::collections::{BTreeMap, BTreeSet};

use layshaft_door::Bench;
use serde_json::{Value, json};

use super::{NOW, camel};
use crate::at;

macro_rules! make_names {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        const QUERIES: &[&str] = &[$(stringify!($name),)*];
    };
}
layshaft_door::queries!(make_names);

/// The names of all queries, as they stand in JSON.
pub fn all_queries() -> BTreeSet<String> {
    QUERIES.iter().map(|name| camel(name)).collect()
}

fn asks() -> Vec<Value> {
    let overall =
        json!({ "kind": "overallRatio", "primaryRatio": 3.0, "gearRatio": 2.0, "frontTeeth": 15, "rearTeeth": 41 });
    let led = json!({ "name": "LED", "watts": 3.0, "count": 2, "used": "indicating", "source": "led" });
    let lamps = json!({ "name": "Lamps", "watts": 10.0, "count": 2, "used": "indicating", "source": "filament" });
    let mut asks = vec![
        json!({ "kind": "shelf" }),
        json!({ "kind": "setAside" }),
        json!({ "kind": "tables" }),
        json!({ "kind": "putAway" }),
        json!({ "kind": "today", "lastSeenMs": 0 }),
        json!({ "kind": "plan" }),
        json!({ "kind": "job", "id": "tank-reline" }),
        json!({ "kind": "job", "id": "tank-primer" }),
        json!({ "kind": "job", "id": "addJob" }),
        json!({ "kind": "job", "id": "putRight" }),
        json!({ "kind": "job", "id": "putRight-4" }),
        json!({ "kind": "found", "reasons": [
            { "kind": "item", "pack": "gb", "item": "chain.adjuster" },
            { "kind": "fault", "search": "startFault", "suspect": "stator" },
            { "kind": "finding", "code": "chain.worn-out" },
            { "kind": "finding", "code": "speedometer.reads-low" },
            { "kind": "change", "change": "consumer", "slot": "indicators" },
        ] }),
        json!({ "kind": "readyMade" }),
        json!({ "kind": "gearing" }),
        json!({ "kind": "sprocketChoice" }),
        json!({ "kind": "sprocketChoice", "goal": { "kind": "speedometer" } }),
        json!({ "kind": "chainWear" }),
        json!({ "kind": "thrust" }),
        json!({ "kind": "load" }),
        json!({ "kind": "brakes", "end": "front" }),
        json!({ "kind": "brakes", "end": "rear", "leverNewtons": 100.0, "roadSpeedKmh": 50.0 }),
        json!({ "kind": "tyres", "end": "front" }),
        json!({ "kind": "tyres", "end": "rear" }),
        json!({ "kind": "fasteners", "diameterMm": 8.0, "pitchMm": 1.25, "propertyClass": "8.8" }),
        json!({ "kind": "filling" }),
        json!({ "kind": "filling", "filling": "engine-oil", "cupsMl": [1000] }),
        json!({ "kind": "mixing", "mix": { "kind": "premix", "fuelLitres": 5.0, "partsFuel": 50.0 } }),
        json!({ "kind": "wire", "amperes": 5.0, "systemVolts": 12.0, "outMetres": 2.0 }),
        json!({ "kind": "lamps", "place": "indicators", "proposed": led }),
        json!({ "kind": "lamps" }),
        json!({ "kind": "charging" }),
        json!({ "kind": "usualConsumers" }),
        json!({ "kind": "starting" }),
        json!({ "kind": "charging", "restedVolts": 12.4, "idleVolts": 13.0, "fastVolts": 14.0, "drainMilliamperes": 5.0 }),
        json!({ "kind": "fault" }),
        json!({ "kind": "cure" }),
        json!({ "kind": "cure", "coat": "tank-liner" }),
        json!({ "kind": "process" }),
        json!({ "kind": "process", "process": "startProcess" }),
        json!({ "kind": "products" }),
        json!({ "kind": "inspection" }),
        json!({ "kind": "inspection", "pack": "eu" }),
        json!({ "kind": "ripple", "proposals": [
            { "kind": "sprockets", "frontTeeth": 15, "rearTeeth": 42, "chainLinks": 112 },
            { "kind": "consumer", "id": "indicators", "consumer": lamps },
            { "kind": "brake", "end": "front", "brake": { "masterMm": 14.0 } },
        ] }),
        json!({ "kind": "alarms" }),
        json!({ "kind": "calendar", "entries": [{ "id": "one", "atMs": NOW, "summary": "Tank: cured", "text": "Cured." }] }),
        json!({ "kind": "bike" }),
        json!({ "kind": "photo", "id": "attachPhoto" }),
        json!({ "kind": "evaluate", "formula": overall }),
        json!({ "kind": "handbook" }),
        json!({ "kind": "bundle" }),
    ];
    for circuit in ["lighting", "indicators-one-pilot", "charging"] {
        asks.push(json!({ "kind": "harness", "circuit": circuit, "setting": { "positions": [] } }));
    }
    for (kind, record) in super::RECORDS {
        asks.push(json!({ "kind": "history", "recordKind": kind, "record": record }));
    }
    asks
}

/// The queries that are asked here.
pub fn kinds() -> BTreeSet<String> {
    asks().iter().filter_map(|query| query["kind"].as_str().map(str::to_owned)).collect()
}

/// Every answer by its question, refusals too.
pub struct Answers(BTreeMap<String, (String, Result<String, String>)>);

impl Answers {
    pub fn of(bench: &Bench) -> Answers {
        let moment = serde_json::to_value(at(NOW)).unwrap();
        let asked = asks().into_iter().map(|query| {
            let call = json!({ "moment": moment, "query": query }).to_string();
            let kind = query["kind"].as_str().unwrap().to_owned();
            let answer = bench.ask_json(&call);
            let misread = answer.as_ref().err().is_some_and(|refusal| refusal.contains("badRequest"));
            assert!(!misread, "{query}: {answer:?}");
            (query.to_string(), (kind, answer))
        });
        Answers(asked.collect())
    }

    /// The queries that answer, at least once.
    pub fn answered(&self) -> BTreeSet<String> {
        self.0.values().filter(|(_, answer)| answer.is_ok()).map(|(kind, _)| kind.clone()).collect()
    }

    /// The queries with an answer that differs.
    pub fn differing(&self, other: &Answers) -> BTreeSet<String> {
        let differs = self.0.iter().filter(|(question, answer)| other.0.get(*question) != Some(answer));
        differs.map(|(_, (kind, _))| kind.clone()).collect()
    }
}
