//! The library that other languages load.

use std::path::PathBuf;
use std::sync::OnceLock;

use crate::command::{Outcome, cargo, output, program, run};
use crate::{needs, paths, shipped};

/// What is built stays as it is while one command runs: its stages ask cargo once.
static BUILT: OnceLock<PathBuf> = OnceLock::new();

/// Built for testing. The generator reads it: a stripped one would have lost what it says about itself.
pub fn library() -> Outcome<PathBuf> {
    if let Some(library) = BUILT.get() {
        return Ok(library.clone());
    }
    needs::c_compiler()?;
    // All features and all default members, exactly as the tests build them, so that nothing is compiled twice.
    run(cargo().args(["build", "--quiet", "--all-features"]))?;
    Ok(BUILT.get_or_init(|| paths::target(&format!("debug/{}", file_name()))).clone())
}

/// Built to be handed out: fast, small, and without a word about this machine.
pub fn handed_out() -> Outcome<PathBuf> {
    needs::c_compiler()?;
    let maps = shipped::path_maps(output(program("rustc").args(["--print", "sysroot"]))?);
    let mut build = cargo();
    build.args(["build", "--package", "layshaft-uniffi", "--lib", "--profile", "library"]);
    build.env("RUSTFLAGS", shipped::rust_flags(&maps)).env("CFLAGS", shipped::c_flags(&maps));
    run(&mut build)?;
    let library = paths::target(&format!("library/{}", file_name()));
    shipped::refuse_local_paths(&library)?;
    Ok(library)
}

fn file_name() -> String {
    format!("{}layshaft_uniffi{}", std::env::consts::DLL_PREFIX, std::env::consts::DLL_SUFFIX)
}
