//! Runs the generated Python binding, and the checks of our formulas against other people's libraries.

use std::path::{Path, PathBuf};

use crate::command::{Failure, Outcome, at_path, cargo, fresh_folder, output, program, run};
use crate::needs;
use crate::{generate, paths};

/// Runs `tests/bindings/run.py` on the committed Python binding.
pub fn binding() -> Outcome {
    let library = generate::library()?;
    let python = needs::base_python()?;
    let folder = paths::made("bindings/python");
    fresh_folder(&folder.join("layshaft"))?;
    let sources = paths::at("bindings/generated/python/layshaft");
    let modules = at_path(&sources, std::fs::read_dir(&sources))?.flatten().map(|entry| entry.path());
    // The modules look for the library beside themselves.
    for file in modules.chain([library]) {
        let copy = folder.join("layshaft").join(file.file_name().unwrap_or_default());
        at_path(&file, std::fs::copy(&file, copy))?;
    }
    let mut script = program(python);
    // With it, error texts would carry a backtrace.
    script
        .arg("tests/bindings/run.py")
        .env("PYTHONPATH", &folder)
        .env("PYTHONDONTWRITEBYTECODE", "1")
        .env_remove("RUST_BACKTRACE");
    run(&mut script)
}

/// Runs every script of `tests/outside` with the reference libraries of its requirements.
pub fn outside() -> Outcome {
    let python = needs::venv("venv", "tests/outside/requirements.txt")?;
    let folder = paths::at("tests/outside");
    let files = at_path(&folder, std::fs::read_dir(&folder))?.flatten().map(|entry| entry.path());
    let mut scripts: Vec<PathBuf> = files.filter(|path| path.extension().is_some_and(|end| end == "py")).collect();
    // What the scripts share, and those that compare what an example of the core exports.
    scripts.retain(|path| !["vectors.py", HARNESS, FAULTS].iter().any(|name| path.ends_with(name)));
    scripts.sort();
    if scripts.is_empty() {
        return Err(Failure::new("There is no script in tests/outside."));
    }
    for script in scripts {
        run(program(&python).arg(script).env("PYTHONDONTWRITEBYTECODE", "1"))?;
    }
    exported(&python, &folder.join(FAULTS), "fault_posteriors")?;
    needs::ngspice()?;
    exported(&python, &folder.join(HARNESS), "harness_networks")
}

/// The script that compares circuits with ngspice.
const HARNESS: &str = "harness.py";
/// The script that compares searches for faults with pgmpy.
const FAULTS: &str = "faults.py";

/// Has a script compare what an example of the core prints.
fn exported(python: &Path, script: &Path, example: &str) -> Outcome {
    let printed = paths::made(&format!("{example}.json"));
    let mut export = cargo();
    export.args(["run", "--quiet", "--all-features", "--package", "layshaft-core", "--example", example]);
    let text = output(&mut export)?;
    at_path(&printed, std::fs::write(&printed, text))?;
    run(program(python).arg(script).arg(&printed).env("PYTHONDONTWRITEBYTECODE", "1"))
}
