//! A running engine is only ever run outdoors: what is said of it at one place must not be taken back at another.

use std::path::Path;

use layshaft_core::electrical::{ChargingAsk, ChargingTest, charging_answer};
use layshaft_core::inspection::packs;
use layshaft_core::record::Bike;

use crate::{English, root};

/// Words by which a sentence speaks of an engine that runs.
const RUNS: [&str; 10] = [
    "running engine",
    "engine running",
    "run the engine",
    "start the engine",
    "engine on",
    "engine idle",
    "at idle",
    "fast idle",
    "warm it up",
    "exhaust gas",
];
/// Words by which a sentence would let it run under a roof.
const UNDER_A_ROOF: [&str; 10] = [
    "door open",
    "doors open",
    "open door",
    "window open",
    "open window",
    "extract",
    "ventilat",
    "draught",
    "moving air",
    "fresh air",
];

fn speaks_of(text: &str, words: &[&str]) -> bool {
    let text = text.to_lowercase();
    words.iter().any(|word| text.contains(word))
}

/// Sentences that let an engine run under a roof.
fn lenient(text: &str) -> Vec<String> {
    // A sentence may be broken over lines inside one string of Rust.
    let lines: Vec<&str> = text.split("\\\n").map(str::trim_start).collect();
    let joined = lines.concat();
    let sentences = joined.split(['.', ';', '!', '?', '"', '\n']);
    sentences.filter(|each| speaks_of(each, &RUNS) && speaks_of(each, &UNDER_A_ROOF)).map(str::to_owned).collect()
}

/// Every file with one of the endings below a folder, with its text.
fn texts(folder: &Path, ending: &str, found: &mut Vec<(String, String)>) {
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        let path = entry.path();
        if path.is_dir() {
            texts(&path, ending, found);
        } else if path.extension().is_some_and(|own| own == ending) {
            found.push((path.display().to_string(), std::fs::read_to_string(&path).unwrap()));
        }
    }
}

#[test]
fn no_sentence_anywhere_lets_an_engine_run_under_a_roof() {
    assert_eq!(lenient("Engine running: outdoors or with \\\n    the door open. Goggles.").len(), 1);
    assert!(lenient("Engine running: outdoors only. Paint with the door open.").is_empty());
    let mut all = Vec::new();
    texts(&root().join("core/src"), "rs", &mut all);
    texts(&root().join("mobile-shell/ui/src"), "ts", &mut all);
    texts(&root().join("mobile-shell/ui/src"), "svelte", &mut all);
    for folder in ["demo", "jobs", "knowledge", "packs"] {
        texts(&root().join("fixtures").join(folder), "toml", &mut all);
    }
    let mut words = Vec::new();
    texts(&root().join("fixtures/words"), "ftl", &mut words);
    // A message of the catalogue goes on where the next line is indented.
    all.extend(words.into_iter().map(|(path, text)| (path, text.replace("\n    ", " "))));
    assert!(all.iter().filter(|(_, text)| speaks_of(text, &RUNS)).count() > 20, "the words of the search are stale");
    for (path, text) in all {
        assert_eq!(lenient(&text), [""; 0], "{path}");
    }
}

#[test]
fn where_an_inspection_or_a_reading_runs_the_engine_it_says_outdoors() {
    let mut running = 0;
    for pack in packs() {
        for item in pack.items {
            let said = format!("{} {} {}", item.title, item.how, item.caution.clone().unwrap_or_default());
            if speaks_of(&said, &RUNS) {
                running += 1;
                assert!(speaks_of(&said, &["outdoors", "in the open air"]), "{} {}: {said}", pack.id, item.id);
            }
        }
    }
    assert!(running > 10, "the words of the search are stale");
    let sheet = charging_answer(&Bike::default(), &ChargingAsk::default()).unwrap();
    for line in sheet.tests.iter().filter(|line| matches!(line.test, ChargingTest::Idle | ChargingTest::Fast)) {
        assert!(line.caution.as_ref().is_some_and(|said| speaks_of(&said.english(), &["outdoors only"])), "{line:?}");
    }
}
