//! Node and the npm packages: always exactly those of the committed lock files.

use std::process::Command;

use super::apt;
use super::stamp;
use crate::command::{Failure, Outcome, output, program, run};
use crate::paths;

/// The oldest Node that the page builder takes.
const OLDEST: (u32, u32) = (20, 19);

/// Node itself, new enough.
pub fn node() -> Outcome {
    if version() >= Some(OLDEST) && crate::command::exists("npm") {
        return Ok(());
    }
    let tried = apt::install(&["nodejs", "npm"]);
    if version() >= Some(OLDEST) && crate::command::exists("npm") {
        return Ok(());
    }
    let found = version().map_or("none".to_owned(), |(major, minor)| format!("{major}.{minor}"));
    let reason = tried.err().map_or(String::new(), |Failure(reason)| format!("{reason}\n"));
    let (major, minor) = OLDEST;
    Err(Failure(format!(
        "Missing: Node {major}.{minor} or later with npm (found: {found}). It is needed because the pages are built with it.\n\
         {reason}To get it: install a current Node from your distribution, from nodejs.org or with a version manager."
    )))
}

/// The packages of the lock file in `folder`.
pub fn npm_packages(folder: &str) -> Outcome {
    node()?;
    let name = format!("npm-{}", folder.replace('/', "-"));
    let lock = paths::at(folder).join("package-lock.json");
    stamp::once(&name, &lock, &paths::at(folder).join("node_modules"), || {
        run(program("npm").args(["ci", "--no-fund", "--no-audit", "--loglevel=error", "--prefix", folder]))
    })
}

/// A script of the `package.json` in `folder`.
pub fn npm_script(folder: &str, script: &str) -> Command {
    let mut npm = program("npm");
    npm.args(["run", "--silent", script]).current_dir(paths::at(folder));
    npm
}

fn version() -> Option<(u32, u32)> {
    let mut ask = program("node");
    let text = output(ask.arg("--version")).ok()?;
    let mut numbers = text.trim_start_matches('v').split('.').map(str::parse);
    Some((numbers.next()?.ok()?, numbers.next()?.ok()?))
}
