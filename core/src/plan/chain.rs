//! What a task of a plan begins right after: an instant that it waited for, or the work before it.

use super::lay::{Ground, Laid, Plan};

impl Ground<'_> {
    /// Whether a task begins as soon as it may that must not begin before an instant.
    pub(crate) fn begins_at(&self, plan: &Plan, place: usize, instant_ms: i64) -> bool {
        let Some((task, laid)) = self.tasks.get(place).zip(laid(plan, place)) else { return false };
        if task.work_ms == 0 {
            return laid.begin_ms <= instant_ms;
        }
        let bench = self.benches.own(task.kind);
        bench.place_of(instant_ms) == bench.place_of(laid.begin_ms)
    }

    /// The last task that the mechanic ends before this one begins, with no bench time of this one between.
    pub(crate) fn done_just_before(&self, plan: &Plan, place: usize) -> Option<usize> {
        let begin_ms = laid(plan, place)?.begin_ms;
        let others = plan.iter().enumerate().filter(|(other, _)| *other != place);
        let before = others.filter_map(|(other, own)| Some((own.as_ref()?, other)));
        let before = before.filter(|(own, _)| own.begin_ms < own.end_ms && own.end_ms <= begin_ms);
        let last = before.max_by_key(|(own, other)| (own.end_ms, *other));
        last.filter(|(own, _)| self.begins_at(plan, place, own.end_ms)).map(|(_, other)| other)
    }
}

fn laid(plan: &Plan, place: usize) -> Option<&Laid> {
    plan.get(place)?.as_ref()
}
