//! Orders from sampled weeks: the plan is placed on a few made-up weeks, gaps are filled there, and the order that came about is
//! tried on the real calendar.
//!
//! Jobs for daylight or for two fill few days, and the evenings between go to others: the orders that put them so come
//! from a calendar. The made-up weeks are always the same, whatever bench time the bike has, so that more bench time
//! still never makes the ready date later (see `orders`). Method and weeks are our own choice.

use super::orders::{SLOWEST_PACE, tries_all};
use super::timetable::{Problem, by_begin};
use crate::plan::hours::TimeAxes;
use crate::plan::tasks::Task;
use crate::record::{BenchTime, DayHours, Span};
use crate::time::Moment;

/// So many of the orders are rehearsed on each week, spread over all.
const REHEARSED: usize = 6;
/// The made-up weeks: days from Monday on, from and to as hours.
const WEEKS: [&[(u32, u32, u32)]; 3] = [
    &[(2, 19, 21), (4, 19, 21), (6, 9, 16)],
    &[(1, 18, 20), (2, 18, 20), (3, 18, 20), (4, 18, 20), (5, 18, 20), (6, 9, 17), (7, 9, 17)],
    &[(6, 9, 17), (7, 9, 17)],
];

/// The orders that came about; none where every order is tried anyway, or all bench time does for all tasks.
pub(crate) fn sampled_orders(problem: &Problem, moment: &Moment, orders: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let asks = |task: &Task| !task.kind.asks_nothing() || task.in_one_go || !task.takes.nothing();
    if tries_all(problem.tasks.len()) || !problem.tasks.iter().any(asks) {
        return Vec::new();
    }
    // From this morning's midnight on and not from now, so that the plan does not turn over while one looks at it.
    let midnight_ms = moment.zone.instant_of(moment.zone.day_at(moment.at_ms()), 0);
    let morning = Moment { now_ms: midnight_ms, zone: moment.zone.clone() };
    let from_ms = |task: &Task| task.freed_ms.map_or(midnight_ms, |freed_ms| freed_ms.max(midnight_ms));
    let tasks: Vec<Task> =
        problem.tasks.iter().map(|task| Task { not_before_ms: from_ms(task), ..task.clone() }).collect();
    let until_ms = over_by_ms(problem, &tasks, midnight_ms);
    let mut found: Vec<Vec<usize>> = Vec::new();
    let step = (orders.len() / REHEARSED).max(1);
    for week in WEEKS {
        let axes = TimeAxes::of(
            &made_up(week),
            &morning,
            problem.clockwork.climate(),
            problem.tasks.iter().map(|task| task.kind),
        );
        let stage = Problem { tasks: &tasks, axes: &axes, until_ms, ..*problem };
        for order in orders.iter().step_by(step).take(REHEARSED) {
            let mut plan = stage.serial(order);
            stage.fill_gaps(&mut plan, None);
            let drawn = by_begin(&plan);
            if drawn.len() == order.len() && !found.contains(&drawn) {
                found.push(drawn);
            }
        }
    }
    found
}

/// When a rehearsal is over that is worth anything: everything done one after the other, at the slowest of the paces at
/// which orders are made. Where time limits keep pushing tasks on, a week that does not suit them is given up there.
fn over_by_ms(problem: &Problem, tasks: &[Task], midnight_ms: i64) -> i64 {
    let freed_ms = tasks.iter().map(|task| task.not_before_ms).max().unwrap_or(midnight_ms);
    let long_ms = |(place, task): (usize, &Task)| {
        let work_ms = (task.work_ms as f64 * SLOWEST_PACE) as i64;
        work_ms.saturating_add(problem.clockwork.long_ms_of(place, &task.wait, midnight_ms))
    };
    tasks.iter().enumerate().map(long_ms).fold(freed_ms, i64::saturating_add)
}

/// Bench time of a made-up week, with a helper at the weekend, daylight and quiet nights.
fn made_up(week: &[(u32, u32, u32)]) -> BenchTime {
    let span = |&(weekday, from, to): &(u32, u32, u32)| Span { weekday, from_minute: from * 60, to_minute: to * 60 };
    BenchTime {
        spans: week.iter().map(span).collect(),
        helper: Some(vec![span(&(6, 0, 24)), span(&(7, 0, 24))]),
        daylight: Some(DayHours { from_minute: 8 * 60, to_minute: 18 * 60 }),
        quiet: Some(DayHours { from_minute: 20 * 60, to_minute: 8 * 60 }),
        ..BenchTime::default()
    }
}

#[cfg(test)]
mod tests {
    use crate::plan::schedule::schedule;
    use crate::plan::tests::example::{at, bike, job, tuesday_noon};
    use crate::record::{Bike, Job, JobPlace};

    #[test]
    fn evenings_before_a_job_for_daylight_go_to_others_also_where_there_are_many() {
        let (place, splittable) = (Some(JobPlace::Daylight), Some(false));
        let outdoors = |title: &str, after: &[&str]| Job { place, splittable, ..job(title, 3.0, after) };
        let mut jobs = vec![outdoors("first", &[]), outdoors("second", &["first"]), outdoors("third", &["second"])];
        jobs.extend((0..8).map(|place| job(&format!("job {place}"), 1.0, &[])));
        let made: Bike = bike(jobs);
        // Two by daylight on the first Saturday, the third on the next; the evenings before each take the rest.
        let scheduled = schedule(&made, &tuesday_noon());
        assert_eq!(scheduled.ready_ms, Some(at("2026-04-04", 720)));
        assert_eq!(scheduled.bound_ms, scheduled.ready_ms);
    }
}
