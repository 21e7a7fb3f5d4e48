//! Lists the languages of the catalogue, as they lie in `fixtures/words`, with what the core says in each.

use std::fmt::Write as _;
use std::io::{Error, Result};
use std::path::{Path, PathBuf};

fn main() -> Result<()> {
    let words = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/words");
    println!("cargo::rerun-if-changed={}", words.display());
    let mut list = String::from("&[");
    for language in sorted(&words)?.into_iter().filter(|path| path.is_dir()) {
        write!(list, "({:?}, &[", name(&language)).map_err(Error::other)?;
        let core = language.join("core");
        let files = if core.is_dir() { sorted(&core)? } else { Vec::new() };
        for file in files.iter().filter(|path| path.extension().is_some_and(|end| end == "ftl")) {
            let path = file.canonicalize()?;
            write!(list, "({:?}, include_str!({path:?})),", format!("core/{}", name(file))).map_err(Error::other)?;
        }
        list.push_str("]),");
    }
    list.push(']');
    let out = std::env::var("OUT_DIR").map_err(Error::other)?;
    std::fs::write(Path::new(&out).join("languages.rs"), list)
}

fn sorted(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(folder)? {
        paths.push(entry?.path());
    }
    paths.sort();
    Ok(paths)
}

fn name(path: &Path) -> String {
    path.file_name().unwrap_or_default().to_string_lossy().into_owned()
}
