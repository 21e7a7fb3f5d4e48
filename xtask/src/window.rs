//! The desktop window: run it, build it to be handed out, and test it on a screen that is not there.

use std::path::PathBuf;

use crate::command::{Outcome, at_path, cargo, program, run};
use crate::{needs, paths, shipped, web};

const SHELL: [&str; 2] = ["--package", "layshaft-shell"];

/// Builds the pages and opens them in a window of their own.
pub fn run_it() -> Outcome {
    needs::web_view()?;
    web::build()?;
    run(cargo().arg("run").args(SHELL))
}

/// Builds the program that is handed out, in `target/app`.
pub fn build_release() -> Outcome {
    needs::web_view()?;
    web::build()?;
    let maps = shipped::path_maps(crate::command::output(program("rustc").args(["--print", "sysroot"]))?);
    let mut build = cargo();
    build.arg("build").args(SHELL).args(["--profile", "app", "--features", "custom-protocol"]);
    build.env("RUSTFLAGS", shipped::rust_flags(&maps)).env("CFLAGS", shipped::c_flags(&maps));
    run(&mut build)?;
    shipped::refuse_local_paths(&paths::target("app/layshaft"))
}

/// Drives the real window through its own web view driver.
pub fn test() -> Outcome {
    needs::web_view()?;
    needs::window_driver()?;
    needs::fake_clock()?;
    needs::node()?;
    web::build()?;
    run(cargo().arg("test").args(SHELL).arg("--lib"))?;
    run(cargo().arg("build").args(SHELL))?;
    let mut tests = program("node");
    // One at a time: two windows on two cores would wait for each other.
    tests.args(["--test", "--test-concurrency=1", "--test-reporter=spec"]).args(test_files()?);
    run(tests.env("LAYSHAFT_APP", paths::target("debug/layshaft")))
}

fn test_files() -> Outcome<Vec<PathBuf>> {
    let folder = paths::at("tests/window");
    let files = at_path(&folder, std::fs::read_dir(&folder))?.flatten().map(|entry| entry.path());
    let mut tests: Vec<PathBuf> = files.filter(|path| path.to_string_lossy().ends_with(".test.mjs")).collect();
    tests.sort();
    Ok(tests)
}

/// The window's code embeds the pages, so that it cannot even be checked without a page.
pub fn stand_in_page() -> Outcome {
    let page = web::dist().join("index.html");
    if page.exists() {
        return Ok(());
    }
    at_path(&page, std::fs::create_dir_all(web::dist()))?;
    at_path(&page, std::fs::write(&page, "<!doctype html><title>Layshaft</title>"))
}
