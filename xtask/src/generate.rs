//! Writes the bindings that are generated and committed, or says which of the committed ones are out of step.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use crate::command::{Failure, Outcome, at_path, cargo, fresh_folder, program, run};
use crate::needs;
use crate::paths;

/// Where the generated bindings are committed.
const COMMITTED: &str = "bindings/generated";

/// Names that other languages have taken.
const LANGUAGES: &str = "bindings/uniffi/languages.toml";

/// Writes them all, or with `check` compares what would be written.
pub fn bindings(check: bool) -> Outcome {
    if !check {
        return write(&paths::at(COMMITTED));
    }
    let fresh = paths::made("generated");
    write(&fresh)?;
    let stale = differences(&paths::at(COMMITTED), &fresh)?;
    if stale.is_empty() {
        return Ok(());
    }
    let names: Vec<String> = stale.iter().map(|file| format!("  {COMMITTED}/{}", file.display())).collect();
    Err(Failure(format!(
        "These files are not what `cargo xtask generate` writes; run it and commit:\n{}",
        names.join("\n")
    )))
}

/// The library that other languages load, built for testing: a stripped one would have lost what the generator reads.
pub fn library() -> Outcome<PathBuf> {
    needs::c_compiler()?;
    // All features and all default members, exactly as the tests build them, so that nothing is compiled twice.
    run(cargo().args(["build", "--quiet", "--all-features"]))?;
    let (prefix, suffix) = (std::env::consts::DLL_PREFIX, std::env::consts::DLL_SUFFIX);
    Ok(paths::target(&format!("debug/{prefix}layshaft_uniffi{suffix}")))
}

fn write(folder: &Path) -> Outcome {
    let library = library()?;
    let types = folder.join("typescript");
    fresh_folder(&types)?;
    run(program(paths::target("debug/export-types")).arg(&types))?;
    for (language, inner) in [("kotlin", ""), ("swift", ""), ("python", "layshaft")] {
        fresh_folder(&folder.join(language))?;
        // The Python modules import each other as parts of one package.
        let out = folder.join(language).join(inner);
        let mut generator = program(paths::target("debug/uniffi-bindgen"));
        generator.arg("generate").arg(&library).args(["--config", LANGUAGES, "--language", language, "--no-format"]);
        generator.arg("--out-dir").arg(&out);
        run(&mut generator)?;
        if language == "python" {
            sort_sisters(&out)?;
        }
    }
    Ok(())
}

/// Puts the imports of sister modules in order: the generator writes them in an order that differs from run to run.
fn sort_sisters(folder: &Path) -> Outcome {
    for entry in at_path(folder, std::fs::read_dir(folder))?.flatten() {
        let path = entry.path();
        let text = at_path(&path, std::fs::read_to_string(&path))?;
        at_path(&path, std::fs::write(&path, with_sisters_sorted(&text)))?;
    }
    Ok(())
}

fn with_sisters_sorted(text: &str) -> String {
    let mut lines: Vec<&str> = text.split('\n').collect();
    for sisters in lines.chunk_by_mut(|one, next| is_sister(one) && is_sister(next)) {
        sisters.sort_unstable();
    }
    lines.join("\n")
}

fn is_sister(line: &str) -> bool {
    line.starts_with("from . import ")
}

/// The files that are missing, superfluous or different in `committed`.
fn differences(committed: &Path, fresh: &Path) -> Outcome<Vec<PathBuf>> {
    let mut names = BTreeSet::new();
    list(committed, committed, &mut names)?;
    list(fresh, fresh, &mut names)?;
    let same = |name: &PathBuf| match (std::fs::read(committed.join(name)), std::fs::read(fresh.join(name))) {
        (Ok(one), Ok(other)) => one == other,
        _ => false,
    };
    Ok(names.into_iter().filter(|name| !same(name)).collect())
}

fn list(root: &Path, folder: &Path, names: &mut BTreeSet<PathBuf>) -> Outcome {
    if !folder.exists() {
        return Ok(());
    }
    for entry in at_path(folder, std::fs::read_dir(folder))?.flatten() {
        let path = entry.path();
        if path.is_dir() {
            list(root, &path, names)?;
        } else if let Ok(name) = path.strip_prefix(root) {
            names.insert(name.to_path_buf());
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use std::path::PathBuf;

    use super::{differences, with_sisters_sorted};

    #[test]
    fn only_the_imports_of_sisters_are_sorted() {
        let text = "import b\nimport a\nfrom . import door\nfrom . import core\n\nfrom . import alone\n";
        let sorted = "import b\nimport a\nfrom . import core\nfrom . import door\n\nfrom . import alone\n";
        assert_eq!(with_sisters_sorted(text), sorted);
        assert_eq!(with_sisters_sorted(sorted), sorted);
    }

    #[test]
    fn missing_superfluous_and_changed_files_are_named() {
        let folder = std::env::temp_dir().join(format!("layshaft-generate-{}", std::process::id()));
        let (committed, fresh) = (folder.join("committed"), folder.join("fresh"));
        let files = [
            (&committed, "same.ts", "a"),
            (&fresh, "same.ts", "a"),
            (&committed, "changed.ts", "a"),
            (&fresh, "changed.ts", "b"),
            (&committed, "kotlin/old.kt", ""),
            (&fresh, "kotlin/new.kt", ""),
        ];
        for (root, name, text) in files {
            let path = root.join(name);
            let made = path.parent().is_some_and(|parent| std::fs::create_dir_all(parent).is_ok());
            assert!(made && std::fs::write(&path, text).is_ok(), "{}", path.display());
        }
        let named = differences(&committed, &fresh).unwrap_or_default();
        let removed = std::fs::remove_dir_all(&folder);
        assert_eq!(named, ["changed.ts", "kotlin/new.kt", "kotlin/old.kt"].map(PathBuf::from));
        assert!(removed.is_ok());
    }
}
