//! Turns the TOML of the demo bike into the JSON that the door includes, so that no reader of TOML is in the program.

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
    let demo = Path::new("../../fixtures/demo/orrin-tern-175.toml");
    println!("cargo::rerun-if-changed={}", demo.display());
    std::fs::write(Path::new(&std::env::var("OUT_DIR")?).join("demo.json"), layshaft_content::plain(demo)?)?;
    Ok(())
}
