//! Resources: the spots that there is only one of, the bike stand, the spray place, the oven or heat lamp. A job takes its spots from
//! its beginning until its work is done, and so many hours longer: a tank hangs in the spray place until it is touch dry.
//! One that was begun and lies waiting for something leaves its spots to others until it goes on: a bike that stands on
//! its stand for the fork can have its rear wheel out too, and a waiting tank can be carried away.

use super::waits::hours_ms;
use crate::bounds;
use crate::record::{Job, JobPlace, JobState, WorkSpot};

/// The spots.
pub(crate) const SPOTS: [WorkSpot; 3] = [WorkSpot::Stand, WorkSpot::SprayPlace, WorkSpot::Oven];

/// For each spot how long it stays taken after the work, milliseconds; none where the job does not take it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Takes([Option<i64>; 3]);

/// When each spot is free again, milliseconds since 1970 (UTC).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Freed([i64; 3]);

impl Takes {
    /// What a job takes. One that is done in the spray place takes it, whether that is said or not.
    pub(crate) fn of(job: &Job) -> Takes {
        let sprays = job.place == Some(JobPlace::SprayPlace);
        Takes(SPOTS.map(|spot| {
            let said = job.spots.iter().flatten().filter(|taken| taken.spot == spot);
            let longest = said.map(|taken| taken.hours_after.and_then(|hours| bounds::SPOT_HOURS.check(hours).ok()));
            let longest = longest.map(|hours| hours_ms(hours.unwrap_or(0.0))).max();
            longest.or((sprays && spot == WorkSpot::SprayPlace).then_some(0))
        }))
    }

    /// Whether it takes none.
    pub(crate) fn nothing(self) -> bool {
        self == Takes::default()
    }

    /// How long after the work of this one another has to wait for the spots that both take; none where they share none.
    pub(crate) fn keeps_from(self, other: Takes) -> Option<i64> {
        let shared = self.0.iter().zip(other.0).filter(|(_, theirs)| theirs.is_some());
        shared.filter_map(|(own, _)| *own).max()
    }

    /// The spots that it takes, each with how long after the work.
    pub(crate) fn each(self) -> impl Iterator<Item = (WorkSpot, i64)> {
        SPOTS.into_iter().zip(self.0).filter_map(|(spot, after_ms)| Some((spot, after_ms?)))
    }
}

impl Freed {
    /// Nothing is taken.
    pub(crate) fn always() -> Freed {
        Freed([i64::MIN; 3])
    }

    /// When all that a job takes is free.
    pub(crate) fn for_all(self, takes: Takes) -> i64 {
        let needed = self.0.iter().zip(takes.0).filter(|(_, after)| after.is_some());
        needed.map(|(freed_ms, _)| *freed_ms).max().unwrap_or(i64::MIN)
    }

    /// After a job that ends at an instant.
    pub(crate) fn after(self, takes: Takes, end_ms: i64) -> Freed {
        let mut freed = self;
        for (own, after_ms) in freed.0.iter_mut().zip(takes.0) {
            *own = after_ms.map_or(*own, |after_ms| end_ms.saturating_add(after_ms).max(*own));
        }
        freed
    }
}

/// The spots that jobs which are done left taken: the spot, the job's title, until when. Those that are free again stay in
/// the list, so that the orders, which count from this morning, do not turn over when a spot becomes free.
pub(crate) fn left_taken<'a>(jobs: impl Iterator<Item = &'a Job>, now_ms: i64) -> Vec<(WorkSpot, &'a str, i64)> {
    let done = jobs.filter(|job| job.state == JobState::Done);
    let left = done.flat_map(|job| {
        let ended_ms = job.done_ms.unwrap_or(now_ms);
        Takes::of(job).each().map(move |(spot, after_ms)| (spot, job.title.as_str(), ended_ms.saturating_add(after_ms)))
    });
    left.collect()
}

#[cfg(test)]
mod tests {
    use crate::plan::schedule::schedule;
    use crate::plan::tests::example::*;
    use crate::record::{Job, JobPlace, JobState, SpotTaken, WorkSpot};
    use crate::time::Moment;

    fn taking(job: Job, spot: WorkSpot, hours_after: Option<f64>) -> Job {
        Job { spots: Some(vec![SpotTaken { spot, hours_after }]), ..job }
    }

