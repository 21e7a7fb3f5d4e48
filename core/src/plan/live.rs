//! Living through a plan: whenever the mechanic is free, the first job in the order of the plan that can begin is done.
//! What is late, as a parcel may be, then holds up only what needs it.

use super::lay::{Ground, Laid, Plan, by_begin};
use super::spots::Freed;

impl Ground<'_> {
    /// The plan that comes of it; no task where that is not over in time, as in `lay`.
    pub(crate) fn live(&self, order: &[usize]) -> Plan {
        let mut plan: Plan = vec![None; self.tasks.len()];
        let mut left = order.to_vec();
        let (mut free_ms, mut freed) = (i64::MIN, Freed::always());
        while let Some((at, place)) = self.next(&left, &plan, free_ms, freed) {
            left.remove(at);
            let release_ms = self.release_after_spots_ms(place, &plan, freed);
            let laid = release_ms.and_then(|release_ms| self.set(place, release_ms, free_ms, i64::MIN));
            if laid.as_ref().is_some_and(|laid| laid.over_ms.unwrap_or(laid.end_ms) > self.until_ms) {
                return vec![None; self.tasks.len()];
            }
            if self.tasks.get(place).is_some_and(|task| task.work_ms > 0) {
                free_ms = laid.as_ref().map_or(free_ms, |laid: &Laid| laid.end_ms.max(free_ms));
            }
            if let Some((task, laid)) = self.tasks.get(place).zip(laid.as_ref()) {
                freed = freed.after(task.takes, laid.end_ms);
            }
            if let Some(own) = plan.get_mut(place) {
                *own = laid;
            }
        }
        // Time limits ask for more than taking what comes first: the same order is laid so that they are kept.
        if self.tasks.iter().any(|task| task.limits) { self.lay(&by_begin(&plan)) } else { plan }
    }

    /// The first task that can begin at once, else the one that can begin first, and where it stands in the list.
    fn next(&self, left: &[usize], plan: &Plan, free_ms: i64, freed: Freed) -> Option<(usize, usize)> {
        let now = self.benches.whole().place_of(free_ms);
        let mut first: Option<(i64, usize, usize)> = None;
        for (at, &place) in left.iter().enumerate() {
            let Some(release_ms) = self.release_after_spots_ms(place, plan, freed) else { continue };
            let Some(task) = self.tasks.get(place).filter(|task| !task.never) else { continue };
            let begin_ms =
                if task.work_ms == 0 { Some(release_ms) } else { self.begins(task, release_ms.max(free_ms)) };
            let Some(begin_ms) = begin_ms else { continue };
            if task.work_ms == 0 || self.benches.whole().place_of(begin_ms) == now {
                return Some((at, place));
            }
            if first.is_none_or(|(so_far_ms, ..)| begin_ms < so_far_ms) {
                first = Some((begin_ms, at, place));
            }
        }
        first.map(|(_, at, place)| (at, place))
    }
}
