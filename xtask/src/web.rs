//! Builds the web pages: the core as WebAssembly, its JavaScript, and the pages that use them.
//!
//! What comes out lies in `mobile-shell/ui/dist` and can be served by anything that serves files.

use std::path::{Path, PathBuf};
use std::process::Command;

use crate::command::{Outcome, at_path, cargo, program, run};
use crate::needs::{self, RustTarget};
use crate::paths;
use crate::{shipped, words};

/// Where the pages are.
pub const UI: &str = "mobile-shell/ui";

/// The pages as they are handed out.
pub fn dist() -> PathBuf {
    paths::at(UI).join("dist")
}

/// Builds everything that the browser gets.
pub fn build() -> Outcome {
    door()?;
    pages()?;
    shipped::refuse_local_paths(&dist())
}

/// Builds everything, then looks at the pages and tests their logic. The build comes first: it makes the types of the door.
pub fn check() -> Outcome {
    build()?;
    for script in ["words-in-step", "format", "lint", "test"] {
        run(&mut needs::npm_script(UI, script))?;
    }
    Ok(())
}

/// The door as WebAssembly with its JavaScript, in `.build/web`.
pub fn door() -> Outcome {
    needs::c_compiler()?;
    needs::npm_packages("xtask")?;
    let module = compile()?;
    let folder = paths::made("web");
    let seen = folder.join("compiled.wasm");
    if folder.join("door_bg.wasm").is_file() && same_bytes(&module, &seen) {
        return Ok(());
    }
    crate::command::fresh_folder(&folder)?;
    run(cargo().args(["run", "--quiet", "--package", "layshaft-bindgen", "--"]).arg(&module).arg(&folder).arg("door"))?;
    shrink(&folder.join("door_bg.wasm"))?;
    // Kept last: it says that everything before it is done.
    at_path(&seen, std::fs::copy(&module, &seen)).map(|_| ())
}

/// Lets clippy look at what is compiled for the browser alone.
pub fn lint() -> Outcome {
    let rust = needs::rust_for(needs::WASM)?;
    if !rust.has_clippy() {
        println!("  What is compiled for the browser alone is left out: this compiler comes without clippy.");
        return Ok(());
    }
    run(cargo_for_web(&rust, "clippy")?.args(["--quiet", "--", "-D", "warnings"]))
}

fn compile() -> Outcome<PathBuf> {
    let rust = needs::rust_for(needs::WASM)?;
    run(&mut cargo_for_web(&rust, "build")?)?;
    Ok(paths::target("wasm32-unknown-unknown/web/layshaft_wasm.wasm"))
}

/// A cargo `verb` on the door in a worker, exactly as it is built to be handed out.
fn cargo_for_web(rust: &RustTarget, verb: &str) -> Outcome<Command> {
    let clang = needs::clang()?;
    let maps = shipped::path_maps(rust.sysroot()?);
    let mut build = rust.cargo(verb);
    build.args(["--package", "layshaft-wasm", "--package", "layshaft-storage", "--profile", "web"]);
    build.env("CC_wasm32_unknown_unknown", &clang.compiler).env("AR_wasm32_unknown_unknown", &clang.archiver);
    build.env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS", shipped::rust_flags(&maps));
    build.env("CFLAGS_wasm32_unknown_unknown", shipped::c_flags(&maps));
    Ok(build)
}

fn shrink(module: &Path) -> Outcome {
    let before = size(module)?;
    let mut optimise = program("node");
    optimise.arg("xtask/node_modules/binaryen/bin/wasm-opt").arg("-Os");
    // What Rust's own target switches on.
    optimise.args(
        ["bulk-memory", "mutable-globals", "nontrapping-float-to-int", "sign-ext", "reference-types", "multivalue"]
            .map(|feature| format!("--enable-{feature}")),
    );
    run(optimise.arg(module).arg("-o").arg(module))?;
    println!("  {} kB, before wasm-opt {} kB", size(module)? / 1000, before / 1000);
    Ok(())
}

fn pages() -> Outcome {
    needs::npm_packages(UI)?;
    words::content()?;
    run(&mut needs::npm_script(UI, "build"))
}

fn size(path: &Path) -> Outcome<u64> {
    at_path(path, std::fs::metadata(path)).map(|about| about.len())
}

fn same_bytes(one: &Path, other: &Path) -> bool {
    matches!((std::fs::read(one), std::fs::read(other)), (Ok(one), Ok(other)) if one == other)
}
