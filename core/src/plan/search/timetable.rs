//! A timetable of tasks, the problem that it solves, and how good it is.

use crate::plan::hours::TimeAxes;
use crate::plan::tasks::{Clockwork, Task};

/// Where a task lies.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Placement {
    /// Instant at which its work begins.
    pub(crate) begin_ms: i64,
    /// Instant at which its work ends.
    pub(crate) end_ms: i64,
    /// Instant at which its wait is over; none when that cannot be known.
    pub(crate) over_ms: Option<i64>,
}

/// Tasks on bench time, by their places in the list of tasks; none where one cannot be placed.
pub(crate) type Timetable = Vec<Option<Placement>>;

/// What scheduling needs to know.
#[derive(Clone, Copy)]
pub(crate) struct Problem<'a> {
    /// The tasks, each after all that it must follow.
    pub(crate) tasks: &'a [Task<'a>],
    /// The bench time of each kind of task.
    pub(crate) axes: &'a TimeAxes,
    /// The waits.
    pub(crate) clockwork: &'a Clockwork,
    /// A plan that is not over by then is of no interest.
    pub(crate) until_ms: i64,
}

/// Whether a task begins after the time limit that runs for it.
pub(crate) fn misses(task: &Task, placed: Option<&Placement>) -> bool {
    task.begin_by_ms.zip(placed).is_some_and(|(by_ms, placed)| placed.begin_ms > by_ms)
}

/// How good a plan is: less is better, the first first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Score {
    /// Tasks that are not placed.
    pub(crate) unplaced: usize,
    /// Tasks that begin after a time limit that runs already.
    pub(crate) missed: usize,
    /// When the last wait is over.
    pub(crate) over_ms: Option<i64>,
}

/// The task whose wait is over last.
pub(crate) fn last_over(plan: &Timetable) -> Option<usize> {
    let over = plan.iter().enumerate().filter_map(|(place, placed)| Some((placed.as_ref()?.over_ms?, place)));
    over.max().map(|(_, place)| place)
}

/// The placed tasks in the order in which they begin.
pub(crate) fn by_begin(plan: &Timetable) -> Vec<usize> {
    let mut places: Vec<usize> =
        (0..plan.len()).filter(|place| plan.get(*place).is_some_and(Option::is_some)).collect();
    places.sort_by_key(|place| {
        plan.get(*place).and_then(Option::as_ref).map(|placed| (placed.begin_ms, placed.end_ms, *place))
    });
    places
}

impl Problem<'_> {
    /// How good a plan is.
    pub(crate) fn score(&self, plan: &Timetable) -> Score {
        Score {
            unplaced: plan.iter().filter(|placed| placed.is_none()).count(),
            missed: self.tasks.iter().zip(plan).filter(|(task, placed)| misses(task, placed.as_ref())).count(),
            over_ms: plan.iter().flatten().filter_map(|placed| placed.over_ms).max(),
        }
    }
}

impl Score {
    /// Whether all is placed that can be, in time.
    pub(super) fn is_whole(self, least: Score) -> bool {
        self.unplaced <= least.unplaced && self.missed == 0
    }
}
