//! Laws that every plan keeps, on bikes made up at random.

use proptest::prelude::*;

use super::checker::{broken, over_ms};
use super::example::{at, bike, job, part, row as find};
use crate::plan::explain::PlanRow;
use crate::plan::schedule::{schedule, schedule_keeping};
use crate::record::{
    Air, BenchTime, Bike, DayHours, Job, JobPlace, JobState, PartState, Span, SpotTaken, Step, Wait, WorkSpot,
};
use crate::time::{DAY_MS, MINUTE_MS, Moment, Zone, ZoneShift};

/// The clock of central Europe in 2026, with both changes.
fn central_europe() -> Zone {
    let shift = |from_ms, offset_minutes| ZoneShift { from_ms, offset_minutes };
    let shifts = vec![shift(0, 60), shift(1_774_746_000_000, 120), shift(1_792_890_000_000, 60)];
    Zone { name: "Europe/Berlin".to_owned(), shifts }
}

fn any_span() -> impl Strategy<Value = Span> {
    (1_u32..=7, 0_u32..92, 1_u32..20).prop_map(|(weekday, from, long)| Span {
        weekday,
        from_minute: from * 15,
        to_minute: ((from + long) * 15).min(1440),
    })
}

/// What a job asks of the hours in which it is done, and how long what follows may wait, hours.
#[derive(Clone, Debug)]
struct Hours {
    place: Option<JobPlace>,
    helper: Option<bool>,
    noisy: Option<bool>,
    splittable: Option<bool>,
    limit: Option<u32>,
    spots: Option<Vec<SpotTaken>>,
    air: Option<Air>,
}

fn any_spot() -> impl Strategy<Value = SpotTaken> {
    let spot = prop_oneof![Just(WorkSpot::Stand), Just(WorkSpot::SprayPlace), Just(WorkSpot::Oven)];
    (spot, prop::option::of(0_u32..60)).prop_map(|(spot, hours)| SpotTaken { spot, hours_after: hours.map(f64::from) })
}

/// Air as paint wants it, in a place that has 6 to 16 °C.
fn any_air() -> impl Strategy<Value = Air> {
    (prop::option::of(4_u32..16), prop::option::of(7_u32..17)).prop_map(|(lowest, more)| Air {
        lowest_celsius: lowest.map(f64::from),
        highest_celsius: more.map(|more| f64::from(lowest.unwrap_or(0) + more)),
        highest_humidity: None,
    })
}

fn any_hours() -> impl Strategy<Value = Hours> {
    let place = prop_oneof![Just(JobPlace::Bench), Just(JobPlace::Daylight), Just(JobPlace::SprayPlace)];
    (
        prop::option::weighted(0.2, place),
        prop::option::weighted(0.2, any::<bool>()),
        prop::option::weighted(0.2, any::<bool>()),
        prop::option::weighted(0.2, any::<bool>()),
        prop::option::weighted(0.25, 1_u32..100),
        prop::option::weighted(0.3, prop::collection::vec(any_spot(), 1..3)),
        prop::option::weighted(0.2, any_air()),
    )
        .prop_map(|(place, helper, noisy, splittable, limit, spots, air)| Hours {
            place,
            helper,
            noisy,
            splittable,
            limit,
            spots,
            air,
        })
}

/// A stretch of the week, a long one as a rule.
fn any_long_span() -> impl Strategy<Value = Span> {
    (1_u32..=7, 0_u32..60, 16_u32..60).prop_map(|(weekday, from, long)| Span {
        weekday,
        from_minute: from * 15,
        to_minute: ((from + long) * 15).min(1440),
    })
}

fn any_day_hours() -> impl Strategy<Value = DayHours> {
    (0_u32..96, 0_u32..96).prop_map(|(from, to)| DayHours { from_minute: from * 15, to_minute: to * 15 })
}

