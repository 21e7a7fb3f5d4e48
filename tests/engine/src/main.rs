//! The published instances with the constraint engine `pumpkin-core`, one core, at the same time limit: printed beside
//! the planner, with both of the engine's ways to branch. Arguments as for the planner: the folder, then `--seconds S`
//! (1) and `--only N` (1).

mod instance;
mod solve;

use std::path::Path;
use std::time::Instant;

use instance::Instance;
use solve::{Branching, solve};

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let Some(folder) = words.first() else { return println!("No folder given.") };
    let option = |name: &str| {
        words.iter().position(|word| word == name).and_then(|place| words.get(place + 1)?.parse::<f64>().ok())
    };
    let (seconds, every) = (option("--seconds").unwrap_or(1.0), option("--only").unwrap_or(1.0).max(1.0) as usize);
    println!("engine, branching      instances  to known %  above path %  proved  none found  s each");
    for set in ["j30", "j60", "j120"] {
        let Ok(known) = std::fs::read_to_string(Path::new(folder).join(set).join("known.csv")) else { continue };
        for (name, branching) in [("own", Branching::Own), ("earliest first", Branching::EarliestFirst)] {
            let lines: Vec<&str> = known.lines().skip(1).step_by(every).collect();
            print(&format!("{set}, {name}"), &measure(Path::new(folder), set, &lines, seconds, branching));
        }
    }
}

/// What a set came to.
#[derive(Default)]
struct Tally {
    gaps: Vec<f64>,
    above: Vec<f64>,
    proved: usize,
    without: usize,
    seconds: f64,
}

fn measure(folder: &Path, set: &str, lines: &[&str], seconds: f64, branching: Branching) -> Tally {
    let mut tally = Tally::default();
    for line in lines {
        let read = line.split_once(',').and_then(|(name, length)| {
            let text = std::fs::read_to_string(folder.join(set).join(format!("{name}.sm"))).ok()?;
            Some((Instance::read(&text)?, length.split("..").last()?.parse::<f64>().ok()?))
        });
        let Some((one, known)) = read else { panic!("{set}: {line} cannot be read") };
        let began = Instant::now();
        let (found, proved) = solve(&one, seconds, branching);
        tally.seconds += began.elapsed().as_secs_f64();
        let Some(found) = found else {
            tally.without += 1;
            continue;
        };
        tally.proved += usize::from(proved);
        tally.gaps.push((f64::from(found) - known) / known * 100.0);
        tally.above.push(f64::from(found - one.path) / f64::from(one.path) * 100.0);
    }
    tally
}

fn print(name: &str, tally: &Tally) {
    let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len().max(1) as f64;
    println!(
        "{name:<22} {:>9}  {:>10.3}  {:>12.2}  {:>6}  {:>10}  {:>6.2}",
        tally.gaps.len(),
        mean(&tally.gaps),
        mean(&tally.above),
        tally.proved,
        tally.without,
        tally.seconds / (tally.gaps.len() + tally.without).max(1) as f64
    );
}
