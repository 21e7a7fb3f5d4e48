//! Lower bound: what no plan can be better than, whatever the order: it tells how far a plan can be from the best there is.
//!
//! ```text
//! alone  = every task as if it had the mechanic for itself
//! energy = the end of all the work of S on its bench time from the first release in S on, and the least tail in S
//! ```
//!
//! S runs over the tasks, or over those of one kind, whose release and whose tail reach a pair of thresholds; the tail of a
//! task is what must pass after its work. The second bound follows from counting. Time limits are left out, which can only
//! make it lower.

use super::timetable::{Problem, Score, Timetable};
use crate::plan::hours::HoursAsked;
use crate::plan::tasks::{Task, WaitRule};

impl Problem<'_> {
    /// A score that no plan can be better than.
    pub(crate) fn lower_bound(&self) -> Score {
        let mut alone: Timetable = Vec::with_capacity(self.tasks.len());
        for place in 0..self.tasks.len() {
            let placed = self.release_ms(place, &alone);
            alone.push(placed.and_then(|release_ms| self.set(place, release_ms, i64::MIN, i64::MIN)));
        }
        let least = Score { missed: 0, ..self.score(&alone) };
        if least.unplaced > 0 {
            return least;
        }
        Score { over_ms: least.over_ms.max(self.by_energy(&alone)), ..least }
    }

    /// The work counted on the bench time of each kind: of all tasks on the whole, of those of a kind on their own.
    fn by_energy(&self, alone: &Timetable) -> Option<i64> {
        let tails = tails(self.tasks);
        let mut work: Vec<Counted> = (self.tasks.iter().zip(alone).zip(&tails))
            .filter(|((task, _), _)| task.work_ms > 0)
            .filter_map(|((task, placed), tail_ms)| {
                let begin_ms = placed.as_ref()?.begin_ms;
                Some(Counted { tail_ms: *tail_ms, begin_ms, work_ms: task.work_ms, kind: task.kind })
            })
            .collect();
        work.sort_by_key(|counted| std::cmp::Reverse(counted.tail_ms));
        let mut kinds: Vec<HoursAsked> =
            work.iter().map(|counted| counted.kind).filter(|kind| !kind.asks_nothing()).collect();
        kinds.sort_unstable();
        kinds.dedup();
        let mut bound = self.energy(&work, HoursAsked::default());
        for kind in kinds {
            let of_kind: Vec<Counted> = work.iter().filter(|counted| counted.kind.asks(kind)).copied().collect();
            bound = bound.max(self.energy(&of_kind, kind));
        }
        bound
    }

    fn energy(&self, work: &[Counted], kind: HoursAsked) -> Option<i64> {
        let bench = self.axes.axis(kind);
        let mut releases: Vec<i64> = work.iter().map(|counted| counted.begin_ms).collect();
        releases.sort_unstable();
        releases.dedup();
        let mut bound = None;
        for release_ms in releases {
            let mut end = bench.place_of(release_ms);
            for counted in work.iter().filter(|counted| counted.begin_ms >= release_ms) {
                end += counted.work_ms;
                bound = bound.max(bench.end_ms(end).map(|end_ms| end_ms + counted.tail_ms));
            }
        }
        bound
    }
}

/// A task as the count sees it.
#[derive(Clone, Copy)]
struct Counted {
    tail_ms: i64,
    begin_ms: i64,
    work_ms: i64,
    kind: HoursAsked,
}

/// What must pass after the work of each task, milliseconds: its wait, and all that follows. A cure counts for nothing,
/// as it depends on the day.
fn tails(tasks: &[Task]) -> Vec<i64> {
    let mut following = vec![0_i64; tasks.len()];
    let mut tails = vec![0_i64; tasks.len()];
    for (place, task) in tasks.iter().enumerate().rev() {
        let wait_ms = if let WaitRule::Fixed(long_ms) = task.wait { long_ms } else { 0 };
        let tail_ms = wait_ms + following.get(place).copied().unwrap_or(0);
        if let Some(own) = tails.get_mut(place) {
            *own = tail_ms;
        }
        for need in &task.after {
            if let Some(longest) = following.get_mut(*need) {
                *longest = tail_ms.saturating_add(task.work_ms).max(*longest);
            }
        }
    }
    tails
}
