//! The command line: every command with its options, and the words of `--help`.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand};

use crate::languages::Language;

/// Every command of the project. Each one first sees to what it needs.
#[derive(Parser)]
#[command(name = "xtask", bin_name = "cargo xtask", arg_required_else_help = true)]
pub struct Arguments {
    #[command(subcommand)]
    pub command: Command,
}

#[derive(Subcommand)]
pub enum Command {
    /// Set up, build and open Layshaft, in the browser or in a window of its own
    Run {
        /// Open a window of its own
        #[arg(long, conflicts_with = "port")]
        desktop: bool,
        /// Put it on the Android phone at the cable
        #[arg(long, conflicts_with_all = ["port", "desktop"])]
        phone: bool,
        /// Which phone, where several are at the cable
        #[arg(long, value_name = "SERIAL", requires = "phone")]
        device: Option<String>,
        #[command(flatten)]
        at: At,
    },
    /// Set up and run every check, quick ones first
    Test(Test),
    /// Build what is handed out: the web pages, or the desktop program
    Build {
        /// Build the desktop program
        #[arg(long)]
        desktop: bool,
    },
    /// Say what a web host does wrong with the pages, or with a folder of them
    CheckSite {
        /// The address of the pages, or the folder that was built
        #[arg(value_name = "URL|DIR")]
        target: String,
    },
    /// Serve the web pages that were built last
    Serve(At),
    /// Write what is generated and committed: TypeScript, and the snapshot of the API
    Generate {
        /// Write nothing; fail where a committed file differs
        #[arg(long)]
        check: bool,
    },
    /// Generate the sources for a language
    Bindings {
        language: Language,
        /// Where they go; left out: target/bindings/LANGUAGE
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
    },
    /// Make a Python wheel and a Kotlin jar with the library inside
    Package {
        /// Where they go; left out: target/packages
        #[arg(long, value_name = "DIR")]
        out: Option<PathBuf>,
    },
    /// Say what is out of step between the words of the catalogue and what is said
    Words(Words),
    /// Write a picture of every page in both themes
    Screens,
    /// Measure and print start time, size, door calls and folding
    Bench {
        #[command(subcommand)]
        what: Option<Bench>,
    },
    /// Type-check the window for Android and iOS (needs no SDK; links nothing)
    CheckMobile,
}

#[derive(Args)]
pub struct At {
    /// The port on this machine; 0 takes any that is free
    #[arg(long, value_name = "N")]
    pub port: Option<u16>,
}

#[derive(Args)]
pub struct Test {
    /// Run this stage alone; may be given more than once
    #[arg(long, value_name = "STAGE")]
    pub only: Vec<String>,
    /// Name the stages and run none
    #[arg(long)]
    pub list: bool,
}

#[derive(Args)]
pub struct Words {
    /// Write every sentence for an editor, with where it is said: .build/words/sentences.md
    #[arg(long)]
    pub list: bool,
    /// Write the pseudo-language instead: .build/words/en-XA.json
    #[arg(long, conflicts_with = "list")]
    pub pseudo: bool,
}

#[derive(Subcommand)]
pub enum Bench {
    /// The planner on published instances, which do not come with Layshaft
    Plan {
        /// The folder of the instances; left out: says what it wants
        dir: Option<PathBuf>,
        /// Seconds for an instance; left out: 1
        #[arg(long, value_name = "S")]
        seconds: Option<f64>,
        /// Take every N-th instance; left out: every one
        #[arg(long, value_name = "N")]
        only: Option<u32>,
    },
}

impl Bench {
    /// The words that the measuring programs read.
    pub fn words(&self) -> Vec<String> {
        let Self::Plan { dir, seconds, only } = self;
        let option = |name: &str, value: Option<String>| value.map(|value| [name.to_owned(), value]);
        let dir = dir.iter().map(|dir| dir.display().to_string());
        let seconds = option("--seconds", seconds.map(|seconds| seconds.to_string()));
        let only = option("--only", only.map(|only| only.to_string()));
        dir.chain(seconds.into_iter().flatten()).chain(only.into_iter().flatten()).collect()
    }
}

#[cfg(test)]
mod tests {
    use clap::{CommandFactory, Parser};

    use super::{Arguments, Command};

    fn read(words: &[&str]) -> Result<Command, String> {
        let words = ["xtask"].iter().chain(words);
        Arguments::try_parse_from(words).map(|arguments| arguments.command).map_err(|error| error.to_string())
    }

    #[test]
    fn every_command_is_well_formed_and_has_help() {
        Arguments::command().debug_assert();
        for command in Arguments::command().get_subcommands() {
            let help = read(&[command.get_name(), "--help"]).err().unwrap_or_default();
            assert!(help.contains("Usage:") && command.get_about().is_some(), "{}: {help}", command.get_name());
        }
    }

    #[test]
    fn a_port_out_of_range_is_refused_with_the_range() {
        let refusal = read(&["serve", "--port", "65536"]).err().unwrap_or_default();
        assert!(refusal.contains("65535") && refusal.contains("65536"), "{refusal}");
        assert!(
            matches!(read(&["run", "--port", "0"]), Ok(Command::Run { desktop: false, at, .. }) if at.port == Some(0))
        );
    }

    #[test]
    fn an_option_of_another_command_is_refused() {
        assert!(read(&["serve", "--check"]).is_err());
        assert!(read(&["run", "--desktop", "--port", "1"]).is_err());
        assert!(read(&["run", "--phone", "--port", "1"]).is_err());
        assert!(read(&["run", "--device", "A1B2"]).is_err());
        assert!(read(&["words", "--list", "--pseudo"]).is_err());
        assert!(matches!(read(&["generate", "--check"]), Ok(Command::Generate { check: true })));
    }

    #[test]
    fn the_measure_of_the_planner_hands_its_options_on() {
        let words = match read(&["bench", "plan", "instances", "--only", "10", "--seconds", "0.5"]) {
            Ok(Command::Bench { what: Some(what) }) => what.words(),
            _ => Vec::new(),
        };
        assert_eq!(words, ["instances", "--seconds", "0.5", "--only", "10"]);
    }
}
