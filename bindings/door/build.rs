//! Turns the TOML of the invented bikes into the JSON that the door includes, so that no reader of TOML is in the program.

use std::path::Path;
use std::process::ExitCode;

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
    let out = std::env::var("OUT_DIR")?;
    for name in ["orrin-tern-175", "orrin-wren-50"] {
        let demo = Path::new("../../fixtures/demo").join(name).with_extension("toml");
        println!("cargo::rerun-if-changed={}", demo.display());
        std::fs::write(Path::new(&out).join(name).with_extension("json"), layshaft_content::plain(&demo)?)?;
    }
    Ok(())
}