/// When a helper is there, when there is daylight, when it must be quiet.
fn any_hours_of_others() -> impl Strategy<Value = (Option<Vec<Span>>, Option<DayHours>, Option<DayHours>)> {
    (
        prop::option::weighted(0.8, prop::collection::vec(any_long_span(), 1..8)),
        prop::option::weighted(0.6, any_day_hours()),
        prop::option::weighted(0.6, any_day_hours()),
    )
}

/// A job that follows some of those before it in the list.
fn any_job(place: usize) -> impl Strategy<Value = Job> {
    let after = prop::collection::vec(0..place.max(1), 0..3);
    let state = prop_oneof![6 => Just(JobState::Open), 1 => Just(JobState::Begun), 1 => Just(JobState::Done)];
    (
        1_u32..600,
        after,
        prop::option::of(0_u32..200),
        state,
        0_u32..5,
        0_u32..10,
        prop::option::weighted(0.2, 0_usize..4),
        any_hours(),
    )
        .prop_map(move |(minutes, after, wait, state, steps_done, rank, part, hours)| Job {
            title: format!("job {place:02}"),
            hands_on_minutes: f64::from(minutes),
            place: hours.place,
            helper: hours.helper,
            noisy: hours.noisy,
            splittable: hours.splittable,
            spots: hours.spots,
            air: hours.air,
            after: after.iter().filter(|need| **need < place).map(|need| format!("job {need:02}")).collect(),
            wait: wait.map(|long| Wait {
                name: "dries".to_owned(),
                // A limit with a wait of days before it is no rare thing, but seldom kept.
                hours: Some(f64::from(if hours.limit.is_some() { long % 5 } else { long })),
                product: None,
                at_most_hours: hours.limit.map(|more| f64::from(long % 5 + more)),
            }),
            state,
            steps: vec![Step { text: "Step".to_owned(), ..Step::default() }; 4],
            steps_done,
            rank: f64::from(rank),
            done_ms: (state == JobState::Done).then(|| at("2026-03-01", 0) + i64::from(minutes) * 60 * MINUTE_MS),
            parts: part.into_iter().map(|part| format!("part {part}")).collect(),
            ..Job::default()
        })
}

pub(crate) fn any_bike(jobs: std::ops::Range<usize>) -> impl Strategy<Value = Bike> {
    let jobs = jobs.prop_flat_map(|count| (0..count).map(any_job).collect::<Vec<_>>());
    (jobs, prop::collection::vec(any_span(), 1..4), prop::collection::vec(0_i64..40, 4), any_hours_of_others())
        .prop_map(|(jobs, spans, days, (helper, daylight, quiet))| {
            let ranks: Vec<f64> = jobs.iter().map(|job| job.rank).collect();
            let mut made = bike(jobs);
            for (job, rank) in made.jobs.values_mut().zip(ranks) {
                job.rank = rank;
            }
            (made.place.night_celsius, made.place.day_celsius) = (Some(6.0), Some(16.0));
            made.bench_time = BenchTime { spans, helper, daylight, quiet, ..BenchTime::default() };
            for (number, day) in days.into_iter().enumerate() {
                let expected = Zone::default().day_at(at("2026-03-05", 0) + day * DAY_MS).text();
                let part = part(&format!("Part {number}"), PartState::Ordered, Some(expected.as_str()));
                made.parts.insert(format!("part {number}"), part);
            }
            made
        })
}

