//! How sure the ready date is: parcels and hands-on times vary, the plan is lived through many times in the same order
//! of jobs, and the date is told that is kept in half of the runs and in nine of ten.
//!
//! Method: Monte Carlo over triangular spreads, the dice of a fixed seed, so that the same bike gives the same answer.
//! All that meets at a job is waited for; that is why the sum of likely days is too early (merge bias).

use std::collections::BTreeMap;

use layshaft_wire::wire;

use super::Moment;
use super::calendar::{Day, MINUTE_MS};
use super::lay::{Ground, Plan, by_begin};
use super::needs::{MORNING_MINUTE, Needs, Task, missing};
use super::project::Dice;
use crate::bike::{Bike, Delivery};

/// Runs through the plan: a compromise of time and steadiness; how steady the date in nine of ten is was not measured.
const RUNS: usize = 1_000;
/// Hands-on time is drawn to the quarter of an hour.
const GRAIN_MS: i64 = 15 * MINUTE_MS;

/// How sure the ready date is.
#[wire]
pub struct Odds {
    /// Ready by then in half of the runs, milliseconds since 1970 (UTC).
    pub likely_ms: Option<i64>,
    /// Ready by then in nine of ten runs.
    pub safe_ms: Option<i64>,
    /// Runs through the plan.
    pub runs: u32,
}

/// The value that a triangular spread stays below with a share of `q`, 0 to 1.
///
/// ```text
/// c = (m − a)/(b − a);  q < c: x = a + √(q (b − a)(m − a));  else x = b − √((1 − q)(b − a)(b − m))
/// ```
///
/// a least, m likeliest, b most, in any unit. Source: inverse of the distribution; checked against `scipy.stats.triang`
/// (standing: computed).
///
/// ```
/// use layshaft_core::plan::triangular_quantile;
/// assert!((triangular_quantile(2.0, 5.0, 14.0, 0.5) - 6.65153).abs() < 1e-5);
/// assert!((triangular_quantile(2.0, 5.0, 14.0, 0.8) - 9.35242).abs() < 1e-5);
/// assert_eq!(triangular_quantile(3.0, 3.0, 3.0, 0.9), 3.0);
/// ```
pub fn triangular_quantile(least: f64, likeliest: f64, most: f64, q: f64) -> f64 {
    let width = most - least;
    if width <= 0.0 {
        return likeliest;
    }
    if q < (likeliest - least) / width {
        least + (q * width * (likeliest - least)).sqrt()
    } else {
        most - ((1.0 - q) * width * (most - likeliest)).sqrt()
    }
}

/// How sure the date is; none where nothing of the plan varies or there is no plan.
pub(crate) fn odds(bike: &Bike, moment: &Moment, needs: &Needs, ground: &Ground, plan: &Plan) -> Option<Odds> {
    let varies = |task: &Task| {
        task.job.least_minutes.is_some() || task.job.most_minutes.is_some() || !deliveries(bike, task).is_empty()
    };
    if !needs.tasks.iter().any(varies) || !needs.stuck.is_empty() || plan.iter().any(Option::is_none) {
        return None;
    }
    let order = by_begin(plan);
    let mut dice = Dice::of(1);
    let mut tasks = needs.tasks.clone();
    let mut ends: Vec<i64> = Vec::with_capacity(RUNS);
    for _ in 0..RUNS {
        let mut arrivals: BTreeMap<&str, i64> = BTreeMap::new();
        for (task, usual) in tasks.iter_mut().zip(&needs.tasks) {
            task.work_ms = drawn_work_ms(usual, &mut dice);
            task.not_before_ms = usual.fixed_ms;
            for (mark, delivery) in deliveries(bike, usual) {
                let arrives = *arrivals.entry(mark).or_insert_with(|| drawn_arrival_ms(delivery, moment, &mut dice));
                task.not_before_ms = task.not_before_ms.max(arrives);
            }
        }
        let run = Ground { tasks: &tasks, ..*ground }.lay(&order);
        let over: Option<Vec<i64>> = run.iter().map(|laid| laid.as_ref()?.over_ms).collect();
        let ready = over.and_then(|over| over.into_iter().max()).max(needs.running_until_ms());
        ends.push(if run.iter().any(Option::is_none) { i64::MAX } else { ready.unwrap_or(i64::MAX) });
    }
    ends.sort_unstable();
    let at = |share: f64| ends.get((RUNS as f64 * share) as usize).copied().filter(|end| *end < i64::MAX);
    Some(Odds { likely_ms: at(0.5), safe_ms: at(0.9), runs: RUNS as u32 })
}

