//! `Outcome.stale` is taken at its word: every query is asked before and after, and what answers otherwise has to be on the
//! list. What is on it has to be able to answer otherwise.

mod asks;
mod story;

use std::collections::{BTreeMap, BTreeSet};

use layshaft_core::changes::Change;
use layshaft_core::record::KINDS;
use layshaft_door::command::{DescribePlace, FitSprockets, LoadDemo, Outcome};
use layshaft_door::query::BareAsk;
use layshaft_door::{ActCall, Bench, Command};
use layshaft_storage::{Opened, Store};
use serde_json::json;

use self::asks::Answers;
pub use self::asks::all_queries;
use self::story::{STORY, WITHOUT_FACTS, all_commands};
use crate::{HOUR, SATURDAY, at};

/// When all of it happens: an answer that is another one is another one for the facts alone.
const NOW: i64 = SATURDAY + HOUR;

/// Every kind of record that a bike can have, with one that is there at the end of the story.
const RECORDS: &[(&str, &str)] = &[
    ("bike", "bike"),
    ("place", "bike"),
    ("drive", "fitted/drive"),
    ("wheel", "fitted/front"),
    ("supply", "standard/supply"),
    ("consumer", "fitted/indicators"),
    ("brake", "fitted/front"),
    ("fluid", "standard/fork-oil"),
    ("indication", "fitted/indication"),
    ("part", "sprockets"),
    ("tightening", "rear-axle"),
    ("coat", "startCure"),
    ("process", "startProcess"),
    ("climate", "noteClimate"),
    ("reading", "takeReading"),
    ("photo", "attachPhoto"),
    ("job", "addJob"),
    ("answer", "gb/chain.adjuster"),
    ("circuitElement", "indicators-one-pilot/earth.frame"),
    ("faultSearch", "startFault"),
    ("benchTime", "bike"),
];

/// Jobs of the demo bike that stay, so that planning it is quick.
const JOBS: [&str; 6] = ["strip-tank", "tank-clean", "tank-reline", "tank-primer", "sprockets", "indicators"];

fn camel(name: &str) -> String {
    let (first, rest) = name.split_at(1);
    first.to_lowercase() + rest
}

/// A bench over these facts, with the bike `demo` open.
fn over(device: u64, facts: &[Change]) -> Bench {
    let mut store = Store::in_memory().unwrap();
    store.append(facts).unwrap();
    store.set_setting("open", "demo").unwrap();
    Bench::with_store(Opened { store, set_aside: None }, device).unwrap()
}

/// The demo bike with a handful of jobs.
fn small_demo() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    bench.act("demo", &LoadDemo::default().into(), &at(SATURDAY)).unwrap();
    let kept = |change: &Change| change.key.kind != "job" || JOBS.contains(&change.key.record.as_str());
    over(1, &bench.facts().filter(kept).collect::<Vec<_>>())
}

/// A bundle of the open bike from another device, where sprockets and place were changed without knowing of this one.
fn elsewhere(bench: &Bench) -> Vec<u8> {
    let known = |change: &Change| !["describePlace", "fitSprockets"].contains(&change.batch.as_str());
    let mut there =
        over(2, &bench.facts().filter(|change| change.key.project == "demo" && known(change)).collect::<Vec<_>>());
    let fit = FitSprockets { front_teeth: 14, rear_teeth: 44, chain_links: None };
    there.act("fit-there", &fit.into(), &at(NOW - 1)).unwrap();
    let place = layshaft_core::record::Place { night_celsius: Some(14.0), day_celsius: Some(19.0), humidity: None };
    there.act("place-there", &DescribePlace { place }.into(), &at(NOW - 1)).unwrap();
    there.bundle(&BareAsk {}, &at(NOW)).unwrap().bundle
}

fn act(bench: &mut Bench, id: &str, command: serde_json::Value) -> Outcome {
    let call = json!({ "id": id, "moment": at(NOW), "command": command });
    let call: ActCall = serde_json::from_value(call).unwrap_or_else(|error| panic!("{id}: {error}: {command}"));
    bench.act(&call.id, &call.command, &call.moment).unwrap_or_else(|refusal| panic!("{id}: {}", refusal.message))
}

fn set(names: &[String]) -> BTreeSet<String> {
    names.iter().cloned().collect()
}

/// What came of the story.
struct Told {
    bench: Bench,
    /// The queries that answered otherwise after a command that wrote facts of one kind alone, by that kind.
    moved_by_kind: BTreeMap<String, BTreeSet<String>>,
    /// The queries that answered otherwise at least once.
    moved: BTreeSet<String>,
    /// The queries that answer at its end.
    answered: BTreeSet<String>,
}

