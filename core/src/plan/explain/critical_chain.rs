//! The critical chain, link by link: what a task of a plan begins right after: an instant that it waited for, or the work before it.

use crate::plan::search::{Placement, Problem, Timetable};

impl Problem<'_> {
    /// Whether a task begins as soon as it may that must not begin before an instant.
    pub(crate) fn begins_at(&self, plan: &Timetable, place: usize, instant_ms: i64) -> bool {
        let Some((task, placed)) = self.tasks.get(place).zip(placed(plan, place)) else { return false };
        if task.work_ms == 0 {
            return placed.begin_ms <= instant_ms;
        }
        let bench = self.axes.axis(task.kind);
        bench.place_of(instant_ms) == bench.place_of(placed.begin_ms)
    }

    /// The last task that the mechanic ends before this one begins, with no bench time of this one between.
    pub(crate) fn done_just_before(&self, plan: &Timetable, ended: &Ended, place: usize) -> Option<usize> {
        let (end_ms, before) = ended.last_by(placed(plan, place)?.begin_ms)?;
        self.begins_at(plan, place, end_ms).then_some(before)
    }
}

/// The work of a plan, in the order in which it ends.
pub(crate) struct Ended(Vec<(i64, usize)>);

impl Ended {
    pub(crate) fn of(plan: &Timetable) -> Ended {
        let placed = plan.iter().enumerate().filter_map(|(place, own)| Some((own.as_ref()?, place)));
        let work = placed.filter(|(own, _)| own.begin_ms < own.end_ms);
        let mut ended: Vec<(i64, usize)> = work.map(|(own, place)| (own.end_ms, place)).collect();
        ended.sort_unstable();
        Ended(ended)
    }

    /// The last that has ended by an instant.
    fn last_by(&self, instant_ms: i64) -> Option<(i64, usize)> {
        let ended = self.0.partition_point(|(end_ms, _)| *end_ms <= instant_ms);
        self.0.get(ended.checked_sub(1)?).copied()
    }
}

fn placed(plan: &Timetable, place: usize) -> Option<&Placement> {
    plan.get(place)?.as_ref()
}
