//! Every check of the project in one order, quick ones first; stops at the first that fails.

use std::time::{Duration, Instant};

use crate::arguments::Test;
use crate::command::{Failure, Outcome, cargo, run};
use crate::languages::{kotlin, python, swift};
use crate::{generate, measure, needs, outside, site, web, window};

struct Stage {
    name: &'static str,
    what: &'static str,
    check: fn() -> Outcome,
}

const STAGES: [Stage; 12] = [
    Stage { name: "format", what: "the Rust code is formatted", check: format },
    Stage { name: "lint", what: "clippy finds nothing", check: lint },
    Stage { name: "rust", what: "Rust suites and worked examples", check: rust },
    Stage {
        name: "generated",
        what: "what is generated and committed is in step",
        check: || generate::committed(true),
    },
    Stage { name: "python", what: "the Python wheel gives the same answers", check: python::test },
    Stage { name: "kotlin", what: "the Kotlin jar gives the same answers", check: kotlin::test },
    Stage { name: "swift", what: "the Swift sources are generated", check: swift::test },
    Stage { name: "outside", what: "formulas against other people's libraries", check: outside::checks },
    Stage { name: "pages", what: "the web pages: that they build, types, Prettier, ESLint, Vitest", check: web::check },
    Stage { name: "browser", what: "the pages in Chromium, on and off line", check: measure::end_to_end },
    Stage {
        name: "site",
        what: "the folder for a web host: nginx with HTTPS, a browser, an update",
        check: site::test,
    },
    Stage { name: "window", what: "the desktop window, driven", check: window::test },
];

/// Runs all stages, or those that were asked for, in their order.
pub fn stages(asked: &Test) -> Outcome {
    if asked.list {
        for Stage { name, what, .. } in &STAGES {
            println!("{name:<10} {what}");
        }
        return Ok(());
    }
    let chosen = choose(&asked.only)?;
    let mut passed: Vec<(&Stage, Duration)> = Vec::new();
    for stage in chosen {
        println!("\n== {}: {}", stage.name, stage.what);
        let begin = Instant::now();
        let outcome = (stage.check)();
        if let Err(Failure(reason)) = outcome {
            summarise(&passed);
            println!(
                "{:<10} FAILED after {}\n{reason}\n\n{} passed, 1 failed",
                stage.name,
                seconds(begin.elapsed()),
                passed.len()
            );
            return Err(Failure(format!(
                "Stage `{0}` failed. To run it alone: cargo xtask test --only {0}",
                stage.name
            )));
        }
        passed.push((stage, begin.elapsed()));
    }
    summarise(&passed);
    println!("\n{} passed, 0 failed", passed.len());
    Ok(())
}

fn choose(only: &[String]) -> Outcome<Vec<&'static Stage>> {
    let names: Vec<&str> = STAGES.iter().map(|stage| stage.name).collect();
    if let Some(stray) = only.iter().find(|wanted| !names.contains(&wanted.as_str())) {
        return Err(Failure(format!("There is no stage `{stray}`, only {}.", names.join(", "))));
    }
    Ok(STAGES.iter().filter(|stage| only.is_empty() || only.iter().any(|wanted| wanted == stage.name)).collect())
}

fn summarise(passed: &[(&Stage, Duration)]) {
    println!("\n== summary");
    for (stage, time) in passed {
        println!("{:<10} passed in {}", stage.name, seconds(*time));
    }
    println!("{:<10} {}", "together", seconds(passed.iter().map(|(_, time)| *time).sum()));
}

fn seconds(time: Duration) -> String {
    format!("{:.1} s", time.as_secs_f64())
}

fn format() -> Outcome {
    run(cargo().args(["fmt", "--all", "--check"]))
}

fn lint() -> Outcome {
    needs::web_view()?;
    window::stand_in_page()?;
    run(cargo().args(["clippy", "--quiet", "--workspace", "--all-targets", "--all-features", "--", "-D", "warnings"]))?;
    web::lint()
}

/// The window is left to its own stage: to test it here would mean to compile its web view twice.
fn rust() -> Outcome {
    needs::c_compiler()?;
    run(cargo().args(["test", "--quiet", "--all-features"]))
}

#[cfg(test)]
mod tests {
    use super::{STAGES, choose};

    fn names(only: &[&str]) -> Result<Vec<&'static str>, String> {
        let only: Vec<String> = only.iter().map(|name| (*name).to_owned()).collect();
        choose(&only).map(|stages| stages.iter().map(|stage| stage.name).collect()).map_err(|failure| failure.0)
    }

    #[test]
    fn stages_are_found_by_name_and_an_unknown_one_is_refused_with_the_names() {
        assert_eq!(names(&[]).map(|names| names.len()), Ok(STAGES.len()));
        assert_eq!(names(&["kotlin", "format"]), Ok(vec!["format", "kotlin"]));
        let refusal = names(&["format", "kotlim"]).err().unwrap_or_default();
        assert!(refusal.contains("kotlim") && refusal.contains("kotlin"), "{refusal}");
    }
}
