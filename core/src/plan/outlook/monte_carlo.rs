//! How sure the ready date is: parcels and hands-on times vary, the plan is lived through many times, each time with the
//! first of its jobs that can begin, and the date is told that is kept in half of the runs and in nine of ten.
//!
//! Method: Monte Carlo over the spreads, with even draws of a fixed seed, so that the same bike gives the same answer. All
//! that meets at a job is waited for; that is why the sum of likely days is too early (merge bias). How often a job holds
//! the date is its criticality index (Van Slyke, “Monte Carlo methods and the PERT problem”, Operations Research 11, 1963,
//! standing: from memory).

use std::collections::{BTreeMap, BTreeSet};

use layshaft_wire::wire;

use super::dates::Dates;
use super::distribution::{Draws, Spread};
use super::drivers::{Holder, holders};
use crate::plan::explain::Ended;
use crate::plan::search::{Problem, Timetable, by_begin, misses};
use crate::plan::tasks::{MORNING_MINUTE, Needs, Task, missing};
use crate::record::{Bike, Delivery};
use crate::time::{Day, MINUTE_MS, Moment};

/// Runs through the plan. From seed to seed the date in nine of ten moves by less than half a day.
const RUNS: usize = 3_000;
/// Hands-on time is drawn to the quarter of an hour.
const GRAIN_MS: i64 = 15 * MINUTE_MS;
/// No parcel is waited for longer than this, days: two years.
const LONGEST_DAYS: f64 = 730.0;
/// The shares of the curve are this far apart.
const CURVE_STEP: f64 = 0.05;

/// How sure the ready date is.
#[wire]
pub struct Odds {
    /// Ready by then in half of the runs, milliseconds since 1970 (UTC). Between two days with runs that are ready, the
    /// dates move evenly with the share.
    pub likely_ms: Option<i64>,
    /// Ready by then in nine of ten runs.
    pub safe_ms: Option<i64>,
    /// Runs through the plan.
    pub runs: u32,
    /// The share of runs that are ready by an instant, from one in twenty up, in steps of one in twenty.
    pub curve: Vec<OddsPoint>,
    /// The jobs and parcels that hold the date most often, the worst first.
    pub holders: Vec<Holder>,
}

/// A point of the curve.
#[wire]
pub struct OddsPoint {
    /// Instant, milliseconds since 1970 (UTC).
    pub at_ms: i64,
    /// Share of the runs that are ready by then, 0 to 1.
    pub share: f64,
}

/// The odds, and how often each job holds the date.
#[derive(Debug)]
pub(crate) struct Chances<'a> {
    pub(crate) odds: Odds,
    /// Runs in which a job holds the date, by its id, 0 to 1.
    pub(crate) critical: BTreeMap<&'a str, f64>,
}

/// How sure the date is; none where nothing of the plan varies or there is no plan.
pub(crate) fn chances<'a>(
    bike: &'a Bike,
    moment: &Moment,
    needs: &Needs<'a>,
    problem: &Problem,
    plan: &Timetable,
) -> Option<Chances<'a>> {
    if !needs.stuck.is_empty() || plan.iter().any(Option::is_none) {
        return None;
    }
    let lived = Lived::through(bike, moment, needs, problem, plan, RUNS, 1)?;
    let dates = Dates::of(&lived.ends, &moment.zone);
    let steps = (1..(1.0 / CURVE_STEP).round() as u32).map(|step| f64::from(step) * CURVE_STEP);
    let shares = |counted: &BTreeMap<&'a str, u32>| -> BTreeMap<&'a str, f64> {
        counted.iter().map(|(id, times)| (*id, f64::from(*times) / RUNS as f64)).collect()
    };
    let critical = shares(&lived.jobs);
    let odds = Odds {
        likely_ms: dates.at(0.5),
        safe_ms: dates.at(0.9),
        runs: RUNS as u32,
        curve: steps.filter_map(|share| Some(OddsPoint { at_ms: dates.at(share)?, share })).collect(),
        holders: holders(bike, &critical, &shares(&lived.parcels)),
    };
    Some(Chances { odds, critical })
}

