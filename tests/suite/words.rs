//! The catalogue has words for everything that the core says, and for nothing else.

use std::collections::BTreeSet;

use layshaft_tests::{declared, english, unknown, unused, without_words};

#[test]
fn each_message_of_the_core_has_words_and_they_use_what_it_brings() {
    let catalogue = english().unwrap();
    assert_eq!(without_words(&catalogue), [""; 0]);
    assert_eq!(unknown(&catalogue), [""; 0]);
}

#[test]
fn the_catalogue_has_no_words_for_what_nobody_says() {
    let ids: BTreeSet<&str> = declared().map(|declared| declared.id).collect();
    assert_eq!(ids.len(), declared().count(), "an id stands twice");
    assert_eq!(unused(&english().unwrap()), [""; 0]);
}

#[test]
fn every_enum_of_messages_is_listed() {
    let lists =
        [("core/src", "catalogue.rs"), ("bindings/door/src", "message.rs"), ("mobile-shell/storage/src", "message.rs")];
    let mut missing = Vec::new();
    for (folder, list) in lists {
        missing.extend(not_listed(&crate::root().join(folder), list));
    }
    assert!(missing.is_empty(), "{missing:?}");
}

fn not_listed(folder: &std::path::Path, list: &str) -> Vec<String> {
    let listed = std::fs::read_to_string(folder.join(list)).unwrap();
    let mut missing = Vec::new();
    let mut files = Vec::new();
    crate::architecture::rust_files(folder, &mut files);
    for path in files {
        let text = std::fs::read_to_string(&path).unwrap();
        for (_, after) in text.match_indices("#[message(\"").map(|(at, _)| text.split_at(at)) {
            let name = after.split("enum ").nth(1).and_then(|rest| rest.split_whitespace().next()).unwrap_or_default();
            if !listed.contains(&format!("{name}::DECLARED")) {
                missing.push(format!("{}: {name}", path.display()));
            }
        }
    }
    missing
}

#[test]
fn every_file_of_the_core_in_the_catalogue_is_read() {
    let folder = crate::root().join("fixtures/words/en/core");
    let there: BTreeSet<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| format!("core/{}", entry.unwrap().file_name().to_string_lossy()))
        .collect();
    let read: BTreeSet<String> =
        layshaft_words::files(layshaft_words::ENGLISH).iter().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(there, read);
}

/// Texts in a piece of Rust that read like a sentence or a label: a capital letter, and a second word.
fn sentences(code: &str) -> Vec<String> {
    let lines = code.lines().map(str::trim).filter(|line| !line.starts_with("//") && !line.starts_with("#["));
    let literals = lines.flat_map(|line| line.split('"').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>());
    let reads = |text: &str| {
        let mut words =
            text.split([' ', '\u{a0}']).filter(|word| word.chars().filter(|letter| letter.is_alphabetic()).count() > 1);
        let first = words.next().unwrap_or_default();
        let capital =
            first.starts_with(char::is_uppercase) && !first.chars().skip(1).any(|c| c.is_uppercase() || c.is_numeric());
        capital && words.next().is_some_and(|word| !word.contains(char::is_uppercase))
    };
    // An equation has its words from the handbook's own language of symbols.
    literals.filter(|text| reads(text) && !text.contains(" = ")).collect()
}

#[test]
fn no_sentence_stands_in_the_core_beside_the_catalogue() {
    assert_eq!(
        sentences("say(\"The chain is slack.\"); // \"Not this one\"\n//! \"Nor this\"\nid(\"two words\", \"Tern\")"),
        ["The chain is slack.", "Not this one"]
    );
    for folder in ["core/src", "bindings/door/src"] {
        let mut files = Vec::new();
        crate::architecture::rust_files(&crate::root().join(folder), &mut files);
        assert!(files.len() > 10);
        for path in files {
            let shown = path.display().to_string();
            let of_tests = shown.ends_with("_tests.rs") || shown.contains("/tests") || shown.contains("/bin/");
            if of_tests {
                continue;
            }
            let code = crate::architecture::without_tests(&std::fs::read_to_string(&path).unwrap());
            assert_eq!(sentences(&code), [""; 0], "{shown}");
        }
    }
}