/// Tells the story once, and takes each command at its word.
fn tell() -> Told {
    let mut bench = small_demo();
    let mut before = Answers::of(&bench);
    let (mut moved_by_kind, mut moved) = (BTreeMap::<String, BTreeSet<String>>::new(), BTreeSet::new());
    for (id, command) in STORY {
        let command = command(&bench);
        let outcome = act(&mut bench, id, command);
        assert_eq!(outcome.changes == 0, WITHOUT_FACTS.contains(id), "{id}: {outcome:?}");
        let after = Answers::of(&bench);
        let (differing, stale) = (after.differing(&before), set(&outcome.stale));
        let silent: Vec<_> = differing.difference(&stale).collect();
        assert!(silent.is_empty(), "{id} moved {silent:?} and says only {stale:?}");
        assert!(!differing.is_empty(), "{id} moved nothing");
        let kinds: BTreeSet<String> =
            bench.facts().filter(|change| change.batch == *id).map(|change| change.key.kind).collect();
        if let [kind] = Vec::from_iter(kinds).as_slice() {
            moved_by_kind.entry(kind.clone()).or_default().extend(differing.iter().cloned());
        }
        moved.extend(differing);
        before = after;
    }
    Told { bench, moved_by_kind, moved, answered: before.answered() }
}

#[test]
fn every_command_names_every_query_that_it_makes_answer_otherwise_and_none_for_nothing() {
    let in_story: BTreeSet<&str> = STORY.iter().filter_map(|(id, _)| id.split('-').next()).collect();
    let missing: Vec<String> = all_commands().into_iter().filter(|name| !in_story.contains(name.as_str())).collect();
    assert!(missing.is_empty(), "the story lacks {missing:?}");
    assert_eq!(asks::kinds(), all_queries(), "every query is asked");
    let Told { bench, moved_by_kind, moved, answered } = tell();
    let mute: Vec<String> = all_queries().difference(&answered).cloned().collect();
    assert_eq!(mute, ["setAside"], "at the end of the story everything answers");
    let fixed = ["calendar", "evaluate", "fasteners", "handbook", "mixing", "products", "setAside", "tables", "wire"];
    let unmoved: Vec<String> = all_queries().difference(&moved).cloned().collect();
    assert_eq!(unmoved, fixed, "these never go old");

    let listed: BTreeSet<&str> = KINDS.iter().map(|of| of.kind).collect();
    let told: BTreeSet<&str> = RECORDS.iter().map(|(kind, _)| *kind).collect();
    assert_eq!(told, listed, "the story has one record of every kind that the core lists");
    let all: Vec<Change> = bench.facts().filter(|change| change.key.project == "demo").collect();
    let kinds: BTreeSet<&str> = all.iter().map(|change| change.key.kind.as_str()).collect();
    assert_eq!(kinds, listed, "the bike has records of every kind");
    let bundle = bench.bundle(&BareAsk {}, &at(NOW)).unwrap().bundle;
    let receive: Command = layshaft_door::command::ReceiveBundle { bundle, as_second_bike: false }.into();
    let mut wrong = Vec::new();
    for (kind, _) in RECORDS {
        // The bike without its records of this kind gets them all at once. Without a name it would be no bike of the shelf.
        let stays = |change: &&Change| change.key.kind != *kind || (*kind == "bike" && change.field == "name");
        let mut bench = over(3, &all.iter().filter(stays).cloned().collect::<Vec<_>>());
        let before = Answers::of(&bench);
        let outcome = bench.act("all-of-them", &receive, &at(NOW)).unwrap();
        let (differing, stale) = (Answers::of(&bench).differing(&before), set(&outcome.stale));
        let silent: Vec<_> = differing.difference(&stale).collect();
        let moves: BTreeSet<String> = differing.union(&moved_by_kind[*kind]).cloned().collect();
        let idle: Vec<_> = stale.difference(&moves).collect();
        if !silent.is_empty() || !idle.is_empty() {
            wrong.push(format!("{kind}: not named {silent:?}, named for nothing {idle:?}"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_command_that_changes_nothing_makes_nothing_old_and_a_repeated_one_everything() {
    let mut bench = small_demo();
    let (_, place) = STORY.iter().find(|(id, _)| *id == "describePlace").unwrap();
    let command = place(&bench);
    let first = act(&mut bench, "one", command.clone());
    assert!(
        first.changes > 0 && first.stale.contains(&"plan".to_owned()) && !first.stale.contains(&"gearing".to_owned())
    );
    let idle = act(&mut bench, "two", command.clone());
    assert_eq!((idle.changes, idle.stale), (0, Vec::new()));
    // Whoever calls again under the same id may never have heard of the first answer.
    let again = act(&mut bench, "one", command);
    assert_eq!(again.changes, 0);
    assert!(set(&again.stale).is_superset(&set(&first.stale)));
}
