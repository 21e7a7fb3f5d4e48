//! The invariants of the architecture, as tests.

use std::path::{Path, PathBuf};

use crate::root;

pub fn rust_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        let path = entry.path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir()
            && !["target", "node_modules", "generated", "gen", "dist", ".build", ".git"].contains(&name.as_str())
        {
            rust_files(&path, found);
        } else if name.ends_with(".rs") {
            found.push(path);
        }
    }
}

/// The text without its items for tests, wherever they stand. It reads the layout of rustfmt: an item is one line, or goes
/// to the next line that begins with a bracket as far in as its own first line.
pub fn without_tests(text: &str) -> String {
    let mut kept = String::new();
    let mut lines = text.lines();
    while let Some(line) = lines.next() {
        if line.trim() != "#[cfg(test)]" {
            kept.push_str(line);
            kept.push('\n');
            continue;
        }
        let margin = &line[..line.len() - line.trim_start().len()];
        let Some(first) = lines.by_ref().find(|line| !line.trim_start().starts_with("#[")) else { break };
        if !first.ends_with([';', '}']) {
            lines.by_ref().find(|line| line.strip_prefix(margin).is_some_and(|rest| rest.starts_with(['}', ')', ']'])));
        }
    }
    kept
}

#[test]
fn code_behind_the_tests_of_a_file_is_looked_at_too() {
    let text = "\
use a::b;
#[cfg(test)]
use c::d;
mod e {
    #[cfg(test)]
    #[path = \"f_tests.rs\"]
    mod tests;
    fn g() {}
}

#[cfg(test)]
mod tests {
    fn h() {
        SystemTime::now();
    }
}

fn i() {
    Instant::now();
}
";
    let kept = without_tests(text);
    assert_eq!(kept, "use a::b;\nmod e {\n    fn g() {}\n}\n\n\nfn i() {\n    Instant::now();\n}\n");
    // A file of the core that went on behind its tests would be read to its end.
    assert_eq!(without_tests("fn a() {}\n#[cfg(test)]\n"), "fn a() {}\n");
}

/// Dependencies that a manifest names in any table but the one for development.
fn dependencies(manifest: &str) -> Vec<String> {
    let text = std::fs::read_to_string(root().join(manifest)).unwrap();
    let table: toml::Table = toml::from_str(&text).unwrap();
    let mut names = Vec::new();
    let mut tables = vec![&table];
    if let Some(targets) = table.get("target").and_then(toml::Value::as_table) {
        tables.extend(targets.values().filter_map(toml::Value::as_table));
    }
    for table in tables {
        let found = table.get("dependencies").and_then(toml::Value::as_table);
        names.extend(found.into_iter().flat_map(|table| table.keys().cloned()));
    }
    names
}

#[test]
fn crates_depend_only_in_the_drawn_direction() {
    let allowed: [(&str, &[&str]); 8] = [
        ("core/Cargo.toml", &["layshaft-wire"]),
        ("core/content/Cargo.toml", &[]),
        ("mobile-shell/storage/Cargo.toml", &["layshaft-core", "layshaft-wire"]),
        ("bindings/door/Cargo.toml", &["layshaft-core", "layshaft-storage", "layshaft-wire"]),
        ("bindings/words/Cargo.toml", &[]),
        ("bindings/uniffi/Cargo.toml", &["layshaft-core", "layshaft-door", "layshaft-words"]),
        ("bindings/wasm/Cargo.toml", &["layshaft-core", "layshaft-door", "layshaft-storage"]),
        ("mobile-shell/src-tauri/Cargo.toml", &["layshaft-core", "layshaft-door", "layshaft-words"]),
    ];
    for (manifest, allowed) in allowed {
        for name in dependencies(manifest).iter().filter(|name| name.starts_with("layshaft-")) {
            assert!(allowed.contains(&name.as_str()), "{manifest} may not use {name}");
        }
    }
}

