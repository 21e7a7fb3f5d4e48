//! Laying tasks onto bench time: one mechanic, one job at a time, a job begun is finished before another is begun.
//!
//! Each task lies in the bench time of its kind, and takes its spots (see `spots`) after those before it in the order.
//! Where what follows has a time limit, the task is put off until what follows can begin in time. For a given order there
//! is one plan in which every task begins and ends as early as in any other, because each rule only ever says “not
//! before”: it is found by raising the beginnings until all rules hold (the least fixed point; Tarski, Pacific Journal of
//! Mathematics 5, 1955, standing: from memory). More bench time only takes rules away, so no task of an order can end
//! later by it.

use super::needs::Task;
use super::own_time::Benches;
use super::spots::Freed;
use super::waits::Clockwork;
use crate::time::{DAY_MS, MINUTE_MS};

/// Where a task lies.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Laid {
    /// Instant at which its work begins.
    pub(crate) begin_ms: i64,
    /// Instant at which its work ends.
    pub(crate) end_ms: i64,
    /// Instant at which its wait is over; none when that cannot be known.
    pub(crate) over_ms: Option<i64>,
}

/// Tasks on bench time, by their places in the list of tasks; none where one cannot be laid.
pub(crate) type Plan = Vec<Option<Laid>>;

/// The last piece of work before a time limit begins to run is at least so long: a choice of ours.
const LAST_PIECE_MS: i64 = 15 * MINUTE_MS;

/// What laying needs to know.
#[derive(Clone, Copy)]
pub(crate) struct Ground<'a> {
    /// The tasks, each after all that it must follow.
    pub(crate) tasks: &'a [Task<'a>],
    /// The bench time of each kind of task.
    pub(crate) benches: &'a Benches,
    /// The waits.
    pub(crate) clockwork: &'a Clockwork,
    /// A plan that is not over by then is of no interest.
    pub(crate) until_ms: i64,
}

