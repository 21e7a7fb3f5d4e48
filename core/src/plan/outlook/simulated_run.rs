//! A simulated run through a plan: whenever the mechanic is free, the first job in the order of the plan that can begin is done.
//! What is late, as a parcel may be, then holds up only what needs it.

use crate::plan::search::{Problem, Timetable, by_begin};
use crate::plan::tasks::Freed;

impl Problem<'_> {
    /// The plan that comes of it; no task where that is not over in time, as in serial schedule generation.
    pub(crate) fn simulated_run(&self, order: &[usize]) -> Timetable {
        let mut plan: Timetable = vec![None; self.tasks.len()];
        let mut left = order.to_vec();
        let mut released = vec![None; self.tasks.len()];
        let (mut free_ms, mut freed) = (i64::MIN, Freed::always());
        while let Some(next) = self.next(&left, &plan, &mut released, free_ms, freed) {
            left.remove(next.at);
            let placed = self.set(next.place, next.release_ms, free_ms, i64::MIN);
            if placed.as_ref().is_some_and(|placed| placed.over_ms.unwrap_or(placed.end_ms) > self.until_ms) {
                return vec![None; self.tasks.len()];
            }
            if let Some((task, placed)) = self.tasks.get(next.place).zip(placed.as_ref()) {
                free_ms = if task.work_ms > 0 { placed.end_ms.max(free_ms) } else { free_ms };
                freed = freed.after(task.takes, placed.end_ms);
            }
            if let Some(own) = plan.get_mut(next.place) {
                *own = placed;
            }
        }
        // Time limits ask for more than taking what comes first: the same order is placed so that they are kept.
        if self.tasks.iter().any(|task| task.limits) { self.serial(&by_begin(&plan)) } else { plan }
    }

    /// The first task that can begin at once, else the one that can begin first. What a task waits for does not change any
    /// more once it is known, and is kept in `released`.
    fn next(
        &self,
        left: &[usize],
        plan: &Timetable,
        released: &mut [Option<i64>],
        free_ms: i64,
        freed: Freed,
    ) -> Option<Next> {
        let whole = self.axes.whole();
        let now = whole.place_of(free_ms);
        let mut first: Option<(i64, Next)> = None;
        for (at, &place) in left.iter().enumerate() {
            let Some(known) = released.get_mut(place) else { continue };
            if known.is_none() {
                *known = self.release_ms(place, plan);
            }
            let Some((task, release_ms)) = self.tasks.get(place).filter(|task| !task.never).zip(*known) else {
                continue;
            };
            let release_ms = release_ms.max(freed.for_all(task.takes));
            let next = Next { at, place, release_ms };
            if task.work_ms == 0 {
                return Some(next);
            }
            let from_ms = release_ms.max(free_ms);
            if first.as_ref().is_some_and(|(so_far_ms, _)| *so_far_ms <= from_ms) {
                continue;
            }
            let Some(begin_ms) = self.begins(task, from_ms) else { continue };
            if whole.place_of(begin_ms) == now {
                return Some(next);
            }
            if first.as_ref().is_none_or(|(so_far_ms, _)| begin_ms < *so_far_ms) {
                first = Some((begin_ms, next));
            }
        }
        first.map(|(_, next)| next)
    }
}

/// What is done next.
struct Next {
    /// Where it stands among those that are left.
    at: usize,
    place: usize,
    /// When all that it needs is there, its spots too.
    release_ms: i64,
}
