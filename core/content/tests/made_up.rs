//! A made-up tree of two files and its translation: what is merged, marked and refused, each with its place.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

use std::path::Path;

use layshaft_content::{Content, Merged, Problem, folders, plain};
use serde_json::Value;
use tempfile::TempDir;

const JOB: &str = r#"title = "Oil the hinge"
stage = "repair"
handsOnMinutes = 5.0
leastMinutes = 2.0
mostMinutes = 9.0
tools = ["oil can", "rag"]
wait = { name = "oil creeps", hours = 1.0 }

[[steps]]
id = "wipe"
text = "Wipe the hinge."

[[steps]]
id = "drop"
text = "Put one drop on it."
caution = "Not more."
"#;
const WHEEL: &str = r#"title = "Wheel"
part = "wheel"

[[steps]]
id = "primer"
name = "Primer"
layer = "base"
product = "primer"
"#;

/// Two files in folders of their own, with what else a test writes there.
fn tree(more: &[(&str, &str)]) -> TempDir {
    let root = tempfile::tempdir().unwrap();
    for folder in folders() {
        std::fs::create_dir_all(root.path().join(folder)).unwrap();
    }
    for (path, text) in [("jobs/hinge.toml", JOB), ("processes/wheel.toml", WHEEL)].iter().chain(more) {
        let path = root.path().join(path);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    }
    root
}

fn translated(more: &[(&str, &str)]) -> Result<Merged, Problem> {
    let root = tree(more);
    Content::read(root.path())?.language(root.path(), "de")
}

/// What is said of a job with one thing changed, without the folder above.
fn refusal(from: &str, to: &str) -> String {
    assert!(JOB.contains(from), "{from}");
    let root = tree(&[("jobs/hinge.toml", &JOB.replacen(from, to, 1))]);
    let said = Content::read(root.path()).err().unwrap().to_string();
    said.replace(&format!("{}/", root.path().display()), "")
}

#[test]
fn a_translation_says_some_texts_and_the_rest_stays_english_with_a_mark() {
    let job =
        "title = \"Scharnier ölen\"\n[steps.drop]\ntext = \"Einen Tropfen darauf.\"\n[wait]\nname = \"Öl kriecht\"\n";
    let shared = "[tools]\nrag = \"Lappen\"\n";
    let merged = translated(&[("jobs/de/hinge.toml", job), ("jobs/de/shared.toml", shared)]).unwrap();
    let content: Value = serde_json::from_str(&merged.json).unwrap();
    let hinge = &content["jobs"]["hinge"];
    assert_eq!(hinge["title"], "Scharnier ölen");
    assert_eq!(hinge["tools"][0], "oil can (EN)");
    assert_eq!(hinge["tools"][1], "Lappen");
    assert_eq!(hinge["wait"]["name"], "Öl kriecht");
    assert_eq!((&hinge["steps"][0]["id"], &hinge["stage"]), (&"wipe".into(), &"repair".into()));
    assert_eq!(hinge["steps"][0]["text"], "Wipe the hinge. (EN)");
    assert_eq!(hinge["steps"][1]["text"], "Einen Tropfen darauf.");
    assert_eq!(content["processes"]["wheel"]["steps"][0]["product"], "primer");
    let missing = [
        "jobs/hinge/steps/drop/caution",
        "jobs/hinge/steps/wipe/text",
        "jobs/shared/tools/oil-can",
        "processes/wheel/steps/primer/name",
        "processes/wheel/title",
    ];
    assert_eq!((merged.missing.as_slice(), merged.texts), (missing.map(str::to_owned).as_slice(), 9));
}

#[test]
fn a_step_that_moves_keeps_its_translation() {
    let (head, steps) = JOB.split_once("[[steps]]").unwrap();
    let (wipe, drop) = steps.split_once("[[steps]]").unwrap();
    let moved = format!("{head}[[steps]]{drop}[[steps]]{wipe}");
    let german = ("jobs/de/hinge.toml", "[steps.wipe]\ntext = \"Abwischen.\"\n");
    let merged = translated(&[("jobs/hinge.toml", &moved), german]).unwrap();
    let content: Value = serde_json::from_str(&merged.json).unwrap();
    assert_eq!(content["jobs"]["hinge"]["steps"][1]["text"], "Abwischen.");
}

