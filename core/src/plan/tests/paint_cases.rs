//! Paint jobs in several coats within the plan, each date reckoned by hand. The garage has 20 °C, at which the times of
//! the cans hold, so that hours on the can are hours on the clock.

use super::example::*;
use crate::plan::schedule::{Scheduled, schedule};
use crate::record::{Bike, Climate, Coat, Job, JobState, Layer, Process, ProcessStep, Product};
use crate::time::{HOUR_MS, Moment};

/// Touch dry after one hour, the next coat from 2 h to `until` hours, cured after 48 h.
fn paint(until: f64) -> Product {
    Product {
        name: "Any paint".to_owned(),
        touch_dry_hours: Some(1.0),
        recoat_from_hours: Some(2.0),
        recoat_to_hours: Some(until),
        full_cure_hours: Some(48.0),
        at_celsius: Some(20.0),
        ..Product::default()
    }
}

/// A tank in three coats within the job “paint” of one hour, which “fit” follows; so many coats are on, the first since
/// `on_ms`, each two hours after the one before.
fn tank(until: f64, coats: u32, on_ms: i64) -> Bike {
    let begun = Job { state: JobState::Begun, ..job("paint", 1.0, &[]) };
    let mut made = bike(vec![begun, job("fit", 1.0, &["paint"])]);
    (made.place.day_celsius, made.place.night_celsius) = (Some(20.0), Some(20.0));
    let step = |name: &str| ProcessStep {
        name: name.to_owned(),
        layer: Layer::Colour,
        product: Some(paint(until)),
        ..ProcessStep::default()
    };
    let steps = vec![step("First"), step("Second"), step("Third")];
    let process = Process { title: "Tank".to_owned(), job: Some("paint".to_owned()), steps, ..Process::default() };
    made.processes.insert("tank".to_owned(), process);
    for number in 0..coats {
        let applied_ms = on_ms + i64::from(number) * 2 * HOUR_MS;
        let ended_ms = (number + 1 < coats).then_some(applied_ms + 2 * HOUR_MS);
        let coat = Coat {
            title: "Tank".to_owned(),
            product: paint(until),
            applied_ms,
            ended_ms,
            job: Some("paint".to_owned()),
            process: Some("tank".to_owned()),
            step: Some(number),
            ..Coat::default()
        };
        made.coats.insert(format!("coat {number}"), coat);
    }
    made
}

fn plan(bike: &Bike) -> Scheduled {
    schedule(bike, &tuesday_noon())
}

fn near(found: Option<i64>, expected: i64) -> bool {
    found.is_some_and(|found| found.abs_diff(expected) < 60_000)
}

#[test]
fn the_job_goes_on_in_the_window_of_the_next_coat_and_what_follows_waits_for_the_last() {
    // The first coat since 11:00: the second from 13:00, with the bench at 19:00. The hour of work ends at 20:00, and the
    // third coat stands two hours after the second, at 21:00 by earliest; it is cured on Thursday at 21:00.
    let plan = plan(&tank(24.0, 1, at("2026-03-24", 11 * 60)));
    assert_eq!(work_ms(&plan, "paint"), (at("2026-03-24", 19 * 60), at("2026-03-24", 20 * 60)));
    assert!(near(row(&plan, "paint").wait_until_ms, at("2026-03-26", 21 * 60)), "{:?}", row(&plan, "paint"));
    assert_eq!(work_ms(&plan, "fit").0, at("2026-03-28", 9 * 60));
    assert_eq!(row(&plan, "paint").blocked_by, ["the coat below dries"]);
    assert!(near(row(&plan, "paint").begin_by_ms, at("2026-03-25", 11 * 60)));
    assert!(!codes(&plan).contains(&"plan.sand-first"));
}

#[test]
fn a_window_that_no_bench_time_reaches_is_given_up_for_sanding_and_there_is_still_a_date() {
    let plan = plan(&tank(4.0, 1, at("2026-03-24", 11 * 60)));
    assert!(codes(&plan).contains(&"plan.sand-first"), "{:?}", plan.findings);
    let text = &plan.findings.iter().find(|finding| finding.code.as_str() == "plan.sand-first").unwrap().text;
    assert!(text.english().contains("closes Tue 24 Mar, 15:00") && text.english().contains("adds 30 min"), "{text}");
    assert_eq!(work_ms(&plan, "paint"), (at("2026-03-24", 19 * 60), at("2026-03-24", 20 * 60 + 30)));
    assert!(plan.ready_ms.is_some());
}

#[test]
fn a_window_that_closed_is_sanded_until_it_is_done() {
    let mut bike = tank(24.0, 2, at("2026-03-22", 11 * 60));
    let closed = plan(&bike);
    assert!(codes(&closed).contains(&"plan.sand-first"));
    assert_eq!(work_ms(&closed, "paint").1, at("2026-03-24", 20 * 60 + 30));
    // Only one coat is left: it goes on at the end of the work.
    assert!(near(row(&closed, "paint").wait_until_ms, at("2026-03-26", 20 * 60 + 30)));
    bike.processes.get_mut("tank").unwrap().sanded_ms = Some(tuesday_noon().now_ms - HOUR_MS);
    let sanded = plan(&bike);
    assert!(!codes(&sanded).contains(&"plan.sand-first"));
    assert_eq!(work_ms(&sanded, "paint").1, at("2026-03-24", 20 * 60));
}

