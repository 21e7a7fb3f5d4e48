//! Slack: how much later each task could end before the ready date moves.
//!
//! Method: the backward pass of the critical path method (Kelley, “Critical-path planning and scheduling”, Operations
//! Research 9, 1961, standing: from memory), on each task's own bench time instead of plain time: the task that ends
//! last is put off first, each into a gap that those before it left. Then each task by itself is tried in bench time
//! that lies idle even when all others are as late as they may be: that it comes before another is no reason to call it
//! urgent. A task that must begin within a time limit is not put off beyond it.

use crate::plan::search::{Placement, Problem, Taken, Timetable, by_begin};
use crate::plan::tasks::{Task, WaitRule};
use crate::time::{HOUR_MS, MINUTE_MS};

/// How late a task may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Latest {
    /// Latest instant at which it may begin when all others are late too.
    pub(crate) begin_ms: i64,
    /// How much later its work could end, hours.
    pub(crate) slack_hours: f64,
    /// It cannot be put off to the next stretch of its bench time: it holds the date.
    pub(crate) critical: bool,
    /// When its work ends when all others are late too.
    end_ms: i64,
    /// When its work must have ended, whatever the mechanic does.
    limit_ms: i64,
}

/// How late each task may be when everything must be over at `ready_ms`.
pub(crate) fn latest(problem: &Problem, plan: &Timetable, ready_ms: i64) -> Vec<Option<Latest>> {
    let mut latest: Vec<Option<Latest>> = vec![None; plan.len()];
    let mut limits = vec![ready_ms; plan.len()];
    let mut taken = Taken::default();
    for place in by_end(plan).into_iter().rev() {
        let (Some(task), Some(Some(placed))) = (problem.tasks.get(place), plan.get(place)) else { continue };
        let over_by_ms = limits.get(place).copied().unwrap_or(ready_ms);
        let begins_ms = |other: usize| latest.get(other).copied().flatten().map(|late: Latest| late.begin_ms);
        let spot_ms = problem.spot_limit_ms(place, begins_ms).max(placed.end_ms);
        let limit_ms = latest_end_ms(problem, place, placed.end_ms, over_by_ms).min(spot_ms);
        let late = put_off(problem, plan, place, limit_ms, &taken).unwrap_or_else(|| placed.clone());
        taken.replace(problem, place, Some(&late));
        for need in &task.after {
            if let Some(limit) = limits.get_mut(*need) {
                *limit = late.begin_ms.min(*limit);
            }
        }
        if let Some(own) = latest.get_mut(place) {
            let (begin_ms, end_ms) = (late.begin_ms, late.end_ms);
            *own = Some(Latest { begin_ms, end_ms, limit_ms, slack_hours: 0.0, critical: true });
        }
    }
    for (place, own) in latest.iter_mut().enumerate() {
        if let (Some(task), Some(Some(placed)), Some(own)) = (problem.tasks.get(place), plan.get(place), own) {
            // By itself it may end later still, where there is idle time with all others late.
            let alone = put_off(problem, plan, place, own.limit_ms, &taken);
            let end_ms = alone.map_or(own.end_ms, |alone| alone.end_ms.max(own.end_ms));
            let bench = problem.axes.axis(task.kind);
            own.slack_hours = (end_ms - placed.end_ms) as f64 / HOUR_MS as f64;
            own.critical = match task.work_ms {
                0 => bench.within_one_sitting(placed.end_ms, end_ms),
                _ => bench.same_sitting(bench.place_of(placed.end_ms), bench.place_of(end_ms)),
            };
        }
    }
    latest
}

/// The task as late as it may be, but no earlier than it lies: ended at its limit, begun in time after what it follows,
/// and in one gap of the time that others take. None where there is no such place.
fn put_off(problem: &Problem, plan: &Timetable, place: usize, limit_ms: i64, taken: &Taken) -> Option<Placement> {
    let (task, placed) = (problem.tasks.get(place)?, plan.get(place)?.as_ref()?);
    let begins_by_ms = begins_by_ms(task, plan);
    let at = |(begin_ms, end_ms)| Placement { begin_ms, end_ms, over_ms: None };
    if task.work_ms == 0 {
        let late_ms = limit_ms.min(begins_by_ms).max(placed.end_ms);
        return Some(at((late_ms, late_ms)));
    }
    // Work that is split with a limit after it ends with a piece of some length: it stays where that was seen to.
    if task.limits && !task.in_one_go {
        return None;
    }
    let bench = problem.axes.axis(task.kind);
    for (from_ms, to_ms) in taken.gaps(place).rev().filter(|(from_ms, _)| *from_ms < limit_ms) {
        if to_ms < placed.end_ms {
            break;
        }
        let within = (from_ms, to_ms.min(limit_ms));
        if let Some(late) = bench.last_within(within, task.work_ms, task.in_one_go, begins_by_ms) {
            return (late.0 >= placed.begin_ms && late.1 >= placed.end_ms).then(|| at(late));
        }
    }
    None
}

