//! The plan of jobs that ask for daylight, a helper, quiet, one stretch or a time limit, each date reckoned by hand.

use super::example::*;
use crate::plan::schedule::{Scheduled, schedule};
use crate::record::{Bike, DayHours, Job, JobPlace, JobState, Span, Wait};

/// The job, after which what follows must begin within so many hours.
fn limiting(job: Job, wait_hours: f64, at_most_hours: f64) -> Job {
    let wait = Wait {
        hours: Some(wait_hours),
        at_most_hours: Some(at_most_hours),
        ..waiting(job.clone(), "flash off", 0.0).wait.unwrap()
    };
    Job { wait: Some(wait), ..job }
}

fn helped(job: Job) -> Job {
    Job { helper: Some(true), ..job }
}

fn outdoors(job: Job) -> Job {
    Job { place: Some(JobPlace::Daylight), ..job }
}

fn in_one_go(job: Job) -> Job {
    Job { splittable: Some(false), ..job }
}

/// Bench time on Tuesday and Thursday 19 to 21 and on Saturday 9 to 16; a helper on Saturday 10 to 12.
fn with_helper(jobs: Vec<Job>) -> Bike {
    let mut made = bike(jobs);
    made.bench_time.helper = Some(vec![Span { weekday: 6, from_minute: 600, to_minute: 720 }]);
    made
}

fn plan(bike: &Bike) -> Scheduled {
    schedule(bike, &tuesday_noon())
}

fn text(scheduled: &Scheduled) -> String {
    scheduled.findings.first().map_or_else(String::new, |finding| finding.text.english())
}

#[test]
fn daylight_and_spraying_wait_for_saturday_and_evenings_go_to_other_jobs() {
    for place in [JobPlace::Daylight, JobPlace::SprayPlace] {
        let jobs = vec![Job { place: Some(place), ..job("paint", 2.0, &[]) }, job("tyre", 3.0, &[])];
        let scheduled = plan(&bike(jobs));
        assert_eq!(work_ms(&scheduled, "paint"), (at("2026-03-28", 540), at("2026-03-28", 660)));
        assert_eq!(work_ms(&scheduled, "tyre"), (at("2026-03-24", 1140), at("2026-03-26", 1200)));
        assert_eq!(scheduled.ready_ms, Some(at("2026-03-28", 660)));
    }
}

#[test]
fn a_job_for_two_lies_in_the_hours_of_the_helper_and_goes_on_in_the_next() {
    let scheduled = plan(&with_helper(vec![helped(job("fork", 3.0, &[]))]));
    let work: Vec<(i64, i64)> = row(&scheduled, "fork").work.iter().map(|span| (span.from_ms, span.to_ms)).collect();
    assert_eq!(work, [(at("2026-03-28", 600), at("2026-03-28", 720)), (at("2026-04-04", 600), at("2026-04-04", 660))]);
}

#[test]
fn while_a_job_rests_until_the_helper_is_back_others_are_done() {
    let scheduled = plan(&with_helper(vec![helped(job("fork", 3.0, &[])), job("tyre", 5.0, &[])]));
    assert_eq!(scheduled.ready_ms, Some(at("2026-04-04", 660)));
    assert!(work_ms(&scheduled, "tyre").1 <= at("2026-03-28", 1000));
    assert_eq!(scheduled.held_by, "fork can only be done while a helper is there. That holds the date.");
}

#[test]
fn where_no_helper_ever_comes_a_job_for_two_has_no_date_and_says_what_would_help() {
    let mut made = bike(vec![helped(job("fork", 1.0, &[])), job("ride", 1.0, &["fork"])]);
    let assumed = plan(&made);
    assert_eq!(codes(&assumed), ["plan.assumed-helper"], "nothing said is no reason for having no date");
    assert!(assumed.ready_ms.is_some());
    made.bench_time.helper = Some(Vec::new());
    let scheduled = plan(&made);
    assert_eq!((codes(&scheduled), scheduled.ready_ms), (vec!["plan.no-own-time"], None));
    assert!(text(&scheduled).contains("“fork”") && text(&scheduled).contains("Say when a helper is there"));
    assert!(scheduled.held_by.english().starts_with("No date yet. “fork” can only be done while a helper is there"));
}

