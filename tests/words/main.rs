//! Prints what the core says and where the catalogue is out of step with it, as JSON for `cargo xtask words`.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::ExitCode;

use layshaft_tests::{declared, english, places, unknown, unused, without_words};
use serde_json::{Value, json};

fn main() -> ExitCode {
    match report() {
        Ok(report) => {
            println!("{report}");
            ExitCode::SUCCESS
        }
        Err(reason) => {
            eprintln!("{reason}");
            ExitCode::FAILURE
        }
    }
}

fn report() -> Result<Value, String> {
    let manifest = Path::new(env!("CARGO_MANIFEST_DIR"));
    let places = places(manifest.parent().unwrap_or(manifest)).map_err(|error| error.to_string())?;
    let english = english()?;
    let arguments: BTreeMap<&str, Vec<&str>> =
        declared().map(|each| (each.id, each.arguments.iter().map(|(name, _)| *name).collect())).collect();
    Ok(json!({
        "arguments": arguments,
        "places": places,
        "missing": without_words(&english),
        "unknown": unknown(&english),
        "unused": unused(&english),
    }))
}
