//! Where things lie. What is made and not committed goes under `.build` or cargo's target folder.

use std::path::{Path, PathBuf};

/// The root of the work tree.
pub fn root() -> PathBuf {
    let manifest = Path::new(env!("CARGO_MANIFEST_DIR"));
    manifest.parent().unwrap_or(manifest).to_path_buf()
}

/// A path below the root.
pub fn at(relative: &str) -> PathBuf {
    root().join(relative)
}

/// A path for something that is made here and not committed.
pub fn made(relative: &str) -> PathBuf {
    root().join(".build").join(relative)
}

/// A path in cargo's own build folder.
pub fn target(relative: &str) -> PathBuf {
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from);
    root().join(target).join(relative)
}

/// A path that was given on the command line: relative to where the command was typed, not to the root.
pub fn given(path: PathBuf) -> PathBuf {
    std::path::absolute(&path).unwrap_or(path)
}
