//! Serial schedule generation on the calendar: the tasks of an order are placed on bench time one by one, each as early as
//! may be. There is one mechanic, one job at a time; a job begun is finished before another is begun.
//!
//! Each task lies in the bench time of its kind, and takes its spots (see `resources`) after those before it in the order.
//! Where what follows has a time limit, the task is put off until what follows can begin in time. For a given order there
//! is one plan in which every task begins and ends as early as in any other, because each rule only ever says “not
//! before”: it is found by raising the beginnings until all rules hold (the least fixed point; Tarski, Pacific Journal of
//! Mathematics 5, 1955, standing: from memory). More bench time only takes rules away, so no task of an order can end
//! later by it.

use super::{Placement, Problem, Timetable};
use crate::plan::tasks::{Freed, Task};
use crate::time::MINUTE_MS;

/// The last piece of work before a time limit begins to run is at least so long: a choice of ours.
const LAST_PIECE_MS: i64 = 15 * MINUTE_MS;

impl Problem<'_> {
    /// Lays the tasks in an order, each after the one before it; no task where that is not over in time.
    pub(crate) fn serial(&self, order: &[usize]) -> Timetable {
        self.serial_until(order, self.until_ms).unwrap_or_else(|| vec![None; self.tasks.len()])
    }

    /// Lays the tasks in an order; none where it is not over by an instant.
    pub(super) fn serial_until(&self, order: &[usize], until_ms: i64) -> Option<Timetable> {
        let mut plan: Timetable = vec![None; self.tasks.len()];
        let mut floors = vec![i64::MIN; self.tasks.len()];
        // When the mechanic is free before each step of the order, and when the spots are.
        let mut free = vec![(i64::MIN, Freed::always()); order.len() + 1];
        let mut step = 0;
        while let Some(&place) = order.get(step) {
            let (free_ms, freed) = free.get(step).copied().unwrap_or((i64::MIN, Freed::always()));
            let takes = self.tasks.get(place).map(|task| task.takes).unwrap_or_default();
            let floor_ms = floors.get(place).copied().unwrap_or(i64::MIN);
            let release_ms = self.release_after_spots_ms(place, &plan, freed);
            let placed = release_ms.and_then(|release_ms| self.set(place, release_ms, free_ms, floor_ms));
            if placed.as_ref().is_some_and(|placed| placed.over_ms.unwrap_or(placed.end_ms) > until_ms) {
                return None;
            }
            let works = self.tasks.get(place).is_some_and(|task| task.work_ms > 0);
            let ends_ms = placed.as_ref().filter(|_| works).map_or(free_ms, |placed| placed.end_ms);
            let freed = placed.as_ref().map_or(freed, |placed| freed.after(takes, placed.end_ms));
            let back = self.raise(place, placed.as_ref(), &plan, &mut floors);
            if let Some(own) = plan.get_mut(place) {
                *own = placed;
            }
            if let Some(next) = free.get_mut(step + 1) {
                *next = (free_ms.max(ends_ms), freed);
            }
            let put_off = |other: &usize| self.is_put_off(*other, &plan, &floors);
            let again = order.iter().take(step).position(put_off).filter(|_| back);
            step = again.unwrap_or(step + 1);
        }
        Some(plan)
    }

    /// Puts off the tasks whose time limit would be over when this one begins; whether there are any.
    fn raise(&self, place: usize, placed: Option<&Placement>, plan: &Timetable, floors: &mut [i64]) -> bool {
        let (Some(task), Some(placed)) = (self.tasks.get(place), placed) else { return false };
        let mut raised = false;
        for &(need, at_most_ms) in &task.within {
            let floor_ms = placed.begin_ms - at_most_ms;
            let before = plan.get(need).and_then(Option::as_ref);
            if let Some(own) = floors.get_mut(need).filter(|_| before.is_some_and(|before| before.end_ms < floor_ms)) {
                *own = floor_ms;
                raised = true;
            }
        }
        raised
    }

    fn is_put_off(&self, place: usize, plan: &Timetable, floors: &[i64]) -> bool {
        let end_ms = plan.get(place).and_then(Option::as_ref).map(|placed| placed.end_ms);
        floors.get(place).zip(end_ms).is_some_and(|(floor_ms, end_ms)| end_ms < *floor_ms)
    }

    /// When a task may begin; none when one that it must follow is not placed, or its wait has no known end.
    pub(crate) fn release_ms(&self, place: usize, plan: &Timetable) -> Option<i64> {
        let task = self.tasks.get(place)?;
        task.after.iter().try_fold(task.not_before_ms, |latest, need| {
            let over_ms = plan.get(*need)?.as_ref()?.over_ms?;
            Some(latest.max(over_ms))
        })
    }

    /// The same, when its spots are free too.
    pub(crate) fn release_after_spots_ms(&self, place: usize, plan: &Timetable, freed: Freed) -> Option<i64> {
        let takes = self.tasks.get(place)?.takes;
        Some(self.release_ms(place, plan)?.max(freed.for_all(takes)))
    }

    /// The task as early as may be: after its release, when the mechanic is free, and ended no sooner than `floor_ms`.
    pub(crate) fn set(&self, place: usize, release_ms: i64, free_ms: i64, floor_ms: i64) -> Option<Placement> {
        let task = self.tasks.get(place).filter(|task| !task.never)?;
        let (begin_ms, end_ms) = if task.work_ms == 0 {
            (release_ms.max(floor_ms), release_ms.max(floor_ms))
        } else {
            self.work(task, release_ms.max(free_ms), floor_ms)?
        };
        Some(Placement { begin_ms, end_ms, over_ms: self.clockwork.over_ms_of(place, &task.wait, end_ms) })
    }

    /// When the work of a task can begin from an instant on.
    pub(crate) fn begins(&self, task: &Task, from_ms: i64) -> Option<i64> {
        self.work(task, from_ms, i64::MIN).map(|(begin_ms, _)| begin_ms)
    }

    /// When the work of a task begins and ends.
    fn work(&self, task: &Task, from_ms: i64, floor_ms: i64) -> Option<(i64, i64)> {
        let bench = self.axes.axis(task.kind);
        if task.in_one_go {
            let begin_ms = bench.first_stretch(from_ms.max(floor_ms.saturating_sub(task.work_ms)), task.work_ms)?;
            return Some((begin_ms, begin_ms + task.work_ms));
        }
        let begin = bench.place_of(from_ms);
        let end_ms = bench.end_ms(begin + task.work_ms)?;
        if !task.limits {
            return Some((bench.begin_ms(begin)?, end_ms));
        }
        let end_ms = bench.first_end(end_ms.max(floor_ms), task.work_ms.min(LAST_PIECE_MS))?;
        Some((bench.begin_ms(bench.place_of(end_ms) - task.work_ms)?, end_ms))
    }
}
