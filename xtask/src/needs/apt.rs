//! Packages of Debian and Ubuntu: installed only when the thing itself is not there.

use std::process::Command;
use std::sync::atomic::{AtomicBool, Ordering};

use crate::command::{Failure, Outcome, exists, output, program, run, succeeds};

/// Something the machine must have, and how it comes by it.
pub struct Need<'a> {
    pub what: &'a str,
    pub why: &'a str,
    pub packages: &'a [&'a str],
    /// Whether the thing is there, whoever installed it.
    pub there: fn() -> bool,
    /// What to do by hand on a machine without apt.
    pub otherwise: &'a str,
}

/// The lists of packages are fetched once in a run, and only if something is missing.
static LISTS_ARE_FRESH: AtomicBool = AtomicBool::new(false);

/// Sees to it that `need` is there, or says which, why and how to get it.
pub fn ensure(need: &Need) -> Outcome {
    if (need.there)() {
        return Ok(());
    }
    install(need.packages).map_err(|Failure(reason)| missing(need, &reason))?;
    if (need.there)() {
        return Ok(());
    }
    Err(missing(need, "The packages are installed, and it is still not there."))
}

/// Installs those of `packages` that are not installed yet.
pub fn install(packages: &[&str]) -> Outcome {
    if !exists("apt-get") {
        return Err(Failure::new("This machine has no apt-get, so nothing was installed."));
    }
    let absent: Vec<&str> = packages.iter().copied().filter(|package| !installed(package)).collect();
    if absent.is_empty() {
        return Ok(());
    }
    if !LISTS_ARE_FRESH.swap(true, Ordering::Relaxed) {
        // Without fresh lists the install below may still succeed from older ones, so a failure here is not the end.
        let _ = run(apt()?.args(["-q", "update"]));
    }
    run(apt()?.args(["-q", "install", "-y", "--no-install-recommends"]).args(absent))
}

fn installed(package: &str) -> bool {
    let mut query = program("dpkg-query");
    query.args(["-W", "-f", "${db:Status-Abbrev}", package]);
    query.output().is_ok_and(|answer| String::from_utf8_lossy(&answer.stdout).starts_with("ii"))
}

fn apt() -> Outcome<Command> {
    let is_root = output(program("id").arg("-u"))? == "0";
    if is_root {
        let mut apt = program("apt-get");
        apt.env("DEBIAN_FRONTEND", "noninteractive");
        return Ok(apt);
    }
    if succeeds(program("sudo").arg("--version")) {
        let mut apt = program("sudo");
        apt.args(["DEBIAN_FRONTEND=noninteractive", "apt-get"]);
        return Ok(apt);
    }
    Err(Failure::new("Installing packages needs root, and there is no sudo."))
}

fn missing(need: &Need, reason: &str) -> Failure {
    let Need { what, why, packages, otherwise, .. } = need;
    Failure(format!(
        "Missing: {what}. It is needed because {why}.\n{reason}\n\
         To get it on Debian or Ubuntu: apt-get install {}\nElsewhere: {otherwise}.",
        packages.join(" ")
    ))
}