#[test]
fn a_translation_of_what_is_not_there_is_refused_with_its_file_line_and_key() {
    let said = |name: &str, text: &str| translated(&[(name, text)]).unwrap_err().to_string();
    let step = said("jobs/de/hinge.toml", "title = \"Scharnier\"\n[steps.grease]\ntext = \"Fetten.\"\n");
    assert!(
        step.ends_with("jobs/de/hinge.toml, line 3: there is no text with the key jobs/hinge/steps/grease/text"),
        "{step}"
    );
    let data = said("jobs/de/hinge.toml", "stage = \"build\"\n");
    assert!(data.ends_with("there is no text with the key jobs/hinge/stage"), "{data}");
    let file = said("processes/de/tank.toml", "title = \"Tank\"\n");
    assert!(
        file.ends_with("processes/de/tank.toml, line 1: there is no text with the key processes/tank/title"),
        "{file}"
    );
    let empty = said("jobs/de/hinge.toml", "title = \" \"\n");
    assert!(empty.ends_with("line 1: a text says something and has no spaces around it"), "{empty}");
    let none = translated(&[]).unwrap_err().to_string();
    assert_eq!(none, "no folder holds a translation for “de”");
    let root = tree(&[]);
    let map = [("jobs/hinge/colour".to_owned(), "rot".to_owned())].into();
    let unknown = Content::read(root.path()).unwrap().merged(&map).unwrap_err().to_string();
    assert_eq!(unknown, "there is no text with the key jobs/hinge/colour");
}

#[test]
fn what_is_wrong_in_a_file_is_named_with_its_line() {
    assert_eq!(refusal("stage", "stgae"), "jobs/hinge.toml, line 2: there is no field `stgae` here");
    assert_eq!(refusal("caution", "cuation"), "jobs/hinge.toml, line 16: there is no field `cuation` here");
    assert_eq!(refusal("id = \"drop\"\n", ""), "jobs/hinge.toml, line 13: the field `id` is missing");
    assert_eq!(refusal("\"drop\"", "\"wipe\""), "jobs/hinge.toml, line 14: the id `wipe` stands here twice");
    assert!(refusal("\"drop\"", "\"Drop/1\"").starts_with("jobs/hinge.toml, line 14: the id `Drop/1` may hold only"));
    assert_eq!(refusal("title = \"Oil the hinge\"", "title = 3"), "jobs/hinge.toml, line 1: a text is expected here");
    assert_eq!(refusal("5.0", "nan"), "jobs/hinge.toml, line 3: this number cannot be used; write it as digits");
    assert_eq!(refusal("[\"oil can\", \"rag\"]", "\"rag\""), "jobs/hinge.toml, line 6: a list is expected here");
    let broken = refusal("title = \"Oil the hinge\"", "title = \"Oil the hinge");
    assert!(broken.starts_with("jobs/hinge.toml, line 1: "), "{broken}");
    let twice = refusal("\"rag\"", "\"Oil can\"");
    assert_eq!(
        twice,
        "jobs/shared/tools/oil-can stands for two texts: “oil can” and “Oil can”; word one of them otherwise"
    );
}

#[test]
fn a_file_cannot_be_called_as_what_several_files_share() {
    let root = tree(&[("jobs/shared.toml", JOB)]);
    let said = Content::read(root.path()).err().unwrap().to_string();
    assert!(said.contains("jobs/shared.toml, line 1: this name is taken"), "{said}");
}

#[test]
fn data_without_texts_is_written_as_it_is() {
    let root = tempfile::tempdir().unwrap();
    let path = root.path().join("data.toml");
    std::fs::write(&path, "n = 0x10\nx = 1_000.5\nlist = [true, { a = \"b\" }]\n").unwrap();
    assert_eq!(plain(&path).unwrap(), r#"{"list":[true,{"a":"b"}],"n":16,"x":1000.5}"#);
    std::fs::write(&path, "day = 2026-03-21\n").unwrap();
    assert!(plain(&path).unwrap_err().to_string().ends_with("line 1: a date is written in quotes"));
    assert!(plain(Path::new("no-such.toml")).unwrap_err().to_string().starts_with("no-such.toml: "));
}
