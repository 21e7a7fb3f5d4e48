//! Measures the planner on published instances of the project-scheduling problem: how far each plan is from the known
//! optimum or above the critical path, at so many seconds for an instance. Printed, never asserted, but for what must
//! hold on each: the plan before the checker, and the critical path against the length that the file itself gives.
//!
//! The instances are not part of this project; their folder is the first argument, with one folder for each set, each
//! with `known.csv`. Then: `--seconds S` for an instance (1), `--only N` takes every N-th instance (1).

use std::path::Path;
use std::time::Instant;

use layshaft_core::plan::rcpsp::{Activity, After, Project, Search, check, critical_path};

/// Schedules between two looks at the clock.
const BETWEEN_LOOKS: u64 = 300;

/// What a set came to.
#[derive(Default)]
struct Tally {
    instances: u32,
    gaps: Vec<f64>,
    above: Vec<f64>,
    bound_gaps: Vec<f64>,
    schedules: u64,
    seconds: f64,
    proved: u32,
}

fn main() {
    let mut words = std::env::args().skip(1);
    let Some(folder) = words.next() else {
        println!(
            "No folder given. The instances do not come with Layshaft: name a folder that holds j30, j60 or j120."
        );
        return;
    };
    let rest: Vec<String> = words.collect();
    let option = |name: &str| {
        rest.iter().position(|word| word == name).and_then(|place| rest.get(place + 1)?.parse::<f64>().ok())
    };
    let (seconds, every) = (option("--seconds").unwrap_or(1.0), option("--only").unwrap_or(1.0).max(1.0) as usize);
    println!("set    instances  to known %  above path %  above bound %  proved  schedules/s  s each");
    let mut found = false;
    for set in ["j30", "j60", "j120"] {
        let Ok(known) = std::fs::read_to_string(Path::new(&folder).join(set).join("known.csv")) else { continue };
        found = true;
        let mut tally = Tally::default();
        for line in known.lines().skip(1).step_by(every) {
            if let Err(fault) = measure(&folder, set, line, seconds, &mut tally) {
                println!("{line}: {fault}");
                std::process::exit(1);
            }
        }
        let mean = |values: &[f64]| values.iter().sum::<f64>() / values.len().max(1) as f64;
        println!(
            "{set:<6} {:>9}  {:>10.3}  {:>12.2}  {:>13.2}  {:>6}  {:>11.0}  {:>6.2}",
            tally.instances,
            mean(&tally.gaps),
            mean(&tally.above),
            mean(&tally.bound_gaps),
            tally.proved,
            tally.schedules as f64 / tally.seconds.max(1e-9),
            tally.seconds / f64::from(tally.instances.max(1)),
        );
    }
    if !found {
        println!("No set found in {folder}: it should hold j30, j60 or j120, each with known.csv.");
    }
}

/// Plans one instance and verifies the plan.
fn measure(folder: &str, set: &str, line: &str, seconds: f64, tally: &mut Tally) -> Result<(), String> {
    let (name, known) = line.split_once(',').ok_or("a line of known.csv is `instance,known`")?;
    let upper: f64 = known.rsplit("..").next().and_then(|text| text.trim().parse().ok()).ok_or("no known length")?;
    let path = Path::new(folder).join(set).join(format!("{name}.sm"));
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    let (project, said) = read(&text).ok_or("the file is not in the form that was expected")?;
    let path_length = critical_path(&project);
    if path_length != said {
        return Err(format!("the critical path is {path_length}, the file says {said}"));
    }
    let began = Instant::now();
    let mut search = Search::new(&project, 1);
    while began.elapsed().as_secs_f64() < seconds && search.length() > search.bound() {
        search.run(BETWEEN_LOOKS);
    }
    tally.seconds += began.elapsed().as_secs_f64();
    let faults = check(&project, &search.begins());
    if !faults.is_empty() {
        return Err(faults.join("; "));
    }
    let percent = |over: f64, base: f64| (over - base) / base * 100.0;
    let length = f64::from(search.length());
    tally.instances += 1;
    tally.schedules += search.schedules();
    tally.gaps.push(percent(length, upper));
    tally.above.push(percent(length, f64::from(path_length)));
    tally.bound_gaps.push(percent(length, f64::from(search.bound())));
    tally.proved += u32::from(search.length() == search.bound());
    Ok(())
}

/// Reads an instance, and the length of its critical path as the file gives it.
fn read(text: &str) -> Option<(Project, u32)> {
    let lines: Vec<Vec<&str>> = text.lines().map(|line| line.split_whitespace().collect()).collect();
    let numbers = |line: &Vec<&str>| line.iter().map(|word| word.parse::<u32>().ok()).collect::<Option<Vec<u32>>>();
    let after = |head: &str| lines.iter().position(|line| line.join(" ").starts_with(head));
    let said = *numbers(lines.get(after("pronr.")? + 1)?)?.last()?;
    let links: Vec<Vec<u32>> = lines.get(after("jobnr. #modes")? + 1..)?.iter().map_while(numbers).collect();
    let wants: Vec<Vec<u32>> = lines.get(after("jobnr. mode")? + 2..)?.iter().map_while(numbers).collect();
    let capacity = numbers(lines.get(after("RESOURCEAVAILABILITIES")? + 2)?)?;
    let mut activities: Vec<Activity> = wants
        .iter()
        .map(|row| Some(Activity { duration: *row.get(2)?, demand: row.get(3..)?.to_vec(), ..Activity::default() }))
        .collect::<Option<_>>()?;
    for row in &links {
        let activity = *row.first()? as usize - 1;
        for follower in row.get(3..)? {
            activities.get_mut(*follower as usize - 1)?.after.push(After { activity, lag: 0 });
        }
    }
    Some((Project::new(activities, capacity).ok()?, said))
}