/// What came of living through the plan.
struct Lived<'a> {
    /// When each run is ready; none where it never is.
    ends: Vec<Option<i64>>,
    /// In how many runs a job holds the date.
    jobs: BTreeMap<&'a str, u32>,
    /// In how many runs a parcel does.
    parcels: BTreeMap<&'a str, u32>,
}

impl<'a> Lived<'a> {
    /// Lives through the plan; none where nothing varies.
    fn through(
        bike: &'a Bike,
        moment: &Moment,
        needs: &Needs<'a>,
        problem: &Problem,
        plan: &Timetable,
        runs: usize,
        seed: u64,
    ) -> Option<Lived<'a>> {
        let works: Vec<Option<Spread>> = needs.tasks.iter().map(work_spread).collect();
        let waited: Vec<Vec<(&str, &Delivery)>> = needs.tasks.iter().map(|task| deliveries(bike, task)).collect();
        let parcels: BTreeMap<&str, &Delivery> = waited.iter().flatten().copied().collect();
        if parcels.is_empty() && works.iter().all(Option::is_none) {
            return None;
        }
        let draws = Draws::of(works.len() + parcels.len(), runs, seed);
        let order = by_begin(plan);
        let mut tasks = needs.tasks.clone();
        let mut lived = Lived { ends: Vec::with_capacity(runs), jobs: BTreeMap::new(), parcels: BTreeMap::new() };
        for run in 0..runs {
            let drawn = parcels
                .iter()
                .enumerate()
                .map(|(at, (id, delivery))| (*id, arrival_ms(delivery, moment, draws.share(works.len() + at, run))));
            let arrivals: BTreeMap<&str, i64> = drawn.collect();
            for (place, (task, usual)) in tasks.iter_mut().zip(&needs.tasks).enumerate() {
                let spread = works.get(place).copied().flatten();
                task.work_ms =
                    spread.map_or(usual.work_ms, |spread| work_ms(usual, spread.quantile(draws.share(place, run))));
                let comes = waited.get(place).into_iter().flatten().filter_map(|(id, _)| arrivals.get(id));
                task.not_before_ms = comes.copied().fold(usual.fixed_ms, i64::max);
            }
            let problem = Problem { tasks: &tasks, ..*problem };
            let plan = problem.simulated_run(&order);
            let ready_ms = ready_ms(&problem, &plan, needs);
            lived.ends.push(ready_ms);
            let holding = holding(&problem, &plan, ready_ms);
            let mut parcels: BTreeSet<&str> = BTreeSet::new();
            for place in holding {
                let Some(task) = needs.tasks.get(place) else { continue };
                *lived.jobs.entry(task.id).or_default() += 1;
                let late = waited.get(place).into_iter().flatten().map(|(id, _)| *id);
                parcels
                    .extend(late.filter(|id| arrivals.get(id).is_some_and(|at| problem.begins_at(&plan, place, *at))));
            }
            parcels.into_iter().for_each(|id| *lived.parcels.entry(id).or_default() += 1);
        }
        Some(lived)
    }
}

/// When a run is ready; none where a task has no place in it, or misses its time limit.
fn ready_ms(problem: &Problem, plan: &Timetable, needs: &Needs) -> Option<i64> {
    if problem.tasks.iter().zip(plan).any(|(task, placed)| misses(task, placed.as_ref())) {
        return None;
    }
    let over: Option<Vec<i64>> = plan.iter().map(|placed| placed.as_ref()?.over_ms).collect();
    Some(over?.into_iter().max()?.max(needs.running_until_ms().unwrap_or(i64::MIN)))
}