#[test]
fn hours_that_never_meet_are_said() {
    let mut bike = with_helper(vec![helped(outdoors(job("ride", 1.0, &[])))]);
    bike.bench_time.daylight = Some(DayHours { from_minute: 780, to_minute: 1080 });
    let scheduled = plan(&bike);
    assert_eq!(codes(&scheduled), ["plan.no-own-time"]);
    assert!(text(&scheduled).contains("by daylight and while a helper is there would help"), "{}", text(&scheduled));
}

#[test]
fn noise_keeps_out_of_quiet_hours_over_midnight() {
    let mut bike = bike(vec![Job { noisy: Some(true), ..job("grind", 2.0, &[]) }]);
    bike.bench_time.quiet = Some(DayHours { from_minute: 1200, to_minute: 420 });
    let scheduled = plan(&bike);
    assert_eq!(work_ms(&scheduled, "grind"), (at("2026-03-24", 1140), at("2026-03-26", 1200)));
}

#[test]
fn a_job_in_one_go_waits_for_a_stretch_that_is_long_enough() {
    let scheduled = plan(&bike(vec![in_one_go(job("tank", 3.0, &[])), job("tyre", 4.0, &[])]));
    assert_eq!(work_ms(&scheduled, "tank"), (at("2026-03-28", 540), at("2026-03-28", 720)));
    assert_eq!(work_ms(&scheduled, "tyre").1, at("2026-03-26", 1260));
}

#[test]
fn a_job_in_one_go_that_no_stretch_holds_is_named_with_the_longest() {
    let scheduled = plan(&bike(vec![in_one_go(job("tank", 7.5, &[])), job("tyre", 1.0, &[])]));
    assert_eq!((codes(&scheduled), scheduled.ready_ms), (vec!["plan.no-stretch"], None));
    for part in ["“tank” takes 7 h 30 in", "is 7 h (Sat 28 Mar)", "A stretch of 7 h 30 would help"] {
        assert!(text(&scheduled).contains(part), "{}", text(&scheduled));
    }
    assert_eq!(work_ms(&scheduled, "tyre").0, at("2026-03-24", 1140));
}

#[test]
fn a_coat_is_put_off_until_the_next_can_follow_in_time() {
    // On Tuesday evening the clear coat could follow only on Thursday; on Saturday both fit.
    let jobs = vec![limiting(job("base", 1.0, &[]), 2.0, 6.0), job("clear", 1.0, &["base"]), job("tyre", 2.0, &[])];
    let scheduled = plan(&bike(jobs));
    assert_eq!(work_ms(&scheduled, "base"), (at("2026-03-28", 540), at("2026-03-28", 600)));
    assert_eq!(work_ms(&scheduled, "clear").0, at("2026-03-28", 720));
    assert_eq!(row(&scheduled, "clear").begin_by_ms, Some(at("2026-03-28", 960)));
    assert_eq!(work_ms(&scheduled, "tyre").0, at("2026-03-24", 1140));
}

#[test]
fn a_chain_of_coats_keeps_each_limit() {
    let coat = |title, after: &[&str]| limiting(job(title, 1.0, after), 1.0, 2.0);
    let jobs = vec![coat("first", &[]), coat("second", &["first"]), job("third", 1.0, &["second"])];
    let scheduled = plan(&bike(jobs));
    let begins = ["first", "second", "third"].map(|job| work_ms(&scheduled, job).0);
    assert_eq!(begins, [540, 660, 780].map(|minute| at("2026-03-28", minute)));
}

#[test]
fn a_limit_that_no_bench_time_keeps_is_said_with_the_stretch_that_would() {
    let jobs = vec![limiting(job("base", 4.0, &[]), 2.0, 3.0), in_one_go(job("clear", 2.0, &["base"]))];
    let scheduled = plan(&bike(jobs));
    assert_eq!((codes(&scheduled), scheduled.ready_ms), (vec!["plan.limit-never-kept"], None));
    let said = "“clear” must begin within 3 h after “base”, and no bench time allows that. A stretch of 8 h for both";
    assert!(text(&scheduled).starts_with(said), "{}", text(&scheduled));
    assert!(row(&scheduled, "base").work.is_empty());
}

