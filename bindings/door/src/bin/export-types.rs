//! Writes the TypeScript of everything that crosses the door, and the table of units that the words are rendered with:
//! `export-types OUTDIR` makes `OUTDIR/typescript/door.ts` and `OUTDIR/units.json`.

use layshaft_core::error::Refusal;
use layshaft_core::units::{Unit, UnitCard};
use layshaft_door::command::*;
use layshaft_door::query::*;
use layshaft_door::{ActCall, AskCall, commands, queries};
use ts_rs::{Config, TS};

/// The names of the queries with their asks and answers, as the UI's mapped type.
macro_rules! make_map {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        fn query_map() -> String {
            let rows = [$((stringify!($name), stringify!($answer)),)*];
            rows.iter().map(|(name, answer)| format!("  {}: {answer};\n", camel(name))).collect()
        }
    };
}
queries!(make_map);

/// The names of the commands, so that the test of the list cannot forget one.
macro_rules! make_names {
    ($($(#[$doc:meta])* $method:ident $name:ident;)*) => {
        fn command_names() -> String {
            [$(stringify!($name),)*].iter().map(|name| format!("  | '{}'\n", camel(name))).collect()
        }
    };
}
commands!(make_names);

fn camel(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map(|first| first.to_ascii_lowercase().to_string() + letters.as_str()).unwrap_or_default()
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let out = std::env::args().nth(1).ok_or("usage: export-types OUTDIR")?;
    let out = std::path::Path::new(&out);
    let units: Vec<_> = Unit::ALL.iter().map(|unit| unit.card()).collect();
    std::fs::create_dir_all(out)?;
    std::fs::write(out.join("units.json"), serde_json::to_string_pretty(&units)? + "\n")?;
    let out = out.join("typescript");
    let config = Config::new().with_out_dir(&out).with_large_int("number");
    ActCall::export_all(&config)?;
    AskCall::export_all(&config)?;
    Outcome::export_all(&config)?;
    Refusal::export_all(&config)?;
    UnitCard::export_all(&config)?;
    export_answers(&config)?;
    let path = out.join("door.ts");
    let types = std::fs::read_to_string(&path)?;
    let map = format!(
        "{types}\n/** Each query with its answer. */\nexport interface QueryMap {{\n{}}}\n\n/** The names of the commands. */\nexport type CommandName =\n{};\n",
        query_map(),
        command_names().trim_end(),
    );
    std::fs::write(path, map)?;
    Ok(())
}

/// Exports every answer type.
macro_rules! make_export {
    ($($(#[$doc:meta])* $method:ident $name:ident($ask:ident) -> $answer:ident;)*) => {
        fn export_answers(config: &Config) -> Result<(), ts_rs::ExportError> {
            $($answer::export_all(config)?;)*
            Ok(())
        }
    };
}
queries!(make_export);
