//! The schedule: every job on the calendar, the ready date, and what holds it.
//!
//! Jobs go onto bench time in dependency order, by rank and then by mark; where another order is ready earlier, that one
//! is taken. How the orders come about, and why none of them looks at the calendar, stands in `orders.rs`.

use super::bench::Bench;
use super::calendar::HOUR_MS;
use super::chance::{Odds, chances};
use super::held_by::held_by;
use super::lay::{Ground, Plan, last_over};
use super::needs::{Needs, Task};
use super::orders::{Outline, orders};
use super::rows::rows;
use super::waits::Clockwork;
use super::{Moment, PlanRow};
use crate::bike::{Bike, JobState};
use crate::finding::{Finding, Weight};

/// The schedule of a bike.
#[derive(Clone, Debug, PartialEq)]
pub struct Scheduled {
    /// Jobs in the order of their dates, then those that cannot be planned, then those that are done.
    pub rows: Vec<PlanRow>,
    /// When everything is done and every wait is over, milliseconds since 1970 (UTC); none when it cannot be planned.
    pub ready_ms: Option<i64>,
    /// How sure that is; none where nothing varies.
    pub odds: Option<Odds>,
    /// What holds the date, in words.
    pub held_by: String,
    /// What is worth saying.
    pub findings: Vec<Finding>,
}

/// Plans every job of a bike from a moment on, without the odds.
///
/// The same bike at the same moment always gives the same plan, and more bench time never gives a later ready date.
pub fn schedule(bike: &Bike, moment: &Moment) -> Scheduled {
    scheduled(bike, moment, false)
}

/// The same with the odds, which take two thousand runs through the plan.
pub(crate) fn schedule_with_odds(bike: &Bike, moment: &Moment) -> Scheduled {
    scheduled(bike, moment, true)
}

fn scheduled(bike: &Bike, moment: &Moment, with_odds: bool) -> Scheduled {
    let clockwork = Clockwork::of(bike, moment);
    let bench = Bench::from(&bike.bench_time, moment);
    let needs = Needs::of(bike, moment, &clockwork);
    let ground = Ground { tasks: &needs.tasks, bench: &bench, clockwork: &clockwork };
    let plan = plan(&ground, &needs, moment);
    let ready_ms = ready_ms(&needs, &plan);
    let held_by = held_by(bike, moment, &needs, &ground, &plan, ready_ms);
    let mut rows = rows(bike, moment.at_ms(), &needs, &ground, &plan, ready_ms);
    let chances = if with_odds { chances(bike, moment, &needs, &ground, &plan) } else { None };
    for row in rows.iter_mut().filter(|row| row.state != JobState::Done) {
        row.critical_share = chances.as_ref().map(|all| all.critical.get(row.job.as_str()).copied().unwrap_or(0.0));
    }
    let mut findings = needs.findings.clone();
    findings.extend(never_reached(&needs, &plan));
    Scheduled { rows, ready_ms, odds: chances.map(|all| all.odds), held_by, findings }
}

/// The best of the orders on the calendar, with its gaps filled.
fn plan(ground: &Ground, needs: &Needs, moment: &Moment) -> Plan {
    let mut plan = ground.best(&orders(&outlines(ground, moment)));
    let keeps_its_place = last_over(&plan).filter(|last| over_ms(&plan, *last) >= needs.running_until_ms());
    ground.fill_gaps(&mut plan, keeps_its_place);
    plan
}

/// The tasks as the orders see them. Hours count from this morning's midnight and not from now, so that the plan does
/// not turn over while one looks at it.
fn outlines(ground: &Ground, moment: &Moment) -> Vec<Outline> {
    let hours = |long_ms: i64| long_ms as f64 / HOUR_MS as f64;
    let midnight_ms = moment.zone.instant_of(moment.zone.day_at(moment.at_ms()), 0);
    let wait_ms = |place: usize, task: &Task| {
        let over_ms = ground.clockwork.over_ms_of(place, &task.wait, midnight_ms);
        over_ms.map_or(0, |over_ms| over_ms - midnight_ms)
    };
    let tasks = ground.tasks.iter().enumerate();
    tasks
        .map(|(place, task)| Outline {
            work_hours: hours(task.work_ms),
            wait_hours: hours(wait_ms(place, task)),
            from_hours: task.freed_ms.map_or(0.0, |freed_ms| hours(freed_ms - midnight_ms).max(0.0)),
            after: task.after.clone(),
        })
        .collect()
}

fn over_ms(plan: &Plan, place: usize) -> Option<i64> {
    plan.get(place)?.as_ref()?.over_ms
}

/// When everything is over; none when a job cannot be planned or a wait has no known end.
fn ready_ms(needs: &Needs, plan: &Plan) -> Option<i64> {
    if !needs.stuck.is_empty() || needs.running.iter().any(|wait| wait.over_ms.is_none()) {
        return None;
    }
    let over: Option<Vec<i64>> = plan.iter().map(|laid| laid.as_ref()?.over_ms).collect();
    over?.into_iter().max().max(needs.running_until_ms()).max(needs.last_done_ms)
}

/// Jobs that nothing forbids and that still found no place.
fn never_reached(needs: &Needs, plan: &Plan) -> Vec<Finding> {
    let unlaid = needs.tasks.iter().zip(plan).filter(|(_, laid)| laid.is_none());
    unlaid
        .map(|(task, _)| {
            let text = format!(
                "“{}” finds no place within the next five years: there is too little bench time, or a wait before it has \
                 no end.",
                task.job.title
            );
            Finding::new("plan.never-reached", Weight::Care, text)
        })
        .collect()
}