#[test]
fn with_all_coats_on_the_job_is_over_when_they_are_cured_whenever_it_is_ticked() {
    let bike = tank(24.0, 3, at("2026-03-24", 6 * 60));
    let all_on = plan(&bike);
    // The third since 10:00 on Tuesday.
    assert!(near(row(&all_on, "paint").wait_until_ms, at("2026-03-26", 10 * 60)));
    assert_eq!(work_ms(&all_on, "fit").0, at("2026-03-26", 19 * 60));
    // The tank is cured on Thursday, and all is done by Saturday.
    let later = Moment { now_ms: at("2026-03-26", 12 * 60), ..tuesday_noon() };
    assert_eq!(row(&schedule(&bike, &later), "paint").wait_until_ms, None);
}

#[test]
fn a_job_that_is_called_done_before_its_coats_are_on_still_holds_what_follows() {
    let mut bike = tank(24.0, 1, at("2026-03-24", 11 * 60));
    let paint = bike.jobs.remove("paint").unwrap();
    bike.jobs.insert("paint".to_owned(), done(paint, tuesday_noon().now_ms));
    let plan = plan(&bike);
    // Second at 13:00, third at 15:00, cured on Thursday at 15:00.
    assert!(near(row(&plan, "paint").wait_until_ms, at("2026-03-26", 15 * 60)));
    assert_eq!(work_ms(&plan, "fit").0, at("2026-03-26", 19 * 60));
    assert!(row(&plan, "fit").blocked_by[0].english().starts_with("paint: "), "{:?}", row(&plan, "fit").blocked_by);
}

#[test]
fn a_paint_job_that_belongs_to_no_job_holds_the_ready_date() {
    let mut bike = tank(24.0, 1, at("2026-03-24", 11 * 60));
    bike.processes.get_mut("tank").unwrap().job = None;
    bike.coats.get_mut("coat 0").unwrap().job = None;
    let plan = plan(&bike);
    assert_eq!(work_ms(&plan, "fit").1, at("2026-03-24", 21 * 60));
    assert!(near(plan.ready_ms, at("2026-03-26", 15 * 60)));
    assert!(
        plan.held_by.english().contains("Tank: coats to come, and their cure until Thu 26 Mar, 15:00"),
        "{}",
        plan.held_by
    );
}

#[test]
fn a_paint_job_that_can_never_cure_leaves_no_date_and_says_so() {
    let mut bike = tank(24.0, 1, at("2026-03-24", 11 * 60));
    (bike.place.day_celsius, bike.place.night_celsius) = (Some(2.0), Some(2.0));
    bike.coats.get_mut("coat 0").unwrap().product.lowest_celsius = Some(8.0);
    let plan = plan(&bike);
    assert_eq!(plan.ready_ms, None);
    assert!(codes(&plan).contains(&"plan.wait-without-end"), "{:?}", plan.findings);
    assert!(!codes(&plan).contains(&"plan.sand-first"));
}

#[test]
fn a_window_that_opens_before_the_bench_time_of_the_day_turns_nothing_over() {
    let mut made = tank(300.0, 1, at("2026-03-24", 11 * 60));
    // Ahead of all others the coat would keep the liner from its cure until Thursday.
    if let Some(paint) = made.jobs.get_mut("paint") {
        paint.hands_on_minutes = 120.0;
    }
    let others = (0..6).map(|number| job(&format!("job {number}"), 0.1, &["liner"]));
    for other in others.chain([waiting(job("liner", 1.0, &[]), "cures", 140.0)]) {
        made.jobs.insert(other.title.clone(), other);
    }
    let tuesday = |hour: u32| Moment { now_ms: at("2026-03-24", hour * 60), ..tuesday_noon() };
    let (before, after) = (schedule(&made, &tuesday(12)), schedule(&made, &tuesday(14)));
    assert_eq!(row(&before, "paint").blocked_by, ["the coat below dries"]);
    assert!(row(&after, "paint").blocked_by.is_empty());
    assert_eq!(before.ready_ms, after.ready_ms);
    assert!(before.rows.iter().all(|one| one.work == row(&after, &one.job).work), "{before:?} {after:?}");
}

#[test]
fn coats_that_are_not_begun_are_reckoned_from_the_day_on_which_their_job_begins() {
    let mut made = tank(24.0, 0, 0);
    made.jobs.insert("paint".to_owned(), job("paint", 1.0, &[]));
    let plan = plan(&made);
    // The first at 19:00, the second at 21:00, the third at 23:00; cured on Thursday at 23:00.
    assert_eq!(work_ms(&plan, "paint"), (at("2026-03-24", 19 * 60), at("2026-03-24", 20 * 60)));
    assert!(near(row(&plan, "paint").wait_until_ms, at("2026-03-26", 23 * 60)), "{:?}", row(&plan, "paint"));
    assert_eq!(work_ms(&plan, "fit").0, at("2026-03-28", 9 * 60));
    assert!(!plan.held_by.english().contains("coats to come"), "{}", plan.held_by);
    // Put away with its job, it holds nothing.
    made.jobs.remove("paint");
    made.jobs.get_mut("fit").unwrap().after.clear();
    assert_eq!(schedule(&made, &tuesday_noon()).ready_ms, Some(at("2026-03-24", 20 * 60)));
}

#[test]
fn a_garage_that_is_cold_today_leaves_a_date_to_coats_that_begin_later() {
    let mut made = tank(24.0, 0, 0);
    let strip = job("strip", 1.0, &[]);
    made.jobs.insert("paint".to_owned(), job("paint", 1.0, &["strip"]));
    made.jobs.insert("strip".to_owned(), waiting(strip, "dries", 30.0));
    for step in &mut made.processes.get_mut("tank").unwrap().steps {
        step.product.as_mut().unwrap().lowest_celsius = Some(8.0);
    }
    made.climate.push(Climate { from_ms: tuesday_noon().now_ms, celsius: 2.0, humidity: None });
    let plan = plan(&made);
    assert!(plan.ready_ms.is_some(), "{:?}", plan.findings);
}