impl Ground<'_> {
    /// Lays the tasks in an order, each after the one before it; no task where that is not over in time.
    pub(crate) fn lay(&self, order: &[usize]) -> Plan {
        self.lay_until(order, self.until_ms).unwrap_or_else(|| vec![None; self.tasks.len()])
    }

    /// Lays the tasks in an order; none where it is not over by an instant.
    fn lay_until(&self, order: &[usize], until_ms: i64) -> Option<Plan> {
        let mut plan: Plan = vec![None; self.tasks.len()];
        let mut floors = vec![i64::MIN; self.tasks.len()];
        // When the mechanic is free before each step of the order, and when the spots are.
        let mut free = vec![(i64::MIN, Freed::always()); order.len() + 1];
        let mut step = 0;
        while let Some(&place) = order.get(step) {
            let (free_ms, freed) = free.get(step).copied().unwrap_or((i64::MIN, Freed::always()));
            let takes = self.tasks.get(place).map(|task| task.takes).unwrap_or_default();
            let floor_ms = floors.get(place).copied().unwrap_or(i64::MIN);
            let release_ms = self.release_after_spots_ms(place, &plan, freed);
            let laid = release_ms.and_then(|release_ms| self.set(place, release_ms, free_ms, floor_ms));
            if laid.as_ref().is_some_and(|laid| laid.over_ms.unwrap_or(laid.end_ms) > until_ms) {
                return None;
            }
            let works = self.tasks.get(place).is_some_and(|task| task.work_ms > 0);
            let ends_ms = laid.as_ref().filter(|_| works).map_or(free_ms, |laid| laid.end_ms);
            let freed = laid.as_ref().map_or(freed, |laid| freed.after(takes, laid.end_ms));
            let back = self.raise(place, laid.as_ref(), &plan, &mut floors);
            if let Some(own) = plan.get_mut(place) {
                *own = laid;
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
    fn raise(&self, place: usize, laid: Option<&Laid>, plan: &Plan, floors: &mut [i64]) -> bool {
        let (Some(task), Some(laid)) = (self.tasks.get(place), laid) else { return false };
        let mut raised = false;
        for &(need, at_most_ms) in &task.within {
            let floor_ms = laid.begin_ms - at_most_ms;
            let before = plan.get(need).and_then(Option::as_ref);
            if let Some(own) = floors.get_mut(need).filter(|_| before.is_some_and(|before| before.end_ms < floor_ms)) {
                *own = floor_ms;
                raised = true;
            }
        }
        raised
    }

    fn is_put_off(&self, place: usize, plan: &Plan, floors: &[i64]) -> bool {
        let end_ms = plan.get(place).and_then(Option::as_ref).map(|laid| laid.end_ms);
        floors.get(place).zip(end_ms).is_some_and(|(floor_ms, end_ms)| end_ms < *floor_ms)
    }

    /// When a task may begin; none when one that it must follow is not laid, or its wait has no known end.
    pub(crate) fn release_ms(&self, place: usize, plan: &Plan) -> Option<i64> {
        let task = self.tasks.get(place)?;
        task.after.iter().try_fold(task.not_before_ms, |latest, need| {
            let over_ms = plan.get(*need)?.as_ref()?.over_ms?;
            Some(latest.max(over_ms))
        })
    }

    /// The same, when its spots are free too.
    pub(crate) fn release_after_spots_ms(&self, place: usize, plan: &Plan, freed: Freed) -> Option<i64> {
        let takes = self.tasks.get(place)?.takes;
        Some(self.release_ms(place, plan)?.max(freed.for_all(takes)))
    }

    /// The task as early as may be: after its release, when the mechanic is free, and ended no sooner than `floor_ms`.
    pub(crate) fn set(&self, place: usize, release_ms: i64, free_ms: i64, floor_ms: i64) -> Option<Laid> {
        let task = self.tasks.get(place).filter(|task| !task.never)?;
        let (begin_ms, end_ms) = if task.work_ms == 0 {
            (release_ms.max(floor_ms), release_ms.max(floor_ms))
        } else {
            self.work(task, release_ms.max(free_ms), floor_ms)?
        };
        Some(Laid { begin_ms, end_ms, over_ms: self.clockwork.over_ms_of(place, &task.wait, end_ms) })
    }

    /// When the work of a task can begin from an instant on.
    pub(crate) fn begins(&self, task: &Task, from_ms: i64) -> Option<i64> {
        self.work(task, from_ms, i64::MIN).map(|(begin_ms, _)| begin_ms)
    }

    /// When the work of a task begins and ends.
    fn work(&self, task: &Task, from_ms: i64, floor_ms: i64) -> Option<(i64, i64)> {
        let bench = self.benches.own(task.kind);
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

    /// The plan of the order that is done with everything first; of equal ones, the earliest in the list. No order is
    /// asked for after one that is proven best.
    ///
    /// Orders that leave a time limit no chance are noticed late. They are first followed for a year beyond what no plan
    /// can be better than, and further only where none is over by then.
    pub(crate) fn best(&self, orders: impl Iterator<Item = Vec<usize>>) -> Plan {
        let least = self.cannot_be_less();
        let year_ms = least.over_ms.map_or(i64::MAX, |over_ms| over_ms.saturating_add(366 * DAY_MS));
        let mut asked = Vec::new();
        let kept = orders.inspect(|order| asked.push(order.clone()));
        let soon = self.best_until(kept, least, year_ms).filter(|(score, _)| score.is_whole(least));
        let best = soon.or_else(|| self.best_until(asked.into_iter(), least, i64::MAX));
        best.map(|(_, plan)| plan).unwrap_or_default()
    }

    fn best_until(
        &self,
        orders: impl Iterator<Item = Vec<usize>>,
        least: Score,
        until_ms: i64,
    ) -> Option<(Score, Plan)> {
        let mut best: Option<(Score, Plan)> = None;
        for order in orders {
            // Where all is laid that can be, an order is given up as soon as it is later than the best so far.
            let whole = best.as_ref().filter(|(so_far, _)| so_far.is_whole(least));
            let until_ms = whole.and_then(|(so_far, _)| so_far.over_ms).unwrap_or(until_ms);
            let Some(plan) = self.lay_until(&order, until_ms) else { continue };
            let score = self.score(&plan);
            if best.as_ref().is_none_or(|(so_far, _)| score < *so_far) {
                best = Some((score, plan));
            }
            if best.as_ref().is_some_and(|(so_far, _)| *so_far <= least) {
                break;
            }
        }
        best
    }

    /// How good a plan is.
    pub(crate) fn score(&self, plan: &Plan) -> Score {
        Score {
            unlaid: plan.iter().filter(|laid| laid.is_none()).count(),
            missed: self.tasks.iter().zip(plan).filter(|(task, laid)| misses(task, laid.as_ref())).count(),
            over_ms: plan.iter().flatten().filter_map(|laid| laid.over_ms).max(),
        }
    }
}

/// Whether a task begins after the time limit that runs for it.
pub(crate) fn misses(task: &Task, laid: Option<&Laid>) -> bool {
    task.begin_by_ms.zip(laid).is_some_and(|(by_ms, laid)| laid.begin_ms > by_ms)
}

/// How good a plan is: less is better, the first first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Score {
    /// Tasks that are not laid.
    pub(crate) unlaid: usize,
    /// Tasks that begin after a time limit that runs already.
    pub(crate) missed: usize,
    /// When the last wait is over.
    pub(crate) over_ms: Option<i64>,
}

impl Score {
    /// Whether all is laid that can be, in time.
    fn is_whole(self, least: Score) -> bool {
        self.unlaid <= least.unlaid && self.missed == 0
    }
}

/// The task whose wait is over last.
pub(crate) fn last_over(plan: &Plan) -> Option<usize> {
    let over = plan.iter().enumerate().filter_map(|(place, laid)| Some((laid.as_ref()?.over_ms?, place)));
    over.max().map(|(_, place)| place)
}

/// The laid tasks in the order in which they begin.
pub(crate) fn by_begin(plan: &Plan) -> Vec<usize> {
    let mut places: Vec<usize> =
        (0..plan.len()).filter(|place| plan.get(*place).is_some_and(Option::is_some)).collect();
    places.sort_by_key(|place| {
        plan.get(*place).and_then(Option::as_ref).map(|laid| (laid.begin_ms, laid.end_ms, *place))
    });
    places
}
