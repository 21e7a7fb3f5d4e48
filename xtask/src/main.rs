//! Every command of the project, so that a newcomer needs to know one: `cargo xtask`.
//!
//! Each command first sees to what it needs (`needs`), then does its work, and says plainly which program failed.

mod arguments;
mod command;
mod generate;
mod languages;
mod measure;
mod mobile;
mod needs;
mod outside;
mod paths;
mod phone;
mod serve;
mod shipped;
mod site;
mod test;
mod web;
mod window;
mod words;

use std::process::ExitCode;

use arguments::{Arguments, Command};
use clap::Parser;
use command::{Failure, Outcome};

fn main() -> ExitCode {
    match dispatch(Arguments::parse().command) {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure(text)) => {
            eprintln!("\n{text}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(command: Command) -> Outcome {
    match command {
        Command::Run { desktop: true, .. } => window::run_it(),
        Command::Run { phone: true, device, .. } => phone::run(device),
        Command::Run { desktop: false, at, .. } => {
            web::build()?;
            serve::until_interrupted(at.port, true)
        }
        Command::Serve(at) => serve::until_interrupted(at.port, false),
        Command::Build { desktop: true } => window::build_release(),
        Command::Build { desktop: false } => site::build(),
        Command::CheckSite { target } => site::check(&target),
        Command::Test(chosen) => test::stages(&chosen),
        Command::Generate { check } => generate::committed(check),
        Command::Bindings { language, out } => languages::sources(language, out),
        Command::Package { out } => languages::packages(out),
        Command::Words(asked) => words::report(&asked),
        Command::Screens => measure::screens(),
        Command::Bench { what: Some(what) } => measure::plan(&what.words()),
        Command::Bench { what: None } => measure::bench(),
        Command::CheckMobile => mobile::check(),
    }
}