/// When a task must begin so that no time limit after what it follows is over, with that where it lies.
fn begins_by_ms(task: &Task, plan: &Timetable) -> i64 {
    let end_ms = |need: usize| plan.get(need).and_then(Option::as_ref).map(|placed| placed.end_ms);
    let limits = task.within.iter().filter_map(|(need, at_most_ms)| Some(end_ms(*need)? + at_most_ms));
    limits.chain(task.begin_by_ms).min().unwrap_or(i64::MAX)
}

/// The placed tasks in the order in which they end.
fn by_end(plan: &Timetable) -> Vec<usize> {
    let mut places = by_begin(plan);
    places.sort_by_key(|place| plan.get(*place).and_then(Option::as_ref).map(|placed| placed.end_ms));
    places
}

/// The latest instant, to the minute, at which the work may end so that the wait after it is over at the limit.
///
/// A wait that begins later is never over earlier, so halving the interval finds it.
fn latest_end_ms(problem: &Problem, place: usize, end_ms: i64, limit_ms: i64) -> i64 {
    let Some(task) = problem.tasks.get(place) else { return end_ms };
    let in_time =
        |begins_ms| problem.clockwork.over_ms(&task.wait, begins_ms).is_some_and(|over_ms| over_ms <= limit_ms);
    match &task.wait {
        WaitRule::None => return limit_ms.max(end_ms),
        WaitRule::Fixed(long_ms) => return limit_ms.saturating_sub(*long_ms).max(end_ms),
        WaitRule::Unknown => return end_ms,
        WaitRule::Until(until_ms) => return if *until_ms <= limit_ms { limit_ms.max(end_ms) } else { end_ms },
        WaitRule::Cure(_) | WaitRule::Coats(..) => {}
    }
    let (mut good_ms, mut bad_ms) = (end_ms, limit_ms.max(end_ms));
    while bad_ms - good_ms > MINUTE_MS {
        let middle_ms = good_ms + (bad_ms - good_ms) / 2;
        if in_time(middle_ms) {
            good_ms = middle_ms;
        } else {
            bad_ms = middle_ms;
        }
    }
    good_ms
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::plan::hours::TimeAxes;
    use crate::plan::tasks::{Clockwork, Needs};
    use crate::plan::tests::{any_bike, any_moment};

    proptest! {
        #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn with_all_tasks_late_or_with_one_put_off_the_plan_still_holds(bike in any_bike(1..14), moment in any_moment(), fill in any::<bool>()) {
            let clockwork = Clockwork::of(&bike, &moment);
            let needs = Needs::of(&bike, &moment, &clockwork);
            let axes = TimeAxes::of(&bike.bench_time, &moment, clockwork.climate(), needs.tasks.iter().map(|task| task.kind));
            let problem = Problem { tasks: &needs.tasks, axes: &axes, clockwork: &clockwork, until_ms: i64::MAX };
            let mut plan = problem.serial(&(0..needs.tasks.len()).collect::<Vec<_>>());
            let over: Option<Vec<i64>> = plan.iter().map(|placed| placed.as_ref()?.over_ms).collect();
            let Some(ready_ms) = over.and_then(|over| over.into_iter().max()) else { return Ok(()) };
            if fill {
                problem.fill_gaps(&mut plan, None);
            }
            let latest = latest(&problem, &plan, ready_ms);
            let spans = |place: usize, begin_ms, end_ms| axes.axis(needs.tasks[place].kind).work_between(begin_ms, end_ms);
            for (place, task) in needs.tasks.iter().enumerate() {
                let (own, placed) = (latest[place].unwrap(), plan[place].clone().unwrap());
                prop_assert!(own.begin_ms >= placed.begin_ms && own.slack_hours >= 0.0, "late is never early");
                // Late itself, and with the slack that it has alone.
                let alone_ms = placed.end_ms + (own.slack_hours * HOUR_MS as f64).round() as i64;
                for end_ms in [own.end_ms, alone_ms] {
                    let over_ms = clockwork.over_ms(&task.wait, end_ms).unwrap();
                    prop_assert!(over_ms <= ready_ms, "over in time");
                    for (follower, late) in needs.tasks.iter().zip(&latest).filter(|(other, _)| other.after.contains(&place)) {
                        prop_assert!(over_ms <= late.unwrap().begin_ms, "{} before {}", task.id, follower.id);
                    }
                    if task.work_ms == 0 {
                        continue;
                    }
                    let bench = axes.axis(task.kind);
                    let begin_ms = bench.begin_ms(bench.place_of(end_ms) - task.work_ms).unwrap();
                    for (need, at_most_ms) in &task.within {
                        let ended_ms = plan[*need].as_ref().unwrap().end_ms;
                        prop_assert!(begin_ms <= ended_ms + at_most_ms, "{} in time", task.id);
                    }
                    let work = spans(place, begin_ms, end_ms);
                    prop_assert!(!task.in_one_go || work.len() == 1, "{} in one go", task.id);
                    for (other, late) in latest.iter().enumerate().filter(|(other, _)| *other != place) {
                        let late = late.unwrap();
                        for span in spans(other, late.begin_ms, late.end_ms) {
                            let apart = work.iter().all(|own| own.to_ms <= span.from_ms || span.to_ms <= own.from_ms);
                            prop_assert!(needs.tasks[other].work_ms == 0 || apart, "{} lies on {other}", task.id);
                        }
                    }
                }
            }
        }
    }
}
