//! The documents for contributors name only what is there.

use std::path::{Path, PathBuf};

use crate::root;
use crate::vectors::files;

/// Where a document counts its paths from, beside the root: the places that it speaks of at length.
const BASES: [&str; 8] = [
    "",
    "core/src",
    "core/src/plan",
    "mobile-shell",
    "mobile-shell/ui",
    "mobile-shell/ui/src",
    "mobile-shell/src-tauri",
    "bindings",
];

/// Ends of the names of files that a document speaks of.
const ENDS: [&str; 9] = [".rs", ".md", ".ts", ".mjs", ".toml", ".svelte", ".css", ".txt", ".sh"];

/// Folders that are made on demand, and the names of a made-up page.
const NOT_HERE: [&str; 5] = [".build/", "target/", "Name.svelte", "gen/android", "my/folder"];

/// What stands between single backticks, outside of blocks of code, each with the folder that its row of a table is about.
fn quoted(text: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut in_block = false;
    for line in text.lines() {
        if line.trim_start().starts_with("```") {
            in_block = !in_block;
        } else if !in_block {
            let words = || line.split('`').skip(1).step_by(2);
            let row = words().next().filter(|_| line.starts_with('|')).unwrap_or_default();
            found.extend(words().map(|word| (word.to_owned(), row.to_owned())));
        }
    }
    found
}

/// Whether it is the path of a file or folder, and not a command, a name of the code or a pattern.
fn is_path(word: &str) -> bool {
    let plain = word.chars().all(|letter| letter.is_ascii_alphanumeric() || "/._-".contains(letter));
    let folder = word.contains('/') && !word.starts_with('/');
    plain && (folder || ENDS.iter().any(|end| word.ends_with(end) && word.len() > end.len()))
}

/// Whether the tree has it: from one of the bases, beside the document, or as the name of a room of `core` such as `judge/`.
fn is_there(word: &str, document: &Path) -> bool {
    let from = |base: &Path| base.join(word).exists();
    let mut sources = Vec::new();
    files(&root().join("core/src"), "rs", &mut sources);
    BASES.iter().any(|base| from(&root().join(base)))
        || document.parent().is_some_and(from)
        || sources.iter().any(|file| {
            let room = format!("/{}", word.trim_end_matches('/'));
            let file = file.to_string_lossy();
            file.ends_with(&room) || word.ends_with('/') && file.contains(&format!("{room}/"))
        })
}

fn documents() -> Vec<PathBuf> {
    let mut found = vec![root().join("README.md"), root().join("DEVELOPERS.md"), root().join("bindings/README.md")];
    files(&root().join("fixtures"), "md", &mut found);
    found
}

#[test]
fn every_path_that_a_document_names_is_there() {
    let mut missing = Vec::new();
    let mut seen = 0;
    for document in documents() {
        let text = std::fs::read_to_string(&document).unwrap();
        for (word, row) in quoted(&text).into_iter().filter(|(word, _)| is_path(word)) {
            seen += 1;
            let made = NOT_HERE.iter().any(|made| word.starts_with(made));
            if !made && !root().join(row).join(&word).exists() && !is_there(&word, &document) {
                missing.push(format!("{}: {word}", document.display()));
            }
        }
    }
    assert!(missing.is_empty(), "{missing:#?}");
    assert!(seen > 50, "only {seen} paths were found");
}

#[test]
fn a_path_is_told_from_a_command_and_from_code() {
    for path in ["core/src/lib.rs", "fixtures/", "tests/suite/floors", "api.txt"] {
        assert!(is_path(path), "{path}");
    }
    for other in ["cargo xtask test", "Bound::check", "#[wire]", "fixtures/vectors/<area>", "*.svelte.ts", "act", "/"] {
        assert!(!is_path(other), "{other}");
    }
    assert!(!is_there("core/src/no-such-file.rs", &root().join("README.md")));
}
