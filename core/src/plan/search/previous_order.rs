//! The order in which the jobs stood in the plan before: a new plan keeps to it where another would not be ready earlier,
//! so that a new fact moves only what it has to.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::timetable::{Timetable, by_begin};
use crate::plan::tasks::Task;
use crate::record::Bike;

/// Jobs, by their ids, in the order in which they were planned, each with its place in the list at that time.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct PreviousOrder(Vec<(String, f64)>);

impl PreviousOrder {
    /// The order of a plan.
    pub(crate) fn of(tasks: &[Task], plan: &Timetable) -> PreviousOrder {
        let placed = by_begin(plan).into_iter().filter_map(|place| tasks.get(place));
        PreviousOrder(placed.map(|task| (task.id.to_owned(), task.job.rank)).collect())
    }

    /// How urgent each task is by the order before, new ones after all that stood in it; none where there was no order, or
    /// where the list has been put in another order since: what the mechanic says comes first.
    pub(crate) fn urgency(&self, bike: &Bike, tasks: &[Task]) -> Option<Vec<f64>> {
        let moved = |(id, rank): &(String, f64)| bike.jobs.get(id).is_some_and(|job| job.rank != *rank);
        if self.0.is_empty() || self.0.iter().any(moved) {
            return None;
        }
        let stood: BTreeMap<&str, usize> =
            self.0.iter().enumerate().map(|(place, (id, _))| (id.as_str(), place)).collect();
        let last = self.0.len();
        let place = |(listed, task): (usize, &Task)| stood.get(task.id).copied().unwrap_or(last + listed);
        Some(tasks.iter().enumerate().map(place).map(|place| -(place as f64)).collect())
    }
}

#[cfg(test)]
mod tests {
    use crate::plan::schedule::{Scheduled, schedule, schedule_keeping};
    use crate::plan::tests::example::*;
    use crate::record::{Bike, PartState};
    use crate::time::Moment;

    fn again(bike: &Bike, before: &Scheduled, moment: &Moment) -> Scheduled {
        schedule_keeping(bike, moment, &before.standing, false)
    }

    /// How many jobs that are not done begin at another time than before.
    fn moved(before: &Scheduled, after: &Scheduled) -> usize {
        let begin = |plan: &Scheduled, job: &str| row(plan, job).work.first().map(|span| span.from_ms);
        let open = after.rows.iter().filter(|row| !row.work.is_empty());
        open.filter(|row| begin(before, &row.job) != begin(after, &row.job)).count()
    }

    #[test]
    fn where_two_orders_are_ready_together_the_one_that_stood_is_kept() {
        // A parcel comes on Saturday, and on the way there the others fill the evenings.
        let mut jobs = vec![needing(job("seals", 2.0, &[]), &["kit"])];
        jobs.extend((0..8).map(|number| job(&format!("job {number}"), 0.5, &[])));
        let mut made = bike(jobs);
        made.parts.insert("kit".to_owned(), part("Kit", PartState::Ordered, Some("2026-03-28")));
        let first = schedule(&made, &tuesday_noon());
        // The first is done as planned, and the last one listed is begun out of turn.
        let ended_ms = work_ms(&first, "job 0").1;
        let finished = made.jobs.remove("job 0").unwrap();
        made.jobs.insert("job 0".to_owned(), done(finished, ended_ms));
        let later = Moment { now_ms: ended_ms, ..tuesday_noon() };
        assert_eq!(moved(&first, &again(&made, &first, &later)), 0);
        // A parcel that comes a week later moves the job that needs it and no other.
        made.parts.get_mut("kit").unwrap().expected = Some("2026-04-04".to_owned());
        let late = again(&made, &first, &later);
        assert_eq!(moved(&first, &late), 1);
        assert_eq!(work_ms(&late, "seals").0, at("2026-04-04", 9 * 60));
        // It comes early after all: everything stands as it stood.
        made.parts.get_mut("kit").unwrap().expected = Some("2026-03-28".to_owned());
        assert_eq!(moved(&first, &again(&made, &late, &later)), 0);
    }

    #[test]
    fn an_order_that_stood_gives_way_to_one_that_is_ready_earlier_and_to_the_mechanic() {
        let jobs =
            vec![job("tyre", 2.0, &[]), waiting(job("liner", 1.0, &[]), "cures", 96.0), job("fit", 1.0, &["liner"])];
        let made = bike(jobs.clone());
        let best = schedule(&made, &tuesday_noon());
        // The plan of a bike without the cure has them as listed; with it, the liner goes first again.
        let mut plain = made.clone();
        plain.jobs.get_mut("liner").unwrap().wait = None;
        let listed = schedule(&plain, &tuesday_noon());
        assert_eq!(again(&made, &listed, &tuesday_noon()).ready_ms, best.ready_ms);
        // A list put in another order by hand rules, though the order before is as good.
        let mut turned = plain.clone();
        turned.jobs.get_mut("tyre").unwrap().rank = 9.0;
        assert_eq!(
            work_ms(&again(&turned, &listed, &tuesday_noon()), "tyre"),
            work_ms(&schedule(&turned, &tuesday_noon()), "tyre")
        );
        assert_ne!(work_ms(&again(&turned, &listed, &tuesday_noon()), "tyre"), work_ms(&listed, "tyre"));
    }
}