/// The tasks that hold the date: those that end it, and back from each all that it begins right after.
fn holding(problem: &Problem, plan: &Timetable, ready_ms: Option<i64>) -> Vec<usize> {
    let ended = Ended::of(plan);
    let over_ms = |place: usize| plan.get(place).and_then(Option::as_ref).and_then(|placed| placed.over_ms);
    let mut open: Vec<usize> =
        (0..plan.len()).filter(|place| ready_ms.is_some() && over_ms(*place) == ready_ms).collect();
    let mut seen = vec![false; plan.len()];
    let mut held = Vec::new();
    while let Some(place) = open.pop() {
        if seen.get_mut(place).is_none_or(|seen| std::mem::replace(seen, true)) {
            continue;
        }
        held.push(place);
        let after = problem.tasks.get(place).map(|task| task.after.as_slice()).unwrap_or_default();
        let needs =
            after.iter().copied().filter(|need| over_ms(*need).is_some_and(|at| problem.begins_at(plan, place, at)));
        open.extend(needs);
        open.extend(problem.done_just_before(plan, &ended, place));
        let left = problem.spot_left_by(place, plan).filter(|(left_ms, _)| problem.begins_at(plan, place, *left_ms));
        open.extend(left.map(|(_, other)| other));
    }
    held
}

/// The missing parts of a task whose delivery varies.
fn deliveries<'a>(bike: &'a Bike, task: &Task) -> Vec<(&'a str, &'a Delivery)> {
    let parts = task.job.parts.iter().filter_map(|id| bike.parts.get_key_value(id));
    let open = parts.filter(|(_, part)| missing(part));
    open.filter_map(|(id, part)| Some((id.as_str(), part.delivery.as_ref()?))).collect()
}

/// How the hands-on time of a task is spread, minutes; none where it is not.
fn work_spread(task: &Task) -> Option<Spread> {
    let (job, usual) = (task.job, task.job.hands_on_minutes);
    if task.work_ms == 0 || (job.least_minutes.is_none() && job.most_minutes.is_none()) || usual <= 0.0 {
        return None;
    }
    let (least, most) = (job.least_minutes.unwrap_or(usual).min(usual), job.most_minutes.unwrap_or(usual).max(usual));
    Some(Spread::Triangular { least, likely: usual, most })
}

/// The work left of a task whose whole took so many minutes, in the proportion in which it is left.
fn work_ms(task: &Task, minutes: f64) -> i64 {
    let drawn = task.work_ms as f64 * minutes / task.job.hands_on_minutes / GRAIN_MS as f64;
    (drawn.round() as i64).max(1) * GRAIN_MS
}

/// The morning on which a parcel comes.
fn arrival_ms(delivery: &Delivery, moment: &Moment, share: f64) -> i64 {
    moment.zone.instant_of(arrival_day(delivery, moment, share), MORNING_MINUTE)
}

