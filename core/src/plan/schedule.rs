//! The schedule: every job on the calendar, the ready date, and what holds it.
//!
//! Jobs go onto the bench time of their kind in dependency order, by rank and then by id; where another order is ready
//! earlier, that one is taken. How the orders come about, and why none of them looks at the calendar, stands in `orders.rs`.

use super::explain::{PlanRow, held_by, rows};
use super::hours::TimeAxes;
use super::message::PlanFindingMessage;
use super::outlook::{Odds, chances};
use super::search::{
    Orders, Outline, PreviousOrder, Problem, Timetable, last_over, mark_what_never_fits, misses, sampled_orders,
    tries_all,
};
use super::tasks::{Clockwork, Needs, Task, WaitRule, give_up_windows, limit_missed};
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Bike, JobState};
use crate::time::{DAY_MS, HOUR_MS, Moment};

/// A run through the plan is followed up to so many days after its ready date: two years.
const LIVED_DAYS: i64 = 731;

/// The schedule of a bike.
#[derive(Clone, Debug, PartialEq)]
pub struct Scheduled {
    /// Jobs in the order of their dates, then those that cannot be planned, then those that are done.
    pub rows: Vec<PlanRow>,
    /// When everything is done and every wait is over, milliseconds since 1970 (UTC); none when it cannot be planned.
    pub ready_ms: Option<i64>,
    /// No order of the jobs can be ready before; the same as the ready date where that is proven to be the earliest.
    pub bound_ms: Option<i64>,
    /// How sure that is; none where nothing varies.
    pub odds: Option<Odds>,
    /// What holds the date, in words.
    pub held_by: Message,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// The order in which the jobs stand.
    pub standing: PreviousOrder,
}

/// Plans every job of a bike from a moment on, without the odds.
///
/// The same bike at the same moment always gives the same plan, and more bench time never gives a later ready date.
pub fn schedule(bike: &Bike, moment: &Moment) -> Scheduled {
    schedule_keeping(bike, moment, &PreviousOrder::default(), false)
}

/// Plans every job of a bike from a moment on. The order that stood before is kept where no other is ready earlier. The
/// odds take thousands of runs through the plan.
pub fn schedule_keeping(bike: &Bike, moment: &Moment, before: &PreviousOrder, with_odds: bool) -> Scheduled {
    let clockwork = Clockwork::of(bike, moment);
    let mut needs = Needs::of(bike, moment, &clockwork);
    let axes = TimeAxes::of(&bike.bench_time, moment, clockwork.climate(), needs.tasks.iter().map(|task| task.kind));
    needs.findings.extend(mark_what_never_fits(&mut needs.tasks, bike, moment, &axes, &clockwork));
    let before = before.urgency(bike, &needs.tasks);
    let mut best = best_in_order(&problem_of(&needs.tasks, &axes, &clockwork), moment, before.as_deref());
    let missed: Vec<bool> = needs.tasks.iter().zip(&best).map(|(task, placed)| misses(task, placed.as_ref())).collect();
    if give_up_windows(&mut needs.tasks, &missed, &needs.paintings, moment, &mut needs.findings) {
        best = best_in_order(&problem_of(&needs.tasks, &axes, &clockwork), moment, before.as_deref());
    }
    let mut problem = problem_of(&needs.tasks, &axes, &clockwork);
    let standing = PreviousOrder::of(&needs.tasks, &best);
    let plan = filled(&problem, &needs, best);
    let missed = needs.tasks.iter().zip(&plan).filter(|(task, placed)| misses(task, placed.as_ref()));
    needs.findings.extend(missed.filter_map(|(task, _)| limit_missed(task, moment)));
    let ready_ms = ready_ms(&needs, &plan);
    let bound_ms = ready_ms.and_then(|ready_ms| bound_ms(&problem, &needs, ready_ms));
    let held_by = held_by(bike, moment, &needs, &problem, &plan, ready_ms);
    let mut rows = rows(bike, moment.at_ms(), &needs, &problem, &plan, ready_ms);
    problem.until_ms = ready_ms.map_or(i64::MAX, |ready_ms| ready_ms.saturating_add(LIVED_DAYS * DAY_MS));
    let chances = ready_ms.filter(|_| with_odds).and_then(|_| chances(bike, moment, &needs, &problem, &plan));
    for row in rows.iter_mut().filter(|row| row.state != JobState::Done) {
        row.critical_share = chances.as_ref().map(|all| all.critical.get(row.job.as_str()).copied().unwrap_or(0.0));
    }
    let mut findings = needs.findings.clone();
    findings.extend(never_reached(&needs, &plan));
    Scheduled { rows, ready_ms, bound_ms, odds: chances.map(|all| all.odds), held_by, findings, standing }
}

