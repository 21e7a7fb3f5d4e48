//! The best timetable of many orders: each is scheduled, and one that cannot become the best is given up.

use super::timetable::Score;
use super::{Problem, Timetable};
use crate::time::DAY_MS;

impl Problem<'_> {
    /// The plan of the order that is done with everything first; of equal ones, the earliest in the list. No order is
    /// asked for after one that is proven best.
    ///
    /// Orders that leave a time limit no chance are noticed late. They are first followed for a year beyond what no plan
    /// can be better than, and further only where none is over by then.
    pub(crate) fn best(&self, orders: impl Iterator<Item = Vec<usize>>) -> Timetable {
        let least = self.lower_bound();
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
    ) -> Option<(Score, Timetable)> {
        let mut best: Option<(Score, Timetable)> = None;
        for order in orders {
            // Where all is placed that can be, an order is given up as soon as it is later than the best so far.
            let whole = best.as_ref().filter(|(so_far, _)| so_far.is_whole(least));
            let until_ms = whole.and_then(|(so_far, _)| so_far.over_ms).unwrap_or(until_ms);
            let Some(plan) = self.serial_until(&order, until_ms) else { continue };
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
}
