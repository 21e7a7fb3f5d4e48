//! Slack: how much later each task could end before the ready date moves.
//!
//! Method: the backward pass of the critical path method (Kelley, “Critical-path planning and scheduling”, Operations
//! Research 9, 1961, standing: from memory), on bench time instead of plain time, with one more link from each task to
//! the one that the mechanic does next. Then each task by itself is tried in bench time that lies idle even when all
//! others are as late as they may be: that it comes before another is no reason to call it urgent.

use super::calendar::{HOUR_MS, MINUTE_MS};
use super::lay::{Ground, Laid, Plan, by_begin};
use super::waits::WaitRule;

/// How late a task may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Latest {
    /// Latest instant at which it may begin when all others are late too.
    pub(crate) begin_ms: i64,
    /// How much later its work could end, hours.
    pub(crate) slack_hours: f64,
    /// It cannot be put off to the next stretch of bench time: it holds the date.
    pub(crate) critical: bool,
    /// Where its work lies when all are late: places on the bench time.
    late: (i64, i64),
    /// The place up to which its work may lie if the mechanic has no other.
    limit: i64,
}

/// How late each task may be when everything must be over at `ready_ms`.
pub(crate) fn latest(ground: &Ground, plan: &Plan, ready_ms: i64) -> Vec<Option<Latest>> {
    let mut latest: Vec<Option<Latest>> = vec![None; plan.len()];
    let mut limits = vec![ready_ms; plan.len()];
    let mut next_begin = i64::MAX;
    for place in by_begin(plan).into_iter().rev() {
        let limit_ms = limits.get(place).copied().unwrap_or(ready_ms);
        let Some(own) = latest_of(ground, plan, place, limit_ms, next_begin) else { continue };
        let Some(task) = ground.tasks.get(place) else { continue };
        if task.work_ms > 0 {
            next_begin = own.late.0;
        }
        for need in &task.after {
            if let Some(limit) = limits.get_mut(*need) {
                *limit = own.begin_ms.min(*limit);
            }
        }
        if let Some(slot) = latest.get_mut(place) {
            *slot = Some(own);
        }
    }
    put_into_idle_time(ground, plan, &mut latest);
    latest
}

fn latest_of(ground: &Ground, plan: &Plan, place: usize, limit_ms: i64, next_begin: i64) -> Option<Latest> {
    let (task, laid) = (ground.tasks.get(place)?, plan.get(place)?.as_ref()?);
    let may_end_ms = latest_end_ms(ground, place, laid.end_ms, limit_ms);
    let limit = ground.bench.place_of(may_end_ms);
    if task.work_ms == 0 {
        let slack_hours = (may_end_ms - laid.end_ms) as f64 / HOUR_MS as f64;
        let critical = ground.bench.within_one_sitting(laid.end_ms, may_end_ms);
        return Some(Latest { begin_ms: may_end_ms, slack_hours, critical, late: (limit, limit), limit });
    }
    let end = limit.min(next_begin).max(laid.end);
    let begin_ms = ground.bench.begin_ms(end - task.work_ms)?;
    let late = Latest { begin_ms, slack_hours: 0.0, critical: true, late: (end - task.work_ms, end), limit };
    late.ending_at(ground, laid, end)
}

impl Latest {
    /// The same with the slack that the work has when it may end at a place.
    fn ending_at(self, ground: &Ground, laid: &Laid, end: i64) -> Option<Latest> {
        let slack_hours = (ground.bench.end_ms(end)? - laid.end_ms) as f64 / HOUR_MS as f64;
        Some(Latest { slack_hours, critical: ground.bench.same_sitting(laid.end, end), ..self })
    }
}

