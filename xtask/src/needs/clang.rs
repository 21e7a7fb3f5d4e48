//! A C compiler that writes WebAssembly: SQLite is compiled for the browser with it.

use super::apt::{self, Need};
use crate::command::{Failure, Outcome, program, succeeds};

/// The compiler and the archiver that goes with it, by name.
pub struct Clang {
    pub compiler: String,
    pub archiver: String,
}

/// Finds or installs clang with its WebAssembly backend.
pub fn clang() -> Outcome<Clang> {
    apt::ensure(&Need {
        what: "clang with llvm-ar",
        why: "SQLite is compiled for the browser with it",
        packages: &["clang", "llvm"],
        there: || find().is_some(),
        otherwise: "install clang and llvm 14 or later",
    })?;
    find().ok_or_else(|| Failure::new("clang was installed but does not start."))
}

/// The newest one that is there; Debian and Ubuntu put the version into the name.
fn find() -> Option<Clang> {
    let versions = (14..=30).rev().map(|version| format!("-{version}"));
    versions.chain([String::new()]).find_map(|suffix| {
        let compiler = format!("clang{suffix}");
        let archiver = format!("llvm-ar{suffix}");
        let mut try_it = program(&compiler);
        try_it.args(["--target=wasm32-unknown-unknown", "-x", "c", "-c", "/dev/null", "-o", "/dev/null"]);
        let both = succeeds(program(&archiver).arg("--version")) && succeeds(&mut try_it);
        both.then_some(Clang { compiler, archiver })
    })
}
