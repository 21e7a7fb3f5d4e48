//! Runs the generated Python binding, and the checks of our formulas against other people's libraries.

use std::path::PathBuf;

use crate::command::{Failure, Outcome, at_path, fresh_folder, program, run};
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
    let python = needs::venv("tests/outside/requirements.txt")?;
    let folder = paths::at("tests/outside");
    let files = at_path(&folder, std::fs::read_dir(&folder))?.flatten().map(|entry| entry.path());
    let mut scripts: Vec<PathBuf> = files.filter(|path| path.extension().is_some_and(|end| end == "py")).collect();
    // What the scripts share.
    scripts.retain(|path| !path.ends_with("vectors.py"));
    scripts.sort();
    if scripts.is_empty() {
        return Err(Failure::new("There is no script in tests/outside."));
    }
    for script in scripts {
        run(program(&python).arg(script).env("PYTHONDONTWRITEBYTECODE", "1"))?;
    }
    Ok(())
}
