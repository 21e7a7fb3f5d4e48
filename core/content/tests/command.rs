//! The command line, as whoever builds languages calls it.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

use std::collections::BTreeMap;
use std::process::{Command, Output};

use serde_json::Value;

fn run(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_layshaft-content")).args(words).output().unwrap()
}

fn said(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

#[test]
fn all_texts_come_out_and_go_back_in_as_another_language() {
    let texts: BTreeMap<String, String> = serde_json::from_slice(&run(&["texts"]).stdout).unwrap();
    assert!(texts.len() > 1_800);
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("texts.json");
    let made_up: BTreeMap<&String, String> = texts.iter().map(|(key, text)| (key, format!("⟦{text}⟧"))).collect();
    std::fs::write(&file, serde_json::to_string(&made_up).unwrap()).unwrap();
    let merged = run(&["merged", file.to_str().unwrap()]);
    assert!(merged.status.success());
    let content: Value = serde_json::from_slice(&merged.stdout).unwrap();
    assert_eq!(content["jobs"]["brake-bleed"]["title"], "⟦Bleed a hydraulic brake⟧");
    let count = format!("{0} of {0} texts are translated; ", texts.len());
    assert!(said(&merged.stderr).starts_with(&count), "{}", said(&merged.stderr));
}

#[test]
fn what_is_missing_is_listed_and_what_is_wrong_fails() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("texts.json");
    std::fs::write(&file, r#"{ "jobs/brake-bleed/title": "Bremse entlüften" }"#).unwrap();
    let merged = run(&["merged", file.to_str().unwrap()]);
    assert!(said(&merged.stderr).contains("not translated: jobs/brake-bleed/steps/stroke/text\n"));
    assert!(!said(&merged.stderr).contains("not translated: jobs/brake-bleed/title\n"));
    std::fs::write(&file, r#"{ "jobs/brake-bleed/tilte": "Bremse entlüften" }"#).unwrap();
    let wrong = run(&["merged", file.to_str().unwrap()]);
    assert!(!wrong.status.success() && wrong.stdout.is_empty());
    assert_eq!(said(&wrong.stderr), "there is no text with the key jobs/brake-bleed/tilte\n");
    assert_eq!(said(&run(&["language", "no-such"]).stderr), "no folder holds a translation for “no-such”\n");
    assert!(said(&run(&[]).stderr).starts_with("layshaft-content texts"));
}
