//! The core in Kotlin, Swift and Python: sources on demand, packages that a script uses, and their tests.
//!
//! Nothing of it is committed: it all follows from the compiled library.

mod examples;
pub mod kotlin;
mod library;
pub mod python;
pub mod swift;

use std::path::{Path, PathBuf};

use clap::ValueEnum;

use crate::command::{Outcome, at_path, fresh_folder, program, run};
use crate::{needs, paths};

pub use library::library;

/// Names that other languages have taken.
const CONFIG: &str = "bindings/uniffi/languages.toml";

/// A language that sources are generated for.
#[derive(Clone, Copy, ValueEnum)]
pub enum Language {
    Kotlin,
    Swift,
    Python,
}

impl Language {
    /// Its name in commands and folders.
    fn name(self) -> &'static str {
        match self {
            Self::Kotlin => "kotlin",
            Self::Swift => "swift",
            Self::Python => "python",
        }
    }
}

/// Generates the sources for a language where they were asked for, and says where they are.
pub fn sources(language: Language, out: Option<PathBuf>) -> Outcome {
    let folder = match out {
        // What is in a folder of somebody else's stays there.
        Some(folder) => paths::given(folder),
        None => {
            let folder = paths::target("bindings").join(language.name());
            fresh_folder(&folder)?;
            folder
        }
    };
    let library = library()?;
    match language {
        Language::Python => python::write_package(&library, &folder)?,
        Language::Kotlin | Language::Swift => generate(language, &library, &folder)?,
    }
    println!("\nThe {} sources are in {}", language.name(), folder.display());
    println!("They load {}", library.display());
    Ok(())
}

/// Makes the wheel and the jar where they were asked for, with the library as it is handed out, and says how to use them.
pub fn packages(out: Option<PathBuf>) -> Outcome {
    let folder = out.map_or_else(|| paths::target("packages"), paths::given);
    needs::java()?;
    let (debug, handed_out) = (library()?, library::handed_out()?);
    let made = paths::made("package");
    let wheel = python::wheel(&debug, &handed_out, &made.join("python"), &folder)?;
    let jar = kotlin::jar(&debug, &handed_out, &made.join("kotlin"), &folder)?;
    println!("\nbindings/README.md shows how a script uses\n  {}\n  {}", wheel.display(), jar.display());
    Ok(())
}

/// Writes what the generator makes for `language` out of what `library` says about itself.
fn generate(language: Language, library: &Path, folder: &Path) -> Outcome {
    at_path(folder, std::fs::create_dir_all(folder))?;
    let mut generator = program(paths::target("debug/uniffi-bindgen"));
    generator.arg("generate").arg(library).args(["--config", CONFIG, "--language", language.name(), "--no-format"]);
    run(generator.arg("--out-dir").arg(folder))
}