#[test]
fn only_the_storage_knows_sqlite() {
    for manifest in [
        "core/Cargo.toml",
        "bindings/door/Cargo.toml",
        "bindings/uniffi/Cargo.toml",
        "mobile-shell/src-tauri/Cargo.toml",
    ] {
        let found = dependencies(manifest);
        assert!(!found.iter().any(|name| name.contains("sqlite")), "{manifest}: {found:?}");
    }
}

#[test]
fn no_reader_of_toml_is_in_the_program() {
    for manifest in [
        "core/Cargo.toml",
        "mobile-shell/storage/Cargo.toml",
        "bindings/door/Cargo.toml",
        "bindings/words/Cargo.toml",
        "bindings/uniffi/Cargo.toml",
        "bindings/wasm/Cargo.toml",
        "mobile-shell/src-tauri/Cargo.toml",
    ] {
        let found = dependencies(manifest);
        assert!(!found.iter().any(|name| name == "toml"), "{manifest}: {found:?}");
    }
}

#[test]
fn the_core_reads_no_clock_no_file_no_chance_and_starts_no_thread() {
    let forbidden = [
        "SystemTime",
        "Instant::now",
        "Utc::now",
        "Local::now",
        "std::fs",
        "std::net",
        "std::thread",
        "std::env",
        "RandomState",
        "rand::",
    ];
    let mut files = Vec::new();
    rust_files(&root().join("core/src"), &mut files);
    for file in files {
        let text = without_tests(&std::fs::read_to_string(&file).unwrap());
        for word in forbidden {
            assert!(!text.contains(word), "{} uses {word}", file.display());
        }
    }
}

#[test]
fn every_accepted_range_stands_in_the_one_table() {
    let mut found = Vec::new();
    rust_files(&root().join("core/src"), &mut found);
    let elsewhere: Vec<String> = found
        .iter()
        .filter(|path| !path.ends_with("core/src/bounds.rs"))
        .filter(|path| {
            let text = without_tests(&std::fs::read_to_string(path).unwrap());
            // A range is made by writing its fields out; a signature that returns one is not, nor are methods of it.
            text.lines().any(|line| line.contains("Bound {") && !line.contains("-> ") && !line.starts_with("impl "))
        })
        .map(|path| path.display().to_string())
        .collect();
    assert!(elsewhere.is_empty(), "ranges outside bounds.rs: {elsewhere:#?}");
}

#[test]
fn every_line_of_a_working_comes_from_a_formula() {
    let mut found = Vec::new();
    rust_files(&root().join("core/src"), &mut found);
    let home = root().join("core/src/quantity");
    let made = |line: &str| line.contains("WorkLine::new") || (line.contains("WorkLine {") && !line.contains("-> "));
    let elsewhere: Vec<String> = found
        .iter()
        .filter(|path| !path.starts_with(&home))
        .filter(|path| without_tests(&std::fs::read_to_string(path).unwrap()).lines().any(made))
        .map(|path| path.display().to_string())
        .collect();
    assert!(elsewhere.is_empty(), "equations written by hand: {elsewhere:#?}");
}

#[test]
fn every_rust_file_says_what_it_is_for_and_stays_readable() {
    let mut files = Vec::new();
    rust_files(&root(), &mut files);
    assert!(files.len() > 50);
    for file in files {
        let text = std::fs::read_to_string(&file).unwrap();
        assert!(text.starts_with("//!"), "{} does not open with //!", file.display());
        let lines = without_tests(&text).lines().count();
        assert!(lines <= 600, "{} has {lines} lines", file.display());
    }
}

#[test]
fn every_svelte_file_stays_readable() {
    let mut open = vec![root().join("mobile-shell/ui/src")];
    let mut seen = 0;
    while let Some(folder) = open.pop() {
        for entry in std::fs::read_dir(folder).unwrap().flatten() {
            let path = entry.path();
            if path.is_dir() {
                open.push(path);
            } else if path.extension().is_some_and(|end| end == "svelte") {
                seen += 1;
                let lines = std::fs::read_to_string(&path).unwrap().lines().count();
                assert!(lines <= 350, "{} has {lines} lines", path.display());
            }
        }
    }
    assert!(seen > 10);
}
