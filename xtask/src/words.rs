//! The words of the catalogue: whether they are in step with what is said, in every language, and all of them for an editor.

use std::path::Path;

use crate::arguments::Words;
use crate::command::{Outcome, at_path, cargo, output, program, run};
use crate::web::UI;
use crate::{needs, paths};

/// Prints what is out of step; fails where English lacks words, or words ask for what nobody hands over.
pub fn report(asked: &Words) -> Outcome {
    needs::npm_packages(UI)?;
    if asked.pseudo {
        return pseudo();
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

/// Writes the pseudo-language: what the pages and the core say, and what jobs, packs and tables say.
pub fn pseudo() -> Outcome {
    needs::npm_packages(UI)?;
    let folder = paths::made("words");
    at_path(&folder, std::fs::create_dir_all(&folder))?;
    write(&folder.join("texts.json"), &["texts"])?;
    run(&mut script("pseudo.js"))?;
    let texts = folder.join("en-XA.texts.json");
    write(&folder.join("en-XA.content.json"), &["merged", &texts.to_string_lossy()])
}

/// Writes what jobs, packs and tables say, for each language beside English: the pages hand it to the core.
pub fn content() -> Outcome {
    let words = paths::at("fixtures/words");
    for entry in at_path(&words, std::fs::read_dir(&words))? {
        let tag = at_path(&words, entry)?.file_name().to_string_lossy().into_owned();
        if tag != "en" && words.join(&tag).is_dir() {
            write(&paths::made("words").join(format!("{tag}.content.json")), &["language", &tag])?;
        }
    }
    Ok(())
}

/// Writes what the content tool prints.
fn write(file: &Path, asked: &[&str]) -> Outcome {
    let made = output(cargo().args(["run", "--quiet", "--package", "layshaft-content", "--"]).args(asked))?;
    at_path(file, std::fs::write(file, made))
}

fn script(name: &str) -> std::process::Command {
    let mut node = program("node");
    node.arg(paths::at(UI).join("languages").join(name));
    node
}
