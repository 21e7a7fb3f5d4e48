//! Python: a virtual environment under `.build`, filled from a file of pinned requirements.

use std::path::PathBuf;

use super::apt::{self, Need};
use super::stamp;
use crate::command::{Failure, Outcome, program, run, succeeds};
use crate::paths;

const CANDIDATES: [&str; 2] = ["python3", "/usr/bin/python3"];

/// A Python that can make virtual environments.
pub fn base_python() -> Outcome<&'static str> {
    apt::ensure(&Need {
        what: "Python 3 with venv",
        why: "the Python binding and the checks against reference libraries run on it",
        packages: &["python3", "python3-venv"],
        there: || find().is_some(),
        otherwise: "install Python 3.11 or later with its venv module",
    })?;
    find().ok_or_else(|| Failure::new("Python 3 was installed but does not start."))
}

/// The Python of the environment of this name, which holds exactly the packages in `requirements`.
pub fn venv(name: &str, requirements: &str) -> Outcome<PathBuf> {
    let base = base_python()?;
    let folder = paths::made(name);
    let python = folder.join("bin/python");
    let requirements = paths::at(requirements);
    stamp::once(name, &requirements, &folder, || {
        run(program(base).args(["-m", "venv", "--clear"]).arg(&folder))?;
        run(program(&python).args(["-m", "pip", "install", "--quiet", "--requirement"]).arg(&requirements))
    })?;
    Ok(python)
}

fn find() -> Option<&'static str> {
    CANDIDATES.into_iter().find(|python| succeeds(program(python).args(["-c", "import ensurepip, venv"])))
}
