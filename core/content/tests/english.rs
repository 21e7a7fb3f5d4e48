//! The files of this tree: every text has a key, nothing but texts has one, and the JSON says what the TOML says.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use layshaft_content::{Content, STILL_ENGLISH, folders};
use serde_json::Value;

fn fixtures() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures")
}

/// Each English file by kind and name, as a reader of TOML that knows nothing of kinds has it.
fn toml_files() -> Vec<(String, String, Value)> {
    let mut files = Vec::new();
    for folder in folders() {
        let kind = folder.rsplit('/').next().unwrap();
        for entry in std::fs::read_dir(fixtures().join(folder)).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_some_and(|end| end == "toml") {
                let name = path.file_stem().unwrap().to_string_lossy().into_owned();
                let text = std::fs::read_to_string(path).unwrap();
                files.push((kind.to_owned(), name, toml::from_str(&text).unwrap()));
            }
        }
    }
    files
}

fn strings(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::String(text) => found.push(text.clone()),
        Value::Array(list) => list.iter().for_each(|value| strings(value, found)),
        Value::Object(table) => table.values().for_each(|value| strings(value, found)),
        _ => {}
    }
}

#[test]
fn the_json_says_what_the_toml_says() {
    let content: Value = serde_json::from_str(&Content::read(&fixtures()).unwrap().json()).unwrap();
    let files = toml_files();
    assert!(files.len() > 80);
    for (kind, name, toml) in &files {
        assert_eq!(&content[kind][name], toml, "{kind}/{name}");
    }
    let written: usize = content.as_object().unwrap().values().map(|files| files.as_object().unwrap().len()).sum();
    assert_eq!(written, files.len());
}

#[test]
fn whatever_reads_like_a_sentence_has_a_key_and_no_id_has_one() {
    let content = Content::read(&fixtures()).unwrap();
    let texts: BTreeSet<&str> = content.texts().values().map(String::as_str).collect();
    let mut all = Vec::new();
    toml_files().iter().for_each(|(_, _, file)| strings(file, &mut all));
    let sentences: Vec<&String> = all.iter().filter(|text| text.contains(' ')).collect();
    assert!(sentences.len() > 1_500);
    for text in sentences {
        assert!(texts.contains(text.as_str()), "no key for “{text}”");
    }
    // One word may be an id or a text; what has hyphens between small letters and no space is an id.
    let ids = |text: &&&str| text.contains('-') && !text.contains(' ') && **text == text.to_lowercase();
    assert_eq!(texts.iter().filter(ids).collect::<Vec<_>>(), [&""; 0]);
}

#[test]
fn keys_name_kind_file_and_ids_and_no_place() {
    let content = Content::read(&fixtures()).unwrap();
    let texts = content.texts();
    let says = |key: &str, start: &str| assert!(texts[key].starts_with(start), "{key}: {}", texts[key]);
    says("jobs/brake-bleed/title", "Bleed");
    says("jobs/brake-bleed/steps/hose-on-nipple/text", "Put a ring spanner");
    says("jobs/brake-bleed/steps/close-up/caution", "Fluid on disc");
    says("jobs/tank-reline/wait/name", "liner");
    says("jobs/shared/tools/ring-spanner", "ring spanner");
    says("endings/brake/steps/brake-walking/text", "Brake, at walking pace");
    says("packs/eu/item/brake.controls/how", "Rock each");
    says("packs/eu/item/brake.controls/source/text", "Directive");
    says("packs/shared/area/brakes", "Brakes");
    says("knowledge/overheats/check/level/outcomes/bad", "Below the mark");
    says("knowledge/shared/cure/clean-the-fins", "Clean the fins");
    says("products/tank-liner/sheet/name", "Tank liner");
    says("processes/wheel/steps/first-wheel-paint/name", "First wheel paint");
    says("circuits/names/elements/key.feed.plug", "Live, fuse to key, plug contact");
    let numbered = texts.keys().filter(|key| key.split('/').skip(2).any(|part| part.parse::<u32>().is_ok()));
    assert_eq!(numbered.collect::<Vec<_>>(), [""; 0]);
}

#[test]
fn a_made_up_language_can_be_made_of_all_texts_and_lacks_none() {
    let content = Content::read(&fixtures()).unwrap();
    let made_up = |text: &String| format!("⟦{}~~~⟧", text.replace('a', "á"));
    let texts: BTreeMap<String, String> =
        content.texts().iter().map(|(key, text)| (key.clone(), made_up(text))).collect();
    let merged = content.merged(&texts).unwrap();
    assert_eq!(merged.missing, [""; 0]);
    assert_eq!(merged.texts, texts.len());
    let mut all = Vec::new();
    strings(&serde_json::from_str(&merged.json).unwrap(), &mut all);
    let plain: Vec<&String> = all.iter().filter(|text| text.contains(' ') && !text.starts_with('⟦')).collect();
    assert!(plain.is_empty(), "{plain:?}");
    let nothing = content.merged(&BTreeMap::new()).unwrap();
    assert_eq!(nothing.missing.len(), texts.len());
}

#[test]
fn a_text_that_stays_english_is_marked_as_the_catalogue_marks_it() {
    let catalogue = std::fs::read_to_string(fixtures().join("words/en/core/shared.ftl")).unwrap();
    let marked = catalogue.lines().find_map(|line| line.strip_prefix("in-english = ")).unwrap();
    assert_eq!(marked, format!("{{ $text }}{STILL_ENGLISH}"));
}

/// An English text is at most half as long as the program takes one: a translation may well need more room than it.
#[test]
fn english_packs_leave_a_translation_room() {
    let content = Content::read(&fixtures()).unwrap();
    for (key, text) in content.texts().iter().filter(|(key, _)| key.starts_with("packs/")) {
        let most = match key {
            key if key.ends_with("/title") || key.ends_with("/place") => 120,
            key if key.ends_with("/source/text") => 200,
            _ => 600,
        };
        assert!(text.chars().count() <= most, "{key} has more than {most} characters");
    }
}
