//! The words of the catalogue: whether they are in step with what is said, in every language, and all of them for an editor.

use crate::arguments::Words;
use crate::command::{Outcome, at_path, cargo, output, program, run};
use crate::web::UI;
use crate::{needs, paths};

/// Prints what is out of step; fails where English lacks words, or words ask for what nobody hands over.
pub fn report(asked: &Words) -> Outcome {
    needs::npm_packages(UI)?;
    if asked.pseudo {
        return run(&mut script("pseudo.js"));
    }
    let said = output(cargo().args(["run", "--quiet", "--package", "layshaft-tests", "--bin", "words"]))?;
    let folder = paths::made("words");
    at_path(&folder, std::fs::create_dir_all(&folder))?;
    let file = folder.join("core.json");
    at_path(&file, std::fs::write(&file, said))?;
    let mut report = script("report.js");
    report.arg(&file);
    if asked.list {
        report.arg("--list");
    }
    run(&mut report)
}

fn script(name: &str) -> std::process::Command {
    let mut node = program("node");
    node.arg(paths::at(UI).join("languages").join(name));
    node
}
