//! Turns the TOML under `fixtures` into the JSON that the core includes, so that no reader of TOML is in the program.

use std::path::Path;
use std::process::ExitCode;

use layshaft_content::{Content, folders};

fn main() -> ExitCode {
    match write() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            println!("cargo::error={error}");
            ExitCode::FAILURE
        }
    }
}

fn write() -> Result<(), Box<dyn std::error::Error>> {
    let fixtures = Path::new("../fixtures");
    for folder in folders() {
        println!("cargo::rerun-if-changed={}", fixtures.join(folder).display());
    }
    let english = Content::read(fixtures)?;
    std::fs::write(Path::new(&std::env::var("OUT_DIR")?).join("content.json"), english.json())?;
    Ok(())
}
