//! Who takes what there is only one of, and when, in a timetable.

use super::timetable::{Problem, Timetable};
use crate::plan::tasks::Takes;
use crate::record::WorkSpot;

impl Problem<'_> {
    fn takes(&self, place: usize) -> Takes {
        self.tasks.get(place).map_or(Takes::default(), |task| task.takes)
    }

    /// From when on a spot that a task would take between two instants is free of another; none where it is free.
    pub(crate) fn spot_taken_until(
        &self,
        place: usize,
        plan: &Timetable,
        (begin_ms, end_ms): (i64, i64),
    ) -> Option<i64> {
        let own = self.takes(place);
        if own.nothing() {
            return None;
        }
        let others = plan.iter().enumerate().filter(|(other, _)| *other != place);
        let clashes = others.filter_map(|(other, placed)| {
            let (placed, theirs) = (placed.as_ref()?, self.takes(other));
            let (after_ms, own_after_ms) = (theirs.keeps_from(own)?, own.keeps_from(theirs)?);
            let apart = placed.end_ms + after_ms <= begin_ms || end_ms + own_after_ms <= placed.begin_ms;
            (!apart).then_some(placed.end_ms + after_ms)
        });
        clashes.max()
    }

    /// The task that leaves a spot last before a task begins which takes the same, and when it leaves it.
    pub(crate) fn spot_left_by(&self, place: usize, plan: &Timetable) -> Option<(i64, usize)> {
        let own = self.takes(place);
        if own.nothing() {
            return None;
        }
        let begin_ms = plan.get(place)?.as_ref()?.begin_ms;
        let others = plan.iter().enumerate().filter(|(other, _)| *other != place);
        let left = others.filter_map(|(other, placed)| {
            let left_ms = placed.as_ref()?.end_ms + self.takes(other).keeps_from(own)?;
            (left_ms <= begin_ms).then_some((left_ms, other))
        });
        left.max()
    }

    /// The spot that keeps one task longest from another.
    pub(crate) fn spot_shared(&self, place: usize, before: usize) -> Option<WorkSpot> {
        let (own, theirs) = (self.takes(place), self.takes(before));
        let shared = theirs.each().filter(|(spot, _)| own.each().any(|(taken, _)| taken == *spot));
        shared.max_by_key(|(_, after_ms)| *after_ms).map(|(spot, _)| spot)
    }

    /// When a task must have ended so that those that take its spots after it can begin at instants that are given.
    pub(crate) fn spot_limit_ms(&self, place: usize, begins_ms: impl Fn(usize) -> Option<i64>) -> i64 {
        let own = self.takes(place);
        let others = (0..self.tasks.len()).filter(|other| *other != place && !own.nothing());
        let limits = others.filter_map(|other| Some(begins_ms(other)? - own.keeps_from(self.takes(other))?));
        limits.min().unwrap_or(i64::MAX)
    }
}