/// Gives each task the slack that it has by itself: the last idle bench time before its limit, with all others late.
fn put_into_idle_time(ground: &Ground, plan: &Plan, latest: &mut [Option<Latest>]) {
    let mut taken: Vec<(i64, i64)> =
        latest.iter().flatten().map(|late| late.late).filter(|(from, to)| from < to).collect();
    taken.sort_unstable();
    for (late, laid) in latest.iter_mut().zip(plan) {
        let (Some(own), Some(laid)) = (late.as_mut(), laid) else { continue };
        let work_ms = own.late.1 - own.late.0;
        let mut end = own.limit;
        for (from, to) in taken.iter().rev().filter(|other| **other != own.late) {
            if end - work_ms >= *to {
                break;
            }
            end = end.min(*from);
        }
        if work_ms > 0 && end > own.late.1 {
            *own = own.ending_at(ground, laid, end).unwrap_or(*own);
        }
    }
}

/// The latest instant, to the minute, at which the work may end so that the wait after it is over at the limit.
///
/// A wait that begins later is never over earlier, so halving the interval finds it.
fn latest_end_ms(ground: &Ground, place: usize, end_ms: i64, limit_ms: i64) -> i64 {
    let Some(task) = ground.tasks.get(place) else { return end_ms };
    let in_time =
        |begins_ms| ground.clockwork.over_ms(&task.wait, begins_ms).is_some_and(|over_ms| over_ms <= limit_ms);
    match &task.wait {
        WaitRule::None => return limit_ms.max(end_ms),
        WaitRule::Fixed(long_ms) => return limit_ms.saturating_sub(*long_ms).max(end_ms),
        WaitRule::Unknown => return end_ms,
        WaitRule::Cure(_) => {}
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

    use super::super::bench::Bench;
    use super::super::laws::{any_bike, any_moment};
    use super::super::needs::Needs;
    use super::super::waits::Clockwork;
    use super::*;

    proptest! {
        #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn with_all_tasks_late_or_with_one_put_off_the_plan_still_holds(bike in any_bike(1..14), moment in any_moment()) {
            let (clockwork, bench) = (Clockwork::of(&bike, &moment), Bench::from(&bike.bench_time, &moment));
            let needs = Needs::of(&bike, &moment, &clockwork);
            let ground = Ground { tasks: &needs.tasks, bench: &bench, clockwork: &clockwork };
            let plan = ground.lay(&(0..needs.tasks.len()).collect::<Vec<_>>());
            let over: Option<Vec<i64>> = plan.iter().map(|laid| laid.as_ref()?.over_ms).collect();
            let Some(ready_ms) = over.and_then(|over| over.into_iter().max()) else { return Ok(()) };
            let latest = latest(&ground, &plan, ready_ms);
            for (place, task) in needs.tasks.iter().enumerate() {
                let (own, laid) = (latest[place].unwrap(), plan[place].clone().unwrap());
                prop_assert!(own.late.0 >= laid.begin && own.slack_hours >= 0.0, "late is never early");
                // Late itself, and with the slack that it has alone.
                let alone_ms = laid.end_ms + (own.slack_hours * HOUR_MS as f64).round() as i64;
                let late_ms = if task.work_ms == 0 { own.begin_ms } else { bench.end_ms(own.late.1).unwrap() };
                for end_ms in [late_ms, alone_ms] {
                    let over_ms = clockwork.over_ms(&task.wait, end_ms).unwrap();
                    prop_assert!(over_ms <= ready_ms, "over in time");
                    for (follower, late) in needs.tasks.iter().zip(&latest).filter(|(other, _)| other.after.contains(&place)) {
                        prop_assert!(over_ms <= late.unwrap().begin_ms, "{} before {}", task.mark, follower.mark);
                    }
                    if task.work_ms == 0 {
                        continue;
                    }
                    let end = bench.place_of(end_ms);
                    let begin = end - task.work_ms;
                    for (other, late) in latest.iter().enumerate().filter(|(other, _)| *other != place) {
                        let (from, to) = late.unwrap().late;
                        prop_assert!(from == to || end <= from || to <= begin, "{} lies on {other}", task.mark);
                    }
                }
            }
        }
    }
}