pub(crate) fn any_moment() -> impl Strategy<Value = Moment> {
    (0_i64..20 * 24 * 60)
        .prop_map(|minutes| Moment { now_ms: at("2026-03-10", 0) + minutes * MINUTE_MS, zone: central_europe() })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_job_never_begins_before_its_needs_and_work_lies_on_free_bench_time(bike in any_bike(1..14), moment in any_moment()) {
        let broken = broken(&bike, &moment, &schedule(&bike, &moment));
        prop_assert!(broken.is_empty(), "{broken:#?}");
    }

    #[test]
    fn adding_bench_time_never_makes_the_ready_date_later(bike in any_bike(1..14), more in any_span(), moment in any_moment()) {
        let before = schedule(&bike, &moment).ready_ms;
        let mut richer = bike.clone();
        richer.bench_time.spans.push(more);
        let after = schedule(&richer, &moment).ready_ms;
        prop_assert!(before.is_none() || after.is_some_and(|after| Some(after) <= before), "{before:?} {after:?}");
        let going_on = schedule_keeping(&richer, &moment, &schedule(&bike, &moment).standing, false).ready_ms;
        prop_assert!(going_on <= after || after.is_none(), "{going_on:?} {after:?}");
    }

    #[test]
    fn more_hours_of_a_helper_or_of_daylight_never_make_the_ready_date_later(
        bike in any_bike(1..14), helps in any_span(), earlier in 0_u32..20, later in 0_u32..20, moment in any_moment(),
    ) {
        let before = schedule(&bike, &moment).ready_ms;
        let mut richer = bike.clone();
        // Where nothing is said of a helper, one comes whenever wanted: hours that are set could only be fewer.
        richer.bench_time.helper.iter_mut().for_each(|hours| hours.push(helps.clone()));
        let light = bike.bench_time.daylight.clone().unwrap_or(DayHours { from_minute: 480, to_minute: 1080 });
        if light.from_minute < light.to_minute {
            richer.bench_time.daylight = Some(DayHours {
                from_minute: light.from_minute.saturating_sub(earlier * 15),
                to_minute: (light.to_minute + later * 15).min(1440),
            });
        }
        let after = schedule(&richer, &moment).ready_ms;
        prop_assert!(before.is_none() || after.is_some_and(|after| Some(after) <= before), "{before:?} {after:?}");
    }

    #[test]
    fn a_begun_job_that_can_go_on_is_not_moved_behind_others(bike in any_bike(1..14), moment in any_moment()) {
        let plan = schedule(&bike, &moment);
        // What became free during the day goes on first from the next midnight, so that no plan turns over in mid-day.
        let midnight_ms = moment.zone.instant_of(moment.zone.day_at(moment.now_ms), 0);
        let this_morning = schedule(&bike, &Moment { now_ms: midnight_ms, ..moment.clone() });
        let goes_on = |row: &&PlanRow| {
            let job = &bike.jobs[&row.job];
            let any_time = job.place.is_none_or(|place| place == JobPlace::Bench) && job.noisy != Some(true) && job.helper != Some(true);
            let any_time = any_time && job.spots.is_none() && job.air.is_none();
            let whole = job.splittable == Some(false) || job.wait.as_ref().is_some_and(|wait| wait.at_most_hours.is_some());
            let free = row.blocked_by.is_empty() && find(&this_morning, &row.job).blocked_by.is_empty();
            row.state == JobState::Begun && any_time && !whole && free
        };
        let begun: Vec<&PlanRow> = plan.rows.iter().filter(goes_on).collect();
        let ends = begun.iter().flat_map(|row| &row.work).map(|span| span.to_ms).max();
        for other in plan.rows.iter().filter(|row| row.state != JobState::Begun) {
            prop_assert!(ends.is_none() || other.work.first().is_none_or(|span| Some(span.from_ms) >= ends), "{other:?}");
        }
    }

    #[test]
    fn planning_again_changes_nothing(bike in any_bike(1..14), moment in any_moment()) {
        let plan = schedule(&bike, &moment);
        prop_assert_eq!(&plan, &schedule(&bike.clone(), &moment.clone()));
        // Nor does it when it goes on from the order in which it stood, unless that leads to an earlier date.
        let again = schedule_keeping(&bike, &moment, &plan.standing, false);
        let earlier = plan.ready_ms.is_none() || again.ready_ms < plan.ready_ms;
        prop_assert!(again.rows == plan.rows || earlier, "{:?} {:?}", again.rows, plan.rows);
    }

    #[test]
    fn looking_again_before_the_next_bench_time_of_the_day_changes_nothing(bike in any_bike(1..14), moment in any_moment()) {
        // A job whose steps are all ticked but that nobody called done waits from now on, whenever that is.
        let mut bike = bike;
        for job in bike.jobs.values_mut() {
            job.steps_done = job.steps_done.min(3);
        }
        let plan = schedule(&bike, &moment);
        let Some(first_ms) = plan.rows.iter().flat_map(|row| &row.work).map(|span| span.from_ms).min() else { return Ok(()) };
        let bench = bike.bench_time.between(&moment.zone, moment.now_ms, moment.now_ms + 60 * DAY_MS);
        let idle_until_ms = bench[0].from_ms.min(first_ms);
        let midnight_ms = moment.zone.instant_of(moment.zone.day_at(moment.now_ms).plus(1), 0);
        let later = Moment { now_ms: idle_until_ms.min(midnight_ms - 1).max(moment.now_ms), ..moment.clone() };
        // That a time limit passes meanwhile is a fact of its own.
        let passes = |job: &Job| {
            let limit = job.wait.as_ref().and_then(|wait| wait.at_most_hours);
            let closes_ms = job.done_ms.zip(limit).map(|(done_ms, hours)| done_ms + hours as i64 * 60 * MINUTE_MS);
            closes_ms.is_some_and(|closes_ms| (moment.now_ms..later.now_ms).contains(&closes_ms))
        };
        prop_assume!(!bike.jobs.values().any(passes));
        let again = schedule(&bike, &later);
        prop_assert_eq!(again.ready_ms, plan.ready_ms);
        for row in &plan.rows {
            prop_assert_eq!(&find(&again, &row.job).work, &row.work);
        }
    }

    #[test]
    fn needs_of_every_kind_never_break_the_plan(
        links in prop::collection::vec((0_usize..8, 0_usize..8), 0..24),
        moment in any_moment(),
    ) {
        let mut jobs: Vec<Job> = (0..8).map(|place| job(&format!("job {place:02}"), 1.0, &[])).collect();
        for (from, to) in links {
            jobs[from].after.push(format!("job {to:02}"));
        }
        let bike = bike(jobs);
        let plan = schedule(&bike, &moment);
        let broken = broken(&bike, &moment, &plan);
        prop_assert!(broken.is_empty(), "{broken:#?}");
        prop_assert_eq!(plan.rows.len(), 8);
        let circles = plan.findings.iter().any(|finding| finding.code.as_str() == "plan.circle");
        prop_assert_eq!(circles, plan.ready_ms.is_none());
    }

    #[test]
    fn a_job_ended_a_little_later_within_its_slack_leaves_the_ready_date(bike in any_bike(2..9), moment in any_moment()) {
        let plan = schedule(&bike, &moment);
        let Some(ready_ms) = plan.ready_ms else { return Ok(()) };
        let planned = plan.rows.iter().filter(|row| row.state != JobState::Done);
        for row in planned {
            let slack = row.slack_hours.unwrap();
            prop_assert!(slack > -1e-9, "{row:?}");
            if let Some(over) = over_ms(row) {
                let wait_ms = row.wait_until_ms.map_or(0, |until| until - row.work.last().map_or(until, |span| span.to_ms));
                let last_ms = over + (slack * 3_600_000.0) as i64;
                prop_assert!(row.work.is_empty() || last_ms <= ready_ms + 1, "{row:?} {wait_ms}");
            }
        }
        let open = plan.rows.iter().any(|row| row.state != JobState::Done && row.minutes_left > 0.0);
        let running = plan.rows.iter().any(|row| row.state == JobState::Done && row.critical);
        prop_assert!(!open || running || plan.rows.iter().any(|row| row.critical), "something holds the date");
    }
}
