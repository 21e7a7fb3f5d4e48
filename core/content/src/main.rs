//! The content on the command line, for whoever builds languages: JSON to the standard output, what is missing beside it.

use std::collections::BTreeMap;
use std::error::Error;
use std::io::Write;
use std::path::Path;
use std::process::ExitCode;

use layshaft_content::{Content, Merged};

const USAGE: &str = "layshaft-content texts               every text by its key, in English
layshaft-content language TAG        the content in a language that stands beside the English files
layshaft-content merged FILE.json    the content with the texts of a JSON map by their keys";

/// Where the files stand: this tool belongs to the source tree that it was built from.
const FIXTURES: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../fixtures");

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match answer(&words) {
        // Whoever reads may have read enough.
        Ok(json) => writeln!(std::io::stdout(), "{json}").map_or(ExitCode::FAILURE, |()| ExitCode::SUCCESS),
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn answer(words: &[&str]) -> Result<String, Box<dyn Error>> {
    let fixtures = Path::new(FIXTURES);
    let english = || Content::read(fixtures);
    match words {
        ["texts"] => Ok(serde_json::to_string_pretty(english()?.texts())?),
        ["language", tag] => Ok(told(english()?.language(fixtures, tag)?)),
        ["merged", file] => {
            let texts: BTreeMap<String, String> = serde_json::from_str(&std::fs::read_to_string(file)?)?;
            Ok(told(english()?.merged(&texts)?))
        }
        _ => Err(USAGE.into()),
    }
}

/// The content; how large it is and what it lacks goes where it does not mix with it.
fn told(merged: Merged) -> String {
    for key in &merged.missing {
        eprintln!("not translated: {key}");
    }
    let (missing, all) = (merged.missing.len(), merged.texts);
    eprintln!("{} of {all} texts are translated; {} bytes", all - missing, merged.json.len());
    merged.json
}