#[test]
fn a_coat_is_not_planned_before_what_must_follow_can_be() {
    let mut bike =
        bike(vec![limiting(job("base", 1.0, &[]), 0.0, 6.0), needing(job("clear", 1.0, &["base"]), &["can"])]);
    bike.parts.insert("can".to_owned(), part("Can", crate::record::PartState::Wanted, None));
    let scheduled = plan(&bike);
    assert_eq!(codes(&scheduled), ["plan.part-without-day", "plan.limit-waits"]);
    assert!(row(&scheduled, "base").work.is_empty());
}

#[test]
fn a_limit_that_runs_tells_by_when_and_says_when_it_cannot_be_kept() {
    let base = |done_ms, at_most| done(limiting(job("base", 1.0, &[]), 1.0, at_most), done_ms);
    let with = |done_ms, at_most| {
        plan(&bike(vec![base(done_ms, at_most), job("tyre", 2.0, &[]), job("clear", 1.0, &["base"])]))
    };
    let noon = tuesday_noon().now_ms;
    // Until 20:00: the clear coat goes before the tyre.
    let kept = with(noon, 8.0);
    assert_eq!(
        (work_ms(&kept, "clear").0, row(&kept, "clear").begin_by_ms),
        (at("2026-03-24", 1140), Some(at("2026-03-24", 1200)))
    );
    assert!(kept.findings.is_empty() && kept.ready_ms.is_some());
    // Until 18:00, before the evening begins.
    let missed = with(noon, 6.0);
    assert_eq!((codes(&missed), missed.ready_ms), (vec!["plan.limit-missed"], None));
    assert!(
        text(&missed).starts_with("“clear” must begin by Tue 24 Mar, 18:00, and no plan reaches that."),
        "{}",
        text(&missed)
    );
    assert!(missed.held_by.english().starts_with("No date yet. “clear” must begin by"));
    // Over since Monday: it is said, and the plan goes on.
    let passed = with(noon - 86_400_000, 6.0);
    assert_eq!(codes(&passed), ["plan.limit-passed"]);
    assert!(passed.ready_ms.is_some());
}

#[test]
fn a_job_that_may_be_split_is_put_off_as_a_whole_and_ends_with_a_piece_of_work() {
    let base = Job { splittable: Some(true), ..limiting(job("base", 3.0, &[]), 0.0, 1.0) };
    let scheduled = plan(&bike(vec![base, outdoors(job("clear", 1.0, &["base"]))]));
    // The clear coat needs Saturday's light; the base ends a quarter of an hour into Saturday, its rest on Thursday.
    assert_eq!(work_ms(&scheduled, "base"), (at("2026-03-24", 1215), at("2026-03-28", 555)));
    assert_eq!(work_ms(&scheduled, "clear").0, at("2026-03-28", 555));
}

#[test]
fn small_plans_are_proven_and_larger_ones_say_how_far_off_they_may_be() {
    let few = plan(&bike(vec![job("tyre", 1.0, &[]), job("lamps", 1.0, &[])]));
    assert_eq!(few.bound_ms, few.ready_ms);
    let many: Vec<Job> = (0..9).map(|place| job(&format!("job {place}"), 1.0, &[])).collect();
    let many = plan(&bike(many));
    assert_eq!(many.bound_ms, many.ready_ms);
    // Nine jobs for two, in two hours a week: the bound counts the hours of the helper too.
    let helped = (0..9).map(|place| helped(job(&format!("job {place}"), 1.0, &[]))).collect();
    let helped = plan(&with_helper(helped));
    assert_eq!(helped.bound_ms, helped.ready_ms);
    let begun = Job { state: JobState::Begun, ..job("strip", 1.0, &[]) };
    let scheduled = plan(&bike(vec![waiting(job("liner", 1.0, &[]), "cures", 96.0), begun]));
    assert_eq!(work_ms(&scheduled, "strip").0, at("2026-03-24", 1140));
}
