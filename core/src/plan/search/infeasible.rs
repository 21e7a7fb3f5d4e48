//! What never fits, whatever the order: a job without any hours of its kind, a job in one go that is longer than every
//! stretch, a time limit that no bench time keeps. Each is said with what would help, and is not planned.

use super::blocks::{block_of, fits_alone};
use crate::message::{Duration, List, ListStyle, Message};
use crate::plan::hours::TimeAxes;
use crate::plan::message::PlanNeverFitsMessage;
use crate::plan::tasks::{Clockwork, Task, WaitRule};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Bike, JobState};
use crate::time::{MINUTE_MS, Moment};

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
    let asked = || kind.asked();
    let mut said = vec![PlanNeverFitsMessage::NoOwnTime { job: task.job.title.clone(), asked: asked() }];
    if no_helper {
        said.push(PlanNeverFitsMessage::SayHelper);
    } else if kind.air.asks() {
        said.push(PlanNeverFitsMessage::BetterAir { asked: asked() });
    } else {
        said.push(PlanNeverFitsMessage::MoreOwnTime { asked: asked() });
        said.extend((!bench_time.said()).then_some(PlanNeverFitsMessage::NowAssumed));
    }
    Some(Finding::new(FindingCode::PlanNoOwnTime, Weight::Care, sentences(said)))
}

/// The task is done in one go, and no stretch of its bench time is long enough.
fn no_stretch(task: &Task, axes: &TimeAxes, moment: &Moment) -> Option<Finding> {
    let bench = axes.axis(task.kind);
    if !task.in_one_go || task.work_ms <= bench.longest_ms() || bench.longest_ms() == 0 {
        return None;
    }
    // There is a stretch as long as the longest.
    let at_ms = bench.first_stretch(i64::MIN, bench.longest_ms()).unwrap_or(moment.at_ms());
    let (job, day) = (task.job.title.clone(), moment.zone.day_at(at_ms));
    let (work, longest) = (stretch_for(task.work_ms), Duration::ms(bench.longest_ms()));
    let text = if task.kind.asks_nothing() {
        PlanNeverFitsMessage::NoStretch { job, work, longest, day }
    } else {
        PlanNeverFitsMessage::NoOwnStretch { job, work, longest, day, asked: task.kind.asked() }
    };
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
            let never = PlanNeverFitsMessage::LimitNeverKept {
                job: task.job.title.clone(),
                before: before.job.title.clone(),
                limit: Duration::ms(at_most_ms),
            };
            let text = sentences(vec![never, what_keeps_it(before, task, at_most_ms)]);
            return Some(Finding::new(FindingCode::PlanLimitNeverKept, Weight::Care, text));
        }
    }
    let block = block_of(tasks, place);
    let members: Vec<&Task> = block.iter().filter_map(|place| tasks.get(*place)).collect();
    if members.iter().any(|task| task.never) || fits_alone(tasks, &block, now_ms, axes, clockwork) != Some(false) {
        return None;
    }
    let quoted = |task: &&Task| PlanNeverFitsMessage::Quoted { job: task.job.title.clone() }.into();
    let jobs = List(ListStyle::And, members.iter().map(quoted).collect());
    let text = PlanNeverFitsMessage::LimitsNeverKept { jobs };
    Some(Finding::new(FindingCode::PlanLimitNeverKept, Weight::Care, text))
}

/// What would keep a time limit: both jobs in one stretch of bench time.
fn what_keeps_it(before: &Task, follower: &Task, at_most_ms: i64) -> PlanNeverFitsMessage {
    let wait_ms = match before.wait {
        WaitRule::None => 0,
        WaitRule::Fixed(long_ms) if long_ms <= at_most_ms => long_ms,
        _ => return PlanNeverFitsMessage::WaitTooLong,
    };
    let both = stretch_for(before.work_ms + wait_ms + follower.work_ms);
    let kind = before.kind.with(follower.kind);
    if kind.asks_nothing() {
        PlanNeverFitsMessage::StretchForBoth { both }
    } else {
        PlanNeverFitsMessage::OwnStretchForBoth { both, asked: kind.asked() }
    }
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
                let (job, follower) = (task.job.title.clone(), follower.title.clone());
                let text = PlanNeverFitsMessage::LimitWaits { job, follower };
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

/// A stretch that holds so much work, in whole minutes: rounded up, so that it is long enough.
fn stretch_for(work_ms: i64) -> Duration {
    Duration::ms((work_ms + MINUTE_MS - 1) / MINUTE_MS * MINUTE_MS)
}

fn sentences(said: Vec<PlanNeverFitsMessage>) -> Message {
    Message::joined(ListStyle::Sentences, said.into_iter().map(Message::from).collect())
}