    #[test]
    fn what_takes_a_spot_waits_until_the_one_before_has_left_it_and_others_do_not() {
        // The tank hangs in the oven for 72 hours after Tuesday 20:00, until Friday 20:00; the wheel comes on Saturday.
        let tank = taking(job("tank", 1.0, &[]), WorkSpot::Oven, Some(72.0));
        let wheel = taking(job("wheel", 1.0, &["tank"]), WorkSpot::Oven, None);
        let lamps = taking(job("lamps", 1.0, &[]), WorkSpot::Stand, Some(200.0));
        let plan = schedule(&bike(vec![tank, wheel, lamps]), &tuesday_noon());
        assert_eq!(work_ms(&plan, "tank"), (at("2026-03-24", 19 * 60), at("2026-03-24", 20 * 60)));
        assert_eq!(work_ms(&plan, "lamps").0, at("2026-03-24", 20 * 60));
        assert_eq!(work_ms(&plan, "wheel").0, at("2026-03-28", 9 * 60));
        assert!(
            plan.held_by.english().contains("tank: the oven or heat lamp is taken until Fri 27 Mar, 20:00"),
            "{}",
            plan.held_by
        );
        assert!(row(&plan, "tank").critical && !row(&plan, "lamps").critical);
    }

    #[test]
    fn the_order_is_chosen_by_who_keeps_the_spot_longest() {
        // Listed first, the long one would keep the other out for a week.
        let long = taking(job("long", 1.0, &[]), WorkSpot::SprayPlace, Some(168.0));
        let short = Job { place: Some(JobPlace::Bench), ..taking(job("short", 1.0, &[]), WorkSpot::SprayPlace, None) };
        let plan = schedule(&bike(vec![long, short]), &tuesday_noon());
        assert_eq!(work_ms(&plan, "short").0, at("2026-03-24", 19 * 60));
        assert_eq!(plan.ready_ms, Some(at("2026-03-24", 21 * 60)));
        assert_eq!(plan.bound_ms, plan.ready_ms);
    }

    #[test]
    fn a_spot_that_a_job_left_taken_is_waited_for_and_named() {
        let noon = tuesday_noon().now_ms;
        let wheel = done(taking(job("wheel", 1.0, &[]), WorkSpot::Oven, Some(24.0)), noon);
        let plan = schedule(&bike(vec![wheel, taking(job("tank", 1.0, &[]), WorkSpot::Oven, None)]), &tuesday_noon());
        assert_eq!(work_ms(&plan, "tank").0, at("2026-03-26", 19 * 60));
        assert_eq!(row(&plan, "tank").blocked_by, ["the oven or heat lamp, taken by “wheel”"]);
        assert!(
            plan.held_by.english().contains("wheel: the oven or heat lamp is taken until Wed 25 Mar, 12:00"),
            "{}",
            plan.held_by
        );
    }

    #[test]
    fn a_spot_that_becomes_free_before_the_bench_time_of_the_day_turns_nothing_over() {
        let tuesday = |hour: u32| Moment { now_ms: at("2026-03-24", hour * 60), ..tuesday_noon() };
        let stand = |job: Job, after| taking(job, WorkSpot::Stand, after);
        let mut jobs = vec![done(stand(job("wheel", 1.0, &[]), Some(48.0)), at("2026-03-22", 12 * 60))];
        jobs.push(Job { state: JobState::Begun, ..stand(job("fork", 6.0, &[]), None) });
        // Ahead of all others it would keep the liner from its cure.
        jobs.push(waiting(job("liner", 1.0, &[]), "cures", 96.0));
        jobs.extend((0..8).map(|number| job(&format!("job {number}"), 0.1, &["liner"])));
        let made = bike(jobs);
        let (before, after) = (schedule(&made, &tuesday(11)), schedule(&made, &tuesday(13)));
        assert_eq!(row(&before, "fork").blocked_by.len(), 1);
        assert!(row(&after, "fork").blocked_by.is_empty());
        assert!(before.rows.iter().zip(&after.rows).all(|(one, other)| one.work == other.work), "{before:?} {after:?}");
    }

    #[test]
    fn where_a_job_sprays_it_takes_the_spray_place_and_one_at_a_time_does() {
        let sprayed = |title: &str| Job { place: Some(JobPlace::SprayPlace), ..job(title, 1.0, &[]) };
        let first = Job {
            spots: Some(vec![SpotTaken { spot: WorkSpot::SprayPlace, hours_after: Some(4.0) }]),
            ..sprayed("first")
        };
        let second = Job { after: vec!["first".to_owned()], ..sprayed("second") };
        let plan = schedule(&bike(vec![first, second]), &tuesday_noon());
        // Saturday 9 to 10, four hours to dry there, then 14 to 15.
        assert_eq!(work_ms(&plan, "first").1, at("2026-03-28", 10 * 60));
        assert_eq!(work_ms(&plan, "second").0, at("2026-03-28", 14 * 60));
    }

    #[test]
    fn hours_out_of_range_are_refused_by_name() {
        let job = taking(job("tank", 1.0, &[]), WorkSpot::Oven, Some(-1.0));
        assert!(job.checked().unwrap_err().english().contains("Hours that a spot stays taken: −1 h"));
    }
}
