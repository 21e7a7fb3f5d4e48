//! What is handed out says nothing about the machine it was built on: local folders are renamed, and looked for.

use std::path::Path;

use crate::command::{Failure, Outcome, at_path};
use crate::paths;

/// A folder of this machine, and what stands for it in what is built.
pub type PathMap = (String, &'static str);

/// The folders that compilers would write into messages and debugging data.
pub fn path_maps(sysroot: String) -> Vec<PathMap> {
    vec![(paths::root().display().to_string(), "layshaft"), (cargo_home(), "cargo"), (sysroot, "rust")]
}

pub fn rust_flags(maps: &[PathMap]) -> String {
    let flags: Vec<String> = maps.iter().map(|(from, to)| format!("--remap-path-prefix={from}={to}")).collect();
    flags.join(" ")
}

pub fn c_flags(maps: &[PathMap]) -> String {
    let flags: Vec<String> = maps.iter().map(|(from, to)| format!("-ffile-prefix-map={from}={to}")).collect();
    flags.join(" ")
}

/// Fails if a file in `place` (or `place` itself) names a folder of this machine.
pub fn refuse_local_paths(place: &Path) -> Outcome {
    let local = [paths::root().display().to_string(), cargo_home(), format!("{}/", home())];
    let mut open = vec![place.to_path_buf()];
    while let Some(path) = open.pop() {
        if path.is_dir() {
            let entries = at_path(&path, std::fs::read_dir(&path))?;
            open.extend(entries.flatten().map(|entry| entry.path()));
            continue;
        }
        let content = at_path(&path, std::fs::read(&path))?;
        if let Some(named) = local.iter().find(|folder| folder.len() > 2 && contains(&content, folder.as_bytes())) {
            return Err(Failure(format!("{} names the local folder {named}, and must not.", path.display())));
        }
    }
    Ok(())
}

fn contains(content: &[u8], wanted: &[u8]) -> bool {
    content.windows(wanted.len()).any(|window| window == wanted)
}

fn home() -> String {
    std::env::var("HOME").unwrap_or_default()
}

/// Where cargo keeps the sources of other people's crates.
fn cargo_home() -> String {
    std::env::var("CARGO_HOME").unwrap_or_else(|_| format!("{}/.cargo", home()))
}

#[cfg(test)]
mod tests {
    use super::{cargo_home, refuse_local_paths};

    #[test]
    fn a_file_that_names_a_local_folder_is_refused_and_one_that_does_not_passes() {
        let folder = std::env::temp_dir().join(format!("layshaft-shipped-{}", std::process::id()));
        let inner = folder.join("inner");
        let written = std::fs::create_dir_all(&inner)
            .and_then(|()| std::fs::write(inner.join("clean.wasm"), b"\0asm cargo/registry"))
            .map(|()| refuse_local_paths(&folder).is_ok())
            .and_then(|clean| {
                std::fs::write(inner.join("stray.wasm"), format!("\0asm {}/registry", cargo_home()))?;
                Ok((clean, refuse_local_paths(&folder).is_err()))
            });
        let removed = std::fs::remove_dir_all(&folder);
        assert!(matches!(written, Ok((true, true))), "{written:?}");
        assert!(removed.is_ok());
    }
}
