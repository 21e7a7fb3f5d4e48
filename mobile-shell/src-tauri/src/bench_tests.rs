//! What the window announces, held against what its pages list.

use std::time::Duration;

use serde_json::{Value, json};
use tempfile::TempDir;

use super::*;

/// Saturday, 21 March 2026, 11:00 in Central Europe.
const SATURDAY: i64 = 1_774_087_200_000;
const DAY_MS: i64 = 86_400_000;
/// As long as a slow machine may take to plan.
const PATIENCE: Duration = Duration::from_secs(60);

/// A desk in a folder of its own, with what it wants said.
struct Place {
    desk: Desk,
    said: Receiver<Vec<Notice>>,
    _folder: TempDir,
}

impl Place {
    fn new() -> Place {
        let folder = tempfile::tempdir().unwrap();
        let (tell, said) = channel();
        let desk = Desk::open(folder.path(), move |notices| tell.send(notices).unwrap());
        Place { desk, said, _folder: folder }
    }

    fn act(&self, id: &str, command: Value) {
        self.desk.act(&json!({ "id": id, "moment": vienna(), "command": command }).to_string(), "en").unwrap();
    }

    fn ask(&self, query: Value) -> String {
        self.desk.ask(&json!({ "moment": vienna(), "query": query }).to_string(), "en").unwrap()
    }

    fn next(&self) -> Vec<Notice> {
        self.said.recv_timeout(PATIENCE).unwrap()
    }

    /// Waits until the notices of every command so far were made: at a moment long after them nothing is ahead.
    fn settle(&self) {
        let long_after = Moment { now_ms: SATURDAY + 36_500 * DAY_MS, zone: Zone::default() };
        self.desk.changed.send((long_after, Words::english())).unwrap();
        while !self.next().is_empty() {}
    }

    /// The notices after one command more, with nothing else under way.
    fn last(&self) -> Vec<Notice> {
        self.settle();
        self.act("last", json!({ "kind": "describePlace", "place": { "nightCelsius": 15.0, "dayCelsius": 20.0 } }));
        self.next()
    }

    /// What the page of the alarms lists.
    fn events(&self) -> Vec<Notice> {
        let sheet: Value = serde_json::from_str(&self.ask(json!({ "kind": "alarms" }))).unwrap();
        let notice = |event: &Value| {
            let (title, body) = (event["title"].as_str().unwrap().to_owned(), layshaft_words::say(&event["text"]));
            Notice { title, body, due_ms: event["atMs"].as_i64().unwrap() }
        };
        sheet["alarms"].as_array().unwrap().iter().map(notice).collect()
    }

    fn plans(&self) -> u32 {
        lock(&self.desk.bench).as_ref().unwrap().plans_worked_out()
    }
}

/// The local clock of the pages: one hour before UTC until the end of March, then two.
fn vienna() -> Value {
    let shifts = json!([
        { "fromMs": 1_761_440_400_000_i64, "offsetMinutes": 60 },
        { "fromMs": 1_774_746_000_000_i64, "offsetMinutes": 120 },
    ]);
    json!({ "nowMs": SATURDAY, "zone": { "name": "Europe/Vienna", "shifts": shifts } })
}

#[test]
fn the_window_announces_what_the_page_lists_coats_waits_and_parcels_by_the_local_clock() {
    let place = Place::new();
    place.act("demo", json!({ "kind": "loadDemo" }));
    let soak = json!({ "title": "Soak the chain", "stage": "repair", "steps": [], "handsOnMinutes": 10.0, "state": "open",
        "stepsDone": 0, "after": [], "parts": [], "rank": 0.0, "wait": { "name": "soaks", "hours": 48.0 } });
    place.act("soak", json!({ "kind": "addJob", "job": soak }));
    place.act("soaked", json!({ "kind": "finishJob", "id": "soak" }));
    let notices = place.last();
    assert_eq!(notices, place.events());
    let of = |title: &str| notices.iter().find(|notice| notice.title == title).unwrap_or_else(|| panic!("{title}"));
    assert_eq!(of("Soak the chain").due_ms, SATURDAY + 2 * DAY_MS);
    // Expected on 30 March: at 8 in the morning by the clock of summer, which is 6 by UTC.
    let parcel = of("Master cylinder 14 mm");
    assert_eq!(parcel.due_ms.rem_euclid(DAY_MS), 6 * 3_600_000, "{}", parcel.due_ms);
    assert!(of("Fuel tank, inside").body.contains("Tank liner, two-part:"), "{:?}", of("Fuel tank, inside"));
    assert!(notices.is_sorted_by_key(|notice| notice.due_ms));
}

#[test]
fn a_plan_is_worked_out_once_for_page_and_notices_and_not_at_all_where_it_stays() {
    let place = Place::new();
    place.act("demo", json!({ "kind": "loadDemo" }));
    place.last();
    let before = place.plans();
    place.act("later", json!({ "kind": "putPartAway", "id": "fork-seals" }));
    place.ask(json!({ "kind": "today" }));
    place.next();
    place.ask(json!({ "kind": "plan" }));
    assert_eq!(place.plans(), before + 1, "page and notices share one plan");
    // A reading moves neither the plan nor a notice.
    let reading = json!({ "what": "tyre.front.tread", "value": 2.0, "unit": "millimetre" });
    place.act("tread", json!({ "kind": "takeReading", "reading": reading }));
    place.ask(json!({ "kind": "today" }));
    assert_eq!(place.plans(), before + 1);
    assert!(place.said.try_recv().is_err(), "nothing is said anew");
}

#[test]
fn notices_wait_for_the_first_call_which_brings_the_local_clock() {
    let place = Place::new();
    place.act("demo", json!({ "kind": "loadDemo" }));
    place.last();
    let folder = place._folder;
    let (tell, said) = channel();
    let again = Desk::open(folder.path(), move |notices| tell.send(notices).unwrap());
    assert!(said.try_recv().is_err(), "nobody has said what the local time is");
    again.ask(&json!({ "moment": vienna(), "query": { "kind": "shelf" } }).to_string(), "en").unwrap();
    assert!(!said.recv_timeout(PATIENCE).unwrap().is_empty());
}

#[test]
fn another_language_makes_the_notices_anew_and_one_that_is_not_there_is_english() {
    let place = Place::new();
    place.act("demo", json!({ "kind": "loadDemo" }));
    let english = place.last();
    let call = json!({ "moment": vienna(), "query": { "kind": "shelf" } }).to_string();
    place.desk.ask(&call, "tlh").unwrap();
    assert_eq!(place.next(), english);
    place.desk.ask(&call, "tlh").unwrap();
    assert!(place.said.try_recv().is_err(), "nothing is said anew");
}
