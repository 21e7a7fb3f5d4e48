//! Runs the checks of our formulas against other people's libraries.

use std::path::{Path, PathBuf};

use crate::command::{Failure, Outcome, at_path, cargo, output, program, run};
use crate::{needs, paths};

/// Runs every script of `tests/outside` with the reference libraries of its requirements.
pub fn checks() -> Outcome {
    let python = needs::venv("venv", "tests/outside/requirements.txt")?;
    let folder = paths::at("tests/outside");
    let files = at_path(&folder, std::fs::read_dir(&folder))?.flatten().map(|entry| entry.path());
    let mut scripts: Vec<PathBuf> = files.filter(|path| path.extension().is_some_and(|end| end == "py")).collect();
    // What the scripts share, and those that compare what an example of the core exports.
    scripts.retain(|path| !["vectors.py", HARNESS, FAULTS, DIODES].iter().any(|name| path.ends_with(name)));
    scripts.sort();
    if scripts.is_empty() {
        return Err(Failure::new("There is no script in tests/outside."));
    }
    for script in scripts {
        run(program(&python).arg(script).env("PYTHONDONTWRITEBYTECODE", "1"))?;
    }
    exported(&python, &folder.join(FAULTS), "fault_posteriors")?;
    needs::ngspice()?;
    run(program(&python).arg(folder.join(DIODES)).env("PYTHONDONTWRITEBYTECODE", "1"))?;
    exported(&python, &folder.join(HARNESS), "harness_networks")
}

/// The script that compares circuits with ngspice.
const HARNESS: &str = "harness.py";
/// The script that compares rectified sines with ngspice.
const DIODES: &str = "diodes.py";
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
