//! Writes what is generated and committed, or says which of the committed files are out of step.
//!
//! These are the types of the pages, the table of units, and one text with the whole API, in which a reviewer sees what a change does to it.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use crate::command::{Failure, Outcome, at_path, fresh_folder, program, run};
use crate::{languages, paths};

/// Where the generated files are committed.
const COMMITTED: &str = "bindings/generated";

/// Writes them all, or with `check` compares what would be written.
pub fn committed(check: bool) -> Outcome {
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

fn write(folder: &Path) -> Outcome {
    let library = languages::library()?;
    fresh_folder(folder)?;
    run(program(paths::target("debug/export-types")).arg(folder))?;
    run(program(paths::target("debug/api-snapshot")).arg(library).arg(folder.join("api.txt")))
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

    use super::differences;

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