fn problem_of<'a>(tasks: &'a [Task<'a>], axes: &'a TimeAxes, clockwork: &'a Clockwork) -> Problem<'a> {
    Problem { tasks, axes, clockwork, until_ms: i64::MAX }
}

/// The best of the orders, each placed as it is.
fn best_in_order(problem: &Problem, moment: &Moment, before: Option<&[f64]>) -> Timetable {
    let outlines = outlines(problem, moment);
    let mut orders = Orders::of(&outlines, before);
    let mut rehearsals = true;
    let batches = std::iter::from_fn(|| {
        let batch = orders.next_batch();
        batch.or_else(|| std::mem::take(&mut rehearsals).then(|| sampled_orders(problem, moment, orders.made())))
    });
    problem.best(batches.flatten())
}

/// The plan with its gaps filled.
fn filled(problem: &Problem, needs: &Needs, mut plan: Timetable) -> Timetable {
    let keeps_its_place = last_over(&plan).filter(|last| over_ms(&plan, *last) >= needs.running_until_ms());
    problem.fill_gaps(&mut plan, keeps_its_place);
    plan
}

/// What the ready date cannot be before. Where every order was tried, that is the ready date itself.
fn bound_ms(problem: &Problem, needs: &Needs, ready_ms: i64) -> Option<i64> {
    if tries_all(problem.tasks.len()) {
        return Some(ready_ms);
    }
    let least_ms = problem.lower_bound().over_ms.max(needs.running_until_ms()).max(needs.last_done_ms);
    least_ms.map(|least_ms| least_ms.min(ready_ms))
}

/// The tasks as the orders see them. Hours count from this morning's midnight and not from now, so that the plan does
/// not turn over while one looks at it.
fn outlines(problem: &Problem, moment: &Moment) -> Vec<Outline> {
    let hours = |long_ms: i64| long_ms as f64 / HOUR_MS as f64;
    let midnight_ms = moment.zone.instant_of(moment.zone.day_at(moment.at_ms()), 0);
    let tasks = problem.tasks.iter().enumerate();
    tasks
        .map(|(place, task)| Outline {
            work_hours: hours(task.work_ms),
            wait_hours: hours(problem.clockwork.long_ms_of(place, &task.wait, midnight_ms)),
            from_hours: task.freed_ms.map_or(0.0, |freed_ms| hours(freed_ms - midnight_ms).max(0.0)),
            after: task.after.clone(),
            limits: task.limits,
            first: goes_on_now(task, midnight_ms),
        })
        .collect()
}

/// Whether a task is begun, and nothing kept it from going on since this morning's midnight, whatever bench time there
/// is.
fn goes_on_now(task: &Task, midnight_ms: i64) -> bool {
    let any_time = task.kind.asks_nothing() && !task.in_one_go && !task.limits && !task.never;
    let free = task.after.is_empty() && task.freed_ms.is_none_or(|freed_ms| freed_ms <= midnight_ms);
    task.job.state == JobState::Begun && any_time && free
}

fn over_ms(plan: &Timetable, place: usize) -> Option<i64> {
    plan.get(place)?.as_ref()?.over_ms
}

/// When everything is over; none when a job cannot be planned, a wait has no known end or a time limit is missed, which
/// leaves open what has to be done then.
fn ready_ms(needs: &Needs, plan: &Timetable) -> Option<i64> {
    let endless = needs.running.iter().any(|wait| wait.over_ms.is_none());
    let missed = needs.tasks.iter().zip(plan).any(|(task, placed)| misses(task, placed.as_ref()));
    if !needs.stuck.is_empty() || endless || missed {
        return None;
    }
    let over: Option<Vec<i64>> = plan.iter().map(|placed| placed.as_ref()?.over_ms).collect();
    over?.into_iter().max().max(needs.running_until_ms()).max(needs.last_done_ms)
}

/// Jobs that nothing forbids and that still found no place, without those that only wait for such a job.
fn never_reached(needs: &Needs, plan: &Timetable) -> Vec<Finding> {
    let is_placed = |need: &usize| plan.get(*need).is_some_and(Option::is_some);
    let unplaced = needs.tasks.iter().zip(plan).filter(|(task, placed)| {
        let unknown = |need: &usize| needs.tasks.get(*need).is_none_or(|before| before.wait == WaitRule::Unknown);
        placed.is_none() && !task.never && task.after.iter().all(|need| is_placed(need) && !unknown(need))
    });
    unplaced
        .map(|(task, _)| {
            let text = PlanFindingMessage::NeverReached { job: task.job.title.clone() };
            Finding::new(FindingCode::PlanNeverReached, Weight::Care, text)
        })
        .collect()
}
