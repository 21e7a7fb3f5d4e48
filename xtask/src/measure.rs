//! Pictures of every page, and measurements: each needs the built pages and a real browser.

use std::process::Command;

use crate::command::{Outcome, cargo, program, run};
use crate::needs;
use crate::{serve, web, words};

/// The browser scripts.
pub const E2E: &str = "tests/e2e";

/// A picture of every page in both themes.
pub fn screens() -> Outcome {
    web::build()?;
    run(&mut browser_script("screens.mjs")?)
}

/// Native timings, then those of the browser.
pub fn bench() -> Outcome {
    run(cargo().args(["run", "--release", "--package", "layshaft-tests", "--bin", "bench"]))?;
    web::build()?;
    run(&mut browser_script("bench.mjs")?)
}

/// The planner on published instances, whose folder comes first, and the same with a constraint engine and with CP-SAT.
pub fn plan(given: &[String]) -> Outcome {
    let mut bench = cargo();
    bench.args(["run", "--release", "--package", "layshaft-tests", "--bin", "bench-plan", "--"]).args(given);
    run(&mut bench)?;
    if given.is_empty() {
        return Ok(());
    }
    let mut engine = cargo();
    engine.args(["run", "--quiet", "--release", "--manifest-path", "tests/engine/Cargo.toml"]);
    run(engine.args(["--target-dir", "target/engine", "--"]).args(given))?;
    let python = needs::venv("venv-bench", "tests/bench/requirements.txt")?;
    run(program(&python).arg("tests/bench/cp_sat.py").args(given).env("PYTHONDONTWRITEBYTECODE", "1"))
}

/// The Playwright tests.
pub fn end_to_end() -> Outcome {
    words::pseudo()?;
    let mut tests = needs::npm_script(E2E, "test");
    with_pages(&mut tests)?;
    run(&mut tests)
}

fn browser_script(name: &str) -> Outcome<Command> {
    let mut script = program("node");
    script.arg(format!("{E2E}/{name}"));
    with_pages(&mut script)?;
    Ok(script)
}

/// Serves the built pages for `command`, and tells it where they and the browser are.
fn with_pages(command: &mut Command) -> Outcome {
    let chromium = needs::chromium()?;
    needs::npm_packages(E2E)?;
    let address = serve::start(0)?;
    command.env("LAYSHAFT_URL", address).env("LAYSHAFT_CHROMIUM", chromium);
    Ok(())
}
