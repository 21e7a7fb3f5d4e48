//! What never fits, whatever the order: a job without any hours of its kind, a job in one go that is longer than every
//! stretch, a time limit that no bench time keeps. Each is said with what would help, and is not planned.

use super::blocks::{block_of, fits_alone};
use crate::plan::hours::TimeAxes;
use crate::plan::tasks::{Clockwork, Task, WaitRule};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{ASSUMED_WORDS, BenchTime, Bike, JobState};
use crate::time::{HOUR_MS, MINUTE_MS, Moment, Zone};

/// Marks the tasks that can never be placed, and says why.
pub(crate) fn mark_what_never_fits(
    tasks: &mut [Task],
    bike: &Bike,
    moment: &Moment,
    axes: &TimeAxes,
    clockwork: &Clockwork,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for task in tasks.iter_mut().filter(|task| task.work_ms > 0) {
        let found = no_hours(task, bike, axes).or_else(|| no_stretch(task, axes, moment));
        task.never = found.is_some();
        findings.extend(found);
    }
    for place in 0..tasks.len() {
        let found = limit_never_kept(tasks, place, moment.at_ms(), axes, clockwork);
        if let Some(task) = tasks.get_mut(place).filter(|_| found.is_some()) {
            task.never = true;
        }
        findings.extend(found);
    }
    findings.extend(nothing_follows(tasks, bike));
    findings
}

/// No bench time is of the kind that the task asks for.
fn no_hours(task: &Task, bike: &Bike, axes: &TimeAxes) -> Option<Finding> {
    let (kind, bench_time) = (task.kind, &bike.bench_time);
    if axes.axis(kind).longest_ms() > 0 || axes.whole().longest_ms() == 0 {
        return None;
    }
    let no_helper = kind.helper && bench_time.helper.as_ref().is_some_and(Vec::is_empty);
    let help = if no_helper {
        "Say when a helper is there, and it can be planned.".to_owned()
    } else if kind.air.asks() {
        format!("A warmer or drier place would help, or bench time {}.", kind.words())
    } else {
        format!("Bench time {} would help. {}", kind.words(), now_words(bench_time))
    };
    let what = kind.words();
    let text = format!("“{}” can only be done {what}, and no bench time is {what}. {help}", task.job.title);
    Some(Finding::new(FindingCode::PlanNoOwnTime, Weight::Care, text))
}

/// The task is done in one go, and no stretch of its bench time is long enough.
fn no_stretch(task: &Task, axes: &TimeAxes, moment: &Moment) -> Option<Finding> {
    let bench = axes.axis(task.kind);
    if !task.in_one_go || task.work_ms <= bench.longest_ms() || bench.longest_ms() == 0 {
        return None;
    }
    let (long, longest) = (in_words(task.work_ms), in_words(bench.longest_ms()));
    let day = bench.first_stretch(i64::MIN, bench.longest_ms()).map(|at_ms| weekday(&moment.zone, at_ms));
    let what = if task.kind.asks_nothing() { String::new() } else { format!(" {}", task.kind.words()) };
    let text = format!(
        "“{}” takes {long} in one go, and the longest stretch of bench time{what} is {longest} ({}). A stretch of {long} \
         would help, or parts of the job as jobs of their own.",
        task.job.title,
        day.unwrap_or_default()
    );
    Some(Finding::new(FindingCode::PlanNoStretch, Weight::Care, text))
}

