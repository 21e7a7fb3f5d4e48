//! Blocks: tasks that time limits bind together. A block that finds no place by itself, with nothing else to do, never
//! finds one.

use super::orders::{orders, tries_all};
use super::outline::Outline;
use super::timetable::Problem;
use crate::plan::hours::TimeAxes;
use crate::plan::tasks::{Clockwork, Task};
use crate::time::DAY_MS;

/// How far ahead a block is tried, days: a week repeats itself, and a year has every season's exceptions.
const TRIED_DAYS: i64 = 366;

/// The tasks that time limits bind to one, by their places in order: those before and after within a limit, and those
/// that must be done between.
pub(crate) fn block_of(tasks: &[Task], place: usize) -> Vec<usize> {
    let mut block = vec![place];
    let mut grown = true;
    while grown {
        let bound = (0..tasks.len()).filter(|other| !block.contains(other)).find(|&other| {
            let within = |one: usize, of: usize| {
                tasks.get(one).is_some_and(|task| task.within.iter().any(|(need, _)| *need == of))
            };
            let limited = block.iter().any(|&member| within(other, member) || within(member, other));
            let follows = block.iter().any(|member| comes_after(tasks, other, *member));
            limited || (follows && block.iter().any(|member| comes_after(tasks, *member, other)))
        });
        grown = bound.is_some();
        block.extend(bound);
    }
    block.sort_unstable();
    block
}

/// Whether a task must follow another, straight or by way of others.
fn comes_after(tasks: &[Task], place: usize, before: usize) -> bool {
    before < place
        && tasks
            .get(place)
            .is_some_and(|task| task.after.iter().any(|need| *need == before || comes_after(tasks, *need, before)))
}

/// Whether the tasks of a block find a place by themselves from an instant on; none where it has too many to try every
/// order.
pub(crate) fn fits_alone(
    tasks: &[Task],
    block: &[usize],
    now_ms: i64,
    axes: &TimeAxes,
    clockwork: &Clockwork,
) -> Option<bool> {
    if !tries_all(block.len()) {
        return None;
    }
    let own = |need: &usize| block.iter().position(|place| place == need);
    let alone: Vec<Task> = block
        .iter()
        .filter_map(|place| tasks.get(*place))
        .map(|task| Task {
            after: task.after.iter().filter_map(own).collect(),
            within: task.within.iter().filter_map(|(need, at_most_ms)| Some((own(need)?, *at_most_ms))).collect(),
            not_before_ms: now_ms,
            ..task.clone()
        })
        .collect();
    let outline = |task: &Task| Outline { after: task.after.clone(), limits: task.limits, ..Outline::default() };
    let outlines: Vec<Outline> = alone.iter().map(outline).collect();
    // The clockwork keeps what it reckons by the place of a task, and here each has another.
    let clockwork = clockwork.anew();
    let until_ms = now_ms.saturating_add(TRIED_DAYS * DAY_MS);
    let problem = Problem { tasks: &alone, axes, clockwork: &clockwork, until_ms };
    Some(orders(&outlines).iter().any(|order| problem.serial(order).iter().all(Option::is_some)))
}