/// The day on which a parcel comes; tomorrow at the earliest, as it is not here today.
pub(super) fn arrival_day(delivery: &Delivery, moment: &Moment, share: f64) -> Day {
    let today = moment.zone.day_at(moment.at_ms());
    let ordered = delivery.ordered.as_deref().and_then(Day::read).unwrap_or(today);
    let days = delivery.spread().quantile(share).clamp(delivery.least_days, LONGEST_DAYS);
    ordered.plus(days.round() as i64).max(today.plus(1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::hours::TimeAxes;
    use crate::plan::outlook::drivers::HolderKind;
    use crate::plan::schedule::{Scheduled, schedule_keeping};
    use crate::plan::search::PreviousOrder;
    use crate::plan::tasks::Clockwork;
    use crate::plan::tests::example::{bike, job, needing, part, tuesday_noon, waiting};
    use crate::record::{Job, Part, PartState, Span};
    use crate::time::DAY_MS;

    fn every_day() -> Vec<Span> {
        (1..=7).map(|weekday| Span { weekday, from_minute: 540, to_minute: 600 }).collect()
    }

    fn odds_of(bike: &Bike) -> Option<Odds> {
        schedule_with_odds(bike, &tuesday_noon()).odds
    }

    fn from_2_to_14_days() -> Delivery {
        Delivery { least_days: 2.0, likely_days: 5.0, most_days: 14.0, ..Delivery::default() }
    }

    fn schedule_with_odds(bike: &Bike, moment: &Moment) -> Scheduled {
        schedule_keeping(bike, moment, &PreviousOrder::default(), true)
    }

    #[test]
    fn where_nothing_varies_there_are_no_odds() {
        assert_eq!(odds_of(&bike(vec![job("tyre", 1.0, &[])])), None);
    }

    #[test]
    fn a_parcel_that_varies_makes_the_safe_date_later_than_the_likely_one_by_its_quantiles() {
        let mut with = bike(vec![waiting(needing(job("seals", 0.25, &[]), &["kit"]), "sets", 1.0)]);
        let delivery = from_2_to_14_days();
        with.parts.insert("kit".to_owned(), Part { delivery: Some(delivery), ..part("Kit", PartState::Ordered, None) });
        // Bench time every day, so that only the parcel counts.
        with.bench_time.spans = every_day();
        let odds = odds_of(&with).unwrap();
        let (likely, safe) = (odds.likely_ms.unwrap(), odds.safe_ms.unwrap());
        let days = |ms: i64| (ms - tuesday_noon().now_ms) as f64 / DAY_MS as f64;
        // Quantiles of the triangular spread at 0.5 and 0.9, to the day (6.65 and 10.71).
        assert!((days(likely) - 6.65).abs() < 1.0, "{}", days(likely));
        assert!((days(safe) - 10.71).abs() < 1.0, "{}", days(safe));
        assert_eq!(odds_of(&with), Some(odds));
    }

    #[test]
    fn the_later_of_two_parcels_is_later_than_either_would_be() {
        let spread = |id: &str, made: &mut Bike| {
            let delivery = from_2_to_14_days();
            let part = Part { delivery: Some(delivery), ..part(id, PartState::Ordered, None) };
            made.parts.insert(id.to_owned(), part);
        };
        let mut one = bike(vec![needing(job("seals", 0.25, &[]), &["kit"])]);
        spread("kit", &mut one);
        let mut two = bike(vec![needing(job("seals", 0.25, &[]), &["kit", "disc"])]);
        spread("kit", &mut two);
        spread("disc", &mut two);
        assert!(odds_of(&two).unwrap().likely_ms > odds_of(&one).unwrap().likely_ms);
    }

    #[test]
    fn a_parcel_with_a_long_tail_is_kept_by_its_worst_day_in_nine_of_ten() {
        let mut with = bike(vec![needing(job("seals", 0.25, &[]), &["kit"])]);
        let delivery = Delivery { long_tail: Some(true), ..from_2_to_14_days() };
        with.parts.insert("kit".to_owned(), Part { delivery: Some(delivery), ..part("Kit", PartState::Ordered, None) });
        with.bench_time.spans = every_day();
        let odds = odds_of(&with).unwrap();
        let days = |ms: i64| (ms - tuesday_noon().now_ms) as f64 / DAY_MS as f64;
        assert!((days(odds.likely_ms.unwrap()) - 5.0).abs() < 1.0 && (days(odds.safe_ms.unwrap()) - 14.0).abs() < 1.0);
        assert!(days(odds.curve.last().unwrap().at_ms) > 15.0, "one in twenty is far later");
    }

    /// Two parcels for two jobs, unlike in length: the shares are those of the later of the two.
    #[test]
    fn what_holds_the_date_more_often_has_the_greater_share() {
        let mut with =
            bike(vec![needing(job("seals", 0.25, &[]), &["kit"]), needing(job("cable", 0.25, &[]), &["cable"])]);
        for (id, likely_days) in [("kit", 9.0), ("cable", 3.0)] {
            let delivery = Delivery { likely_days, ..from_2_to_14_days() };
            with.parts.insert(id.to_owned(), Part { delivery: Some(delivery), ..part(id, PartState::Ordered, None) });
        }
        with.bench_time.spans = every_day();
        let plan = schedule_with_odds(&with, &tuesday_noon());
        let share = |id: &str| plan.rows.iter().find(|row| row.job == id).and_then(|row| row.critical_share).unwrap();
        // The greater of triangular 2, 9, 14 and triangular 2, 3, 14, by the day: first or level in 0.75 of 400,000 plain draws.
        assert!(share("seals") > 0.6 && share("cable") < 0.45, "{} {}", share("seals"), share("cable"));
        assert!(share("seals") + share("cable") >= 1.0, "one of them always holds it");
        let holders = plan.odds.unwrap().holders;
        assert!(holders.is_sorted_by(|one, other| one.share >= other.share) && holders.len() == 4);
        let parcels: Vec<&Holder> = holders.iter().filter(|each| each.kind == HolderKind::Parcel).collect();
        assert_eq!(parcels.iter().map(|each| each.id.as_str()).collect::<Vec<_>>(), ["kit", "cable"]);
        assert!((0.6..=share("seals")).contains(&parcels[0].share), "{}", parcels[0].share);
    }

    #[test]
    fn the_curve_rises_and_meets_both_dates() {
        let mut with = bike(vec![
            needing(job("seals", 2.0, &[]), &["kit"]),
            Job { most_minutes: Some(600.0), ..job("engine", 3.0, &[]) },
        ]);
        let part = Part { delivery: Some(from_2_to_14_days()), ..part("Kit", PartState::Ordered, None) };
        with.parts.insert("kit".to_owned(), part);
        let odds = odds_of(&with).unwrap();
        assert_eq!(odds.curve.len(), 19);
        assert!(odds.curve.windows(2).all(|two| two[0].at_ms <= two[1].at_ms && two[0].share < two[1].share));
        let at =
            |share: f64| odds.curve.iter().find(|point| (point.share - share).abs() < 1e-9).map(|point| point.at_ms);
        assert_eq!((at(0.5), at(0.9)), (odds.likely_ms, odds.safe_ms));
    }

    /// The safe date of a bike with two parcels and a cure, by many seeds, on some bench time; how far apart, days.
    fn safe_dates_apart(spans: Vec<Span>) -> f64 {
        let mut with = bike(vec![
            Job { least_minutes: Some(60.0), most_minutes: Some(600.0), ..job("engine", 3.0, &[]) },
            Job {
                most_minutes: Some(480.0),
                ..waiting(needing(job("tank", 2.0, &[]), &["liner"]), "liner cures", 96.0)
            },
            needing(job("seals", 2.0, &["engine"]), &["kit"]),
            job("ride", 1.0, &["tank", "seals"]),
        ]);
        for (id, long_tail) in [("kit", None), ("liner", Some(true))] {
            let delivery = Delivery { long_tail, ..from_2_to_14_days() };
            with.parts.insert(id.to_owned(), Part { delivery: Some(delivery), ..part(id, PartState::Ordered, None) });
        }
        with.bench_time.spans = spans;
        let moment = tuesday_noon();
        let clockwork = Clockwork::of(&with, &moment);
        let needs = Needs::of(&with, &moment, &clockwork);
        let axes =
            TimeAxes::of(&with.bench_time, &moment, clockwork.climate(), needs.tasks.iter().map(|task| task.kind));
        let problem = Problem { tasks: &needs.tasks, axes: &axes, clockwork: &clockwork, until_ms: i64::MAX };
        let plan = problem.serial(&(0..needs.tasks.len()).collect::<Vec<_>>());
        let safe = |seed| {
            let lived = Lived::through(&with, &moment, &needs, &problem, &plan, RUNS, seed).unwrap();
            Dates::of(&lived.ends, &moment.zone).at(0.9).unwrap()
        };
        let dates: Vec<i64> = (1..=40).map(safe).collect();
        (dates.iter().max().unwrap() - dates.iter().min().unwrap()) as f64 / DAY_MS as f64
    }

    #[test]
    fn the_safe_date_moves_by_half_a_day_or_less_from_seed_to_seed() {
        let span = |weekday, from: u32, to: u32| Span { weekday, from_minute: from * 60, to_minute: to * 60 };
        let evenings = vec![span(2, 19, 21), span(4, 19, 21), span(6, 9, 16)];
        let weekends = vec![span(6, 9, 16), span(7, 9, 16)];
        for spans in [every_day(), evenings, weekends] {
            let apart = safe_dates_apart(spans.clone());
            assert!(apart <= 0.5, "{apart} days apart with {spans:?}");
        }
    }

    #[test]
    fn work_that_may_take_longer_moves_the_safe_date() {
        let long = Job { most_minutes: Some(1_200.0), ..job("engine", 2.0, &[]) };
        let odds = odds_of(&bike(vec![long])).unwrap();
        assert!(odds.safe_ms > odds.likely_ms);
    }
}
