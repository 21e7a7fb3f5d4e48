//! Laying tasks onto bench time: one mechanic, one job at a time, a job begun is finished before another is begun.

use super::bench::Bench;
use super::needs::Task;
use super::waits::Clockwork;

/// Where a task lies.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Laid {
    /// Place on the bench time at which its work begins.
    pub(crate) begin: i64,
    /// Place at which its work ends.
    pub(crate) end: i64,
    /// Instant at which its work ends.
    pub(crate) end_ms: i64,
    /// Instant at which its wait is over; none when that cannot be known.
    pub(crate) over_ms: Option<i64>,
}

/// Tasks on bench time, by their places in the list of tasks; none where one cannot be laid.
pub(crate) type Plan = Vec<Option<Laid>>;

/// What laying needs to know.
pub(crate) struct Ground<'a> {
    /// The tasks, each after all that it must follow.
    pub(crate) tasks: &'a [Task<'a>],
    /// The bench time.
    pub(crate) bench: &'a Bench,
    /// The waits.
    pub(crate) clockwork: &'a Clockwork,
}

impl Ground<'_> {
    /// Lays the tasks in an order, each after the one before it.
    pub(crate) fn lay(&self, order: &[usize]) -> Plan {
        let mut plan: Plan = vec![None; self.tasks.len()];
        let mut free = 0;
        for &place in order {
            let laid = self.release_ms(place, &plan).and_then(|release_ms| self.set(place, release_ms, free));
            if let Some(laid) = &laid {
                free = free.max(laid.end);
            }
            if let Some(own) = plan.get_mut(place) {
                *own = laid;
            }
        }
        plan
    }

    /// When a task may begin; none when one that it must follow is not laid, or its wait has no known end.
    pub(crate) fn release_ms(&self, place: usize, plan: &Plan) -> Option<i64> {
        let task = self.tasks.get(place)?;
        task.after.iter().try_fold(task.not_before_ms, |latest, need| {
            let over_ms = plan.get(*need)?.as_ref()?.over_ms?;
            Some(latest.max(over_ms))
        })
    }

    /// The task from the first place on that is at or after `free` and not before its release.
    fn set(&self, place: usize, release_ms: i64, free: i64) -> Option<Laid> {
        let task = self.tasks.get(place)?;
        let released = self.bench.place_of(release_ms);
        if task.work_ms == 0 {
            let over_ms = self.clockwork.over_ms_of(place, &task.wait, release_ms);
            return Some(Laid { begin: released, end: released, end_ms: release_ms, over_ms });
        }
        let begin = released.max(free);
        let end = begin + task.work_ms;
        let end_ms = self.bench.end_ms(end)?;
        Some(Laid { begin, end, end_ms, over_ms: self.clockwork.over_ms_of(place, &task.wait, end_ms) })
    }

    /// Whether a task begins as soon as it may that must not begin before an instant.
    pub(crate) fn begins_at(&self, plan: &Plan, place: usize, instant_ms: i64) -> bool {
        let laid = plan.get(place).and_then(Option::as_ref);
        laid.is_some_and(|laid| self.bench.place_of(instant_ms) == laid.begin)
    }

    /// The task that the mechanic ends where this one begins.
    pub(crate) fn done_just_before(&self, plan: &Plan, place: usize) -> Option<usize> {
        let begin = plan.get(place)?.as_ref()?.begin;
        plan.iter().position(|other| other.as_ref().is_some_and(|other| other.begin < other.end && other.end == begin))
    }

    /// The plan of the order that is done with everything first; of equal ones, the earliest in the list.
    pub(crate) fn best(&self, orders: &[Vec<usize>]) -> Plan {
        let least = self.cannot_be_less();
        let mut best: Option<(Score, Plan)> = None;
        for order in orders {
            let plan = self.lay(order);
            let score = score(&plan);
            if best.as_ref().is_none_or(|(so_far, _)| score < *so_far) {
                best = Some((score, plan));
            }
            if best.as_ref().is_some_and(|(so_far, _)| *so_far <= least) {
                break;
            }
        }
        best.map(|(_, plan)| plan).unwrap_or_default()
    }

    /// A score that no plan can be better than: each task as if it had the mechanic for itself, and all the work
    /// without a gap.
    fn cannot_be_less(&self) -> Score {
        let mut alone: Plan = Vec::with_capacity(self.tasks.len());
        for place in 0..self.tasks.len() {
            let laid = self.release_ms(place, &alone).and_then(|release_ms| self.set(place, release_ms, 0));
            alone.push(laid);
        }
        let (unlaid, longest_ms) = score(&alone);
        let work_ms = self.tasks.iter().map(|task| task.work_ms).sum();
        let all_work_ms = if unlaid == 0 { self.bench.end_ms(work_ms) } else { None };
        (unlaid, longest_ms.max(all_work_ms))
    }

    /// Draws tasks forward into bench time that lies idle, where they fit without cutting another in two. One task keeps
    /// its place: the one that sets the ready date, so that filling gaps is no way round the fixed set of orders.
    pub(crate) fn fill_gaps(&self, plan: &mut Plan, keeps_its_place: Option<usize>) {
        let mut moved = true;
        while moved {
            moved = false;
            for place in by_begin(plan) {
                if Some(place) == keeps_its_place {
                    continue;
                }
                let Some(release_ms) = self.release_ms(place, plan) else { continue };
                let gap = self.first_gap(place, self.bench.place_of(release_ms), plan);
                let Some(drawn) = self.set(place, release_ms, gap) else { continue };
                if let Some(Some(laid)) = plan.get_mut(place)
                    && (drawn.begin, drawn.end_ms) < (laid.begin, laid.end_ms)
                {
                    *laid = drawn;
                    moved = true;
                }
            }
        }
    }

    /// The first place from `from` on at which a task fits between the others.
    fn first_gap(&self, place: usize, from: i64, plan: &Plan) -> i64 {
        let work_ms = self.tasks.get(place).map_or(0, |task| task.work_ms);
        let mut taken: Vec<(i64, i64)> = plan
            .iter()
            .enumerate()
            .filter(|(other, _)| *other != place)
            .filter_map(|(_, laid)| laid.as_ref())
            .map(|laid| (laid.begin, laid.end))
            .filter(|(begin, end)| begin < end)
            .collect();
        taken.sort_unstable();
        let mut free = from;
        for (begin, end) in taken {
            if free + work_ms <= begin {
                break;
            }
            free = free.max(end);
        }
        free
    }
}

/// Tasks that are not laid, and when the last wait is over: less is better.
type Score = (usize, Option<i64>);

fn score(plan: &Plan) -> Score {
    (plan.iter().filter(|laid| laid.is_none()).count(), plan.iter().flatten().filter_map(|laid| laid.over_ms).max())
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
    places.sort_by_key(|place| plan.get(*place).and_then(Option::as_ref).map(|laid| (laid.begin, laid.end, *place)));
    places
}