/// What follows the task must begin in time, and no bench time allows that, whatever else there is to do.
fn limit_never_kept(
    tasks: &[Task],
    place: usize,
    now_ms: i64,
    axes: &TimeAxes,
    clockwork: &Clockwork,
) -> Option<Finding> {
    let before = tasks.get(place).filter(|task| task.limits && !task.never)?;
    let limit_of = |task: &Task| task.within.iter().find(|(need, _)| *need == place).map(|(_, at_most_ms)| *at_most_ms);
    let followers = tasks.iter().enumerate().filter(|(_, task)| !task.never);
    let limited = followers.filter_map(|(follower, task)| Some((follower, task, limit_of(task)?)));
    for (follower, task, at_most_ms) in limited {
        if fits_alone(tasks, &[place, follower], now_ms, axes, clockwork) == Some(false) {
            let text = format!(
                "“{}” must begin within {} after “{}”, and no bench time allows that. {}",
                task.job.title,
                in_words(at_most_ms),
                before.job.title,
                what_keeps_it(before, task, at_most_ms)
            );
            return Some(Finding::new(FindingCode::PlanLimitNeverKept, Weight::Care, text));
        }
    }
    let block = block_of(tasks, place);
    let members: Vec<&Task> = block.iter().filter_map(|place| tasks.get(*place)).collect();
    if members.iter().any(|task| task.never) || fits_alone(tasks, &block, now_ms, axes, clockwork) != Some(false) {
        return None;
    }
    let titles: Vec<String> = members.iter().map(|task| format!("“{}”", task.job.title)).collect();
    let text = format!(
        "No bench time keeps all time limits between {}. Longer stretches would help, or bench time on days that follow \
         each other.",
        titles.join(", ")
    );
    Some(Finding::new(FindingCode::PlanLimitNeverKept, Weight::Care, text))
}

/// What would keep a time limit: both jobs in one stretch of bench time.
fn what_keeps_it(before: &Task, follower: &Task, at_most_ms: i64) -> String {
    let wait_ms = match before.wait {
        WaitRule::None => 0,
        WaitRule::Fixed(long_ms) if long_ms <= at_most_ms => long_ms,
        _ => return "The wait between them is longer than that. Look at both in the sheet of the product.".to_owned(),
    };
    let both = before.work_ms + wait_ms + follower.work_ms;
    let kind = before.kind.with(follower.kind);
    let what = if kind.asks_nothing() { String::new() } else { format!(" {}", kind.words()) };
    format!("A stretch of {}{what} for both would help.", in_words(both))
}

/// A task whose followers have a time limit is not begun before these can be planned.
fn nothing_follows(tasks: &mut [Task], bike: &Bike) -> Vec<Finding> {
    let mut findings = Vec::new();
    let planned: Vec<String> = tasks.iter().map(|task| task.id.to_owned()).collect();
    let mut hopeless: Vec<bool> = tasks.iter().map(|task| task.never).collect();
    let mut changed = true;
    while changed {
        changed = false;
        for (place, task) in tasks.iter_mut().enumerate() {
            let lost = |other: &usize| hopeless.get(*other) == Some(&true);
            let hangs = task.after.iter().any(lost);
            let limit = crate::plan::tasks::at_most_ms(task.job).is_some();
            let follower = bike.jobs.iter().find(|(id, job)| {
                let open = limit && job.state == JobState::Open && job.after.iter().any(|need| need == task.id);
                open && planned.iter().position(|own| own == *id).is_none_or(|own| lost(&own))
            });
            if lost(&place) || (!hangs && follower.is_none()) {
                continue;
            }
            if let (Some((_, follower)), false) = (follower, hangs) {
                task.never = true;
                let text = format!(
                    "“{}” is not planned: “{}” must begin within a time after it and cannot be planned.",
                    task.job.title, follower.title
                );
                findings.push(Finding::new(FindingCode::PlanLimitWaits, Weight::Note, text));
            }
            if let Some(own) = hopeless.get_mut(place) {
                *own = true;
                changed = true;
            }
        }
    }
    findings
}

/// A length of time in hours and minutes.
fn in_words(long_ms: i64) -> String {
    match (long_ms / HOUR_MS, (long_ms % HOUR_MS + MINUTE_MS - 1) / MINUTE_MS) {
        (0, minutes) => format!("{minutes} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, minutes) => format!("{hours} h {minutes} min"),
    }
}

fn now_words(bench_time: &BenchTime) -> String {
    if bench_time.said() { String::new() } else { format!("Now it is assumed: {ASSUMED_WORDS}.") }
}

/// The day of the week and the month, as one says it.
fn weekday(zone: &Zone, at_ms: i64) -> String {
    zone.day_at(at_ms).spoken()
}
