//! Python: the package with its modules, the wheel that pip installs, and the test of what is installed.

use std::path::{Path, PathBuf};

use super::{Language, examples, generate, library};
use crate::command::{Failure, Outcome, at_path, copy_into, fresh_folder, output, program, run};
use crate::{needs, paths};

/// What belongs to the package and is written by hand.
const PACKAGE: &str = "bindings/python";

/// Asks the build backend for a wheel, as pip would, and prints the name of the file last.
const BUILD: &str = "import sys; from setuptools import build_meta; print(build_meta.build_wheel(sys.argv[1]))";

/// Writes the modules of the package into `folder`.
pub fn write_package(library: &Path, folder: &Path) -> Outcome {
    // The modules import each other as parts of one package.
    let package = folder.join("layshaft");
    generate(Language::Python, library, &package)?;
    copy_into(&paths::at(PACKAGE).join("layshaft/__init__.py"), &package)
}

/// Makes a wheel in `out` with `library` in it; its modules are what `described_by`, the same unstripped, says.
pub fn wheel(described_by: &Path, library: &Path, work: &Path, out: &Path) -> Outcome<PathBuf> {
    let python = needs::venv("venv-package", &format!("{PACKAGE}/requirements.txt"))?;
    fresh_folder(work)?;
    write_package(described_by, work)?;
    // The modules look for the library beside themselves.
    copy_into(library, &work.join("layshaft"))?;
    copy_into(&paths::at(PACKAGE).join("setup.py"), work)?;
    at_path(out, std::fs::create_dir_all(out))?;
    let mut build = program(&python);
    build.args(["-c", BUILD]).arg(out).current_dir(work).env("LAYSHAFT_VERSION", env!("CARGO_PKG_VERSION"));
    let printed = output(&mut build)?;
    let name = printed.lines().last().ok_or(Failure::new("The build backend names no wheel."))?;
    Ok(out.join(name))
}

/// Installs the wheel where nothing else is, and runs the example of `bindings/README.md` and `tests/bindings/run.py`.
pub fn test() -> Outcome {
    let library = library()?;
    let folder = paths::made("bindings/python");
    fresh_folder(&folder)?;
    let wheel = wheel(&library, &library, &folder.join("package"), &folder)?;
    let python = installed(&wheel, &folder.join("venv"))?;

    let example = examples::of("python")?;
    let script = folder.join("example.py");
    at_path(&script, std::fs::write(&script, &example.script))?;
    example.check(program(&python).arg(&script), &folder.join("run"))?;

    let mut script = program(&python);
    // With it, error texts would carry a backtrace.
    script.arg("tests/bindings/run.py").env("PYTHONDONTWRITEBYTECODE", "1").env_remove("RUST_BACKTRACE");
    run(&mut script)
}

/// The Python of a fresh environment that holds the wheel alone.
fn installed(wheel: &Path, folder: &Path) -> Outcome<PathBuf> {
    run(program(needs::base_python()?).args(["-m", "venv", "--without-pip"]).arg(folder))?;
    let python = folder.join("bin/python");
    let pip = needs::venv("venv-package", &format!("{PACKAGE}/requirements.txt"))?;
    let mut install = program(pip);
    install.args(["-m", "pip", "--python"]).arg(&python).args(["install", "--quiet", "--no-index", "--no-deps"]);
    run(install.arg(wheel))?;
    Ok(python)
}
