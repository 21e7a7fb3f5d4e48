//! Every command of the project, so that a newcomer needs to know one: `cargo xtask`.
//!
//! Each command first sees to what it needs (`needs`), then does its work, and says plainly which program failed.

mod command;
mod generate;
mod kotlin;
mod measure;
mod mobile;
mod needs;
mod options;
mod paths;
mod python;
mod serve;
mod shipped;
mod test;
mod web;
mod window;

use std::process::ExitCode;

use command::{Failure, Outcome};
use options::Options;

const USAGE: &str = "\
cargo xtask run [--desktop] [--port N]   set up, build and open Layshaft (in the browser, or in its own window)
cargo xtask test [--only STAGE]          set up and run every check; --only runs one stage, --list names them
cargo xtask build [--desktop]            build what is handed out: the web pages, or the desktop program
cargo xtask serve [--port N]             serve the web pages that were built last
cargo xtask generate [--check]           write the generated bindings, or fail where the committed ones differ
cargo xtask screens                      write a picture of every page in both themes
cargo xtask bench                        measure and print start time, size, door calls and folding
cargo xtask bench plan DIR [--seconds S] [--only N]  measure the planner on published instances (every N-th) in DIR
cargo xtask check-mobile                 type-check the window for Android and iOS (needs no SDK; links nothing)";

fn main() -> ExitCode {
    let mut arguments = std::env::args().skip(1);
    let name = arguments.next().unwrap_or_default();
    let outcome = Options::read(arguments).and_then(|options| dispatch(&name, &options));
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(Failure(text)) => {
            eprintln!("\n{text}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(name: &str, options: &Options) -> Outcome {
    match name {
        "run" if options.desktop => options.only_these(&["--desktop"]).and_then(|()| window::run_it()),
        "run" => options.only_these(&["--port"]).and_then(|()| {
            web::build()?;
            serve::until_interrupted(options.port, true)
        }),
        "serve" => options.only_these(&["--port"]).and_then(|()| serve::until_interrupted(options.port, false)),
        "build" if options.desktop => options.only_these(&["--desktop"]).and_then(|()| window::build_release()),
        "build" => options.only_these(&[]).and_then(|()| web::build()),
        "test" => options.only_these(&["--only", "--list"]).and_then(|()| test::stages(options)),
        "generate" => options.only_these(&["--check"]).and_then(|()| generate::bindings(options.check)),
        "screens" => options.only_these(&[]).and_then(|()| measure::screens()),
        "bench" if options.plan.is_some() => {
            options.only_these(&["plan"]).and_then(|()| measure::plan(options.plan.as_deref().unwrap_or_default()))
        }
        "bench" => options.only_these(&[]).and_then(|()| measure::bench()),
        "check-mobile" => options.only_these(&[]).and_then(|()| mobile::check()),
        "" | "help" | "--help" | "-h" => {
            println!("{USAGE}");
            Ok(())
        }
        other => Err(Failure(format!("There is no command `{other}`.\n\n{USAGE}"))),
    }
}