/// The missing parts of a task whose delivery varies.
fn deliveries<'a>(bike: &'a Bike, task: &Task) -> Vec<(&'a str, &'a Delivery)> {
    let parts = task.job.parts.iter().filter_map(|mark| bike.parts.get_key_value(mark));
    let open = parts.filter(|(_, part)| missing(part));
    open.filter_map(|(mark, part)| Some((mark.as_str(), part.delivery.as_ref()?))).collect()
}

/// The work left of a task with its spread, in the proportion in which it is left.
fn drawn_work_ms(task: &Task, dice: &mut Dice) -> i64 {
    let (job, usual) = (task.job, task.job.hands_on_minutes);
    if task.work_ms == 0 || (job.least_minutes.is_none() && job.most_minutes.is_none()) || usual <= 0.0 {
        return task.work_ms;
    }
    let (least, most) = (job.least_minutes.unwrap_or(usual).min(usual), job.most_minutes.unwrap_or(usual).max(usual));
    let share = triangular_quantile(least, usual, most, dice.roll()) / usual;
    let drawn = task.work_ms as f64 * share / GRAIN_MS as f64;
    (drawn.round() as i64).max(1) * GRAIN_MS
}

/// The morning on which a parcel comes; tomorrow's at the earliest, as it is not here today.
fn drawn_arrival_ms(delivery: &Delivery, moment: &Moment, dice: &mut Dice) -> i64 {
    let today = moment.zone.day_at(moment.at_ms());
    let ordered = delivery.ordered.as_deref().and_then(Day::read).unwrap_or(today);
    let days = triangular_quantile(delivery.least_days, delivery.likely_days, delivery.most_days, dice.roll());
    let day = ordered.plus(days.round() as i64).max(today.plus(1));
    moment.zone.instant_of(day, MORNING_MINUTE)
}

#[cfg(test)]
mod tests {
    use super::super::calendar::DAY_MS;
    use super::super::example::{bike, job, needing, part, tuesday_noon, waiting};
    use super::super::schedule;
    use super::*;
    use crate::bike::{Job, Part, PartState};

    fn odds_of(bike: &Bike) -> Option<Odds> {
        schedule(bike, &tuesday_noon()).odds
    }

    #[test]
    fn where_nothing_varies_there_are_no_odds() {
        assert_eq!(odds_of(&bike(vec![job("tyre", 1.0, &[])])), None);
    }

    #[test]
    fn a_parcel_that_varies_makes_the_safe_date_later_than_the_likely_one_by_its_quantiles() {
        let mut with = bike(vec![waiting(needing(job("seals", 0.25, &[]), &["kit"]), "sets", 1.0)]);
        let delivery = Delivery { ordered: None, least_days: 2.0, likely_days: 5.0, most_days: 14.0 };
        with.parts.insert("kit".to_owned(), Part { delivery: Some(delivery), ..part("Kit", PartState::Ordered, None) });
        // Bench time every day, so that only the parcel counts.
        with.bench_time.spans =
            (1..=7).map(|weekday| super::super::Span { weekday, from_minute: 540, to_minute: 600 }).collect();
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
        let spread = |mark: &str, made: &mut Bike| {
            let delivery = Delivery { ordered: None, least_days: 2.0, likely_days: 5.0, most_days: 14.0 };
            let part = Part { delivery: Some(delivery), ..part(mark, PartState::Ordered, None) };
            made.parts.insert(mark.to_owned(), part);
        };
        let mut one = bike(vec![needing(job("seals", 0.25, &[]), &["kit"])]);
        spread("kit", &mut one);
        let mut two = bike(vec![needing(job("seals", 0.25, &[]), &["kit", "disc"])]);
        spread("kit", &mut two);
        spread("disc", &mut two);
        assert!(odds_of(&two).unwrap().likely_ms > odds_of(&one).unwrap().likely_ms);
    }

    #[test]
    fn work_that_may_take_longer_moves_the_safe_date() {
        let long = Job { most_minutes: Some(1_200.0), ..job("engine", 2.0, &[]) };
        let odds = odds_of(&bike(vec![long])).unwrap();
        assert!(odds.safe_ms > odds.likely_ms);
    }
}
