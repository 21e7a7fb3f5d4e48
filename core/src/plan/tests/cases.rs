//! The plan on small bikes, each date reckoned by hand.

use super::example::*;
use crate::plan::schedule::schedule;
use crate::record::{Bike, Coat, DayOff, Job, JobState, PartState, Product, Span, Step, Wait};
use crate::time::{Moment, Zone, ZoneShift};

#[test]
fn jobs_come_in_dependency_order_then_by_rank_then_by_mark() {
    let mut bike = bike(vec![job("a", 1.0, &["c"]), job("b", 1.0, &[]), job("c", 1.0, &[]), job("d", 1.0, &[])]);
    for id in ["c", "d"] {
        bike.jobs.get_mut(id).unwrap().rank = 9.0;
    }
    let scheduled = schedule(&bike, &tuesday_noon());
    assert_eq!(scheduled.rows.iter().map(|row| row.job.as_str()).collect::<Vec<_>>(), ["b", "c", "a", "d"]);
    assert_eq!(work_ms(&scheduled, "b"), (at("2026-03-24", 19 * 60), at("2026-03-24", 20 * 60)));
    assert_eq!(work_ms(&scheduled, "a").0, at("2026-03-26", 19 * 60));
}

#[test]
fn a_job_that_does_not_fit_into_one_span_is_split_over_several() {
    let scheduled = schedule(&bike(vec![job("strip", 5.0, &[])]), &tuesday_noon());
    let work: Vec<(i64, i64)> = row(&scheduled, "strip").work.iter().map(|span| (span.from_ms, span.to_ms)).collect();
    let expected = [("2026-03-24", 19, 21), ("2026-03-26", 19, 21), ("2026-03-28", 9, 10)];
    assert_eq!(work, expected.map(|(day, from, to)| (at(day, from * 60), at(day, to * 60))));
    assert_eq!(scheduled.ready_ms, Some(at("2026-03-28", 10 * 60)));
}

#[test]
fn a_wait_of_fixed_hours_holds_back_what_follows_and_the_ready_date() {
    let jobs = vec![
        waiting(job("seal", 1.0, &[]), "sealant sets", 24.0),
        waiting(job("fill", 1.0, &["seal"]), "settles", 12.0),
    ];
    let scheduled = schedule(&bike(jobs), &tuesday_noon());
    // Sealed by Tuesday 20:00, set on Wednesday 20:00; Thursday is the next bench time, then 12 hours more.
    assert_eq!(row(&scheduled, "seal").wait_until_ms, Some(at("2026-03-25", 20 * 60)));
    assert_eq!(work_ms(&scheduled, "fill"), (at("2026-03-26", 19 * 60), at("2026-03-26", 20 * 60)));
    assert_eq!(scheduled.ready_ms, Some(at("2026-03-27", 8 * 60)));
}

#[test]
fn work_goes_on_with_something_else_while_a_coat_cures() {
    let jobs = vec![
        waiting(job("liner", 1.0, &[]), "liner cures", 96.0),
        job("refit", 1.0, &["liner"]),
        job("tyre", 2.0, &[]),
        job("lamps", 1.0, &[]),
    ];
    let scheduled = schedule(&bike(jobs), &tuesday_noon());
    // The liner is cured on Saturday 20:00; tyre and lamps fill Tuesday 20 to 21 and Thursday 19 to 21.
    assert_eq!(work_ms(&scheduled, "tyre"), (at("2026-03-24", 20 * 60), at("2026-03-26", 20 * 60)));
    assert_eq!(work_ms(&scheduled, "lamps"), (at("2026-03-26", 20 * 60), at("2026-03-26", 21 * 60)));
    assert_eq!(work_ms(&scheduled, "refit").0, at("2026-03-31", 19 * 60));
}

#[test]
fn the_order_of_the_list_gives_way_where_another_is_ready_earlier() {
    // By rank the liner would come on Saturday, be cured on the Wednesday after, and the bike be ready on Thursday.
    let jobs = vec![
        job("tyre", 2.0, &[]),
        job("lamps", 2.0, &[]),
        waiting(job("liner", 1.0, &[]), "liner cures", 96.0),
        job("refit", 1.0, &["liner"]),
    ];
    let scheduled = schedule(&bike(jobs), &tuesday_noon());
    assert!(work_ms(&scheduled, "liner").1 <= at("2026-03-26", 21 * 60));
    assert_eq!(scheduled.ready_ms, Some(at("2026-03-31", 20 * 60)));
}

#[test]
fn the_full_cure_of_a_named_product_is_waited_for() {
    let wait = Wait {
        name: "paint cures".to_owned(),
        hours: Some(1.0),
        product: Some("Tank paint".to_owned()),
        ..Wait::default()
    };
    let jobs = vec![Job { wait: Some(wait), ..job("paint", 1.0, &[]) }, job("fit", 1.0, &["paint"])];
    let mut bike = bike(jobs);
    let product = Product {
        name: "Tank paint".to_owned(),
        full_cure_hours: Some(24.0),
        at_celsius: Some(20.0),
        ..Product::default()
    };
    (bike.place.day_celsius, bike.place.night_celsius) = (Some(20.0), Some(20.0));
    let coat = Coat {
        title: "Test card".to_owned(),
        product,
        applied_ms: at("2026-03-01", 0),
        ended_ms: Some(at("2026-03-03", 0)),
        ..Coat::default()
    };
    bike.coats.insert("card".to_owned(), coat);
    let scheduled = schedule(&bike, &tuesday_noon());
    let cured_ms = row(&scheduled, "paint").wait_until_ms.unwrap();
    assert!((cured_ms - at("2026-03-25", 20 * 60)).abs() < 60_000, "{cured_ms}");
    assert_eq!(work_ms(&scheduled, "fit").0, at("2026-03-26", 19 * 60));
}

#[test]
fn after_a_done_job_the_coat_that_it_put_on_is_waited_for() {
    let noon = tuesday_noon();
    let painted_ms = noon.now_ms - 3_600_000;
    let mut bike =
        bike(vec![done(waiting(job("paint", 1.0, &[]), "paint cures", 1.0), painted_ms), job("fit", 1.0, &["paint"])]);
    (bike.place.day_celsius, bike.place.night_celsius) = (Some(20.0), Some(20.0));
    let product = Product {
        name: "Any paint".to_owned(),
        full_cure_hours: Some(48.0),
        at_celsius: Some(20.0),
        ..Product::default()
    };
    let coat = Coat {
        title: "Tank".to_owned(),
        product,
        applied_ms: painted_ms,
        job: Some("paint".to_owned()),
        ended_ms: None,
        ..Coat::default()
    };
    bike.coats.insert("coat".to_owned(), coat);
    let scheduled = schedule(&bike, &noon);
    assert!(row(&scheduled, "paint").wait_until_ms.unwrap().abs_diff(at("2026-03-26", 11 * 60)) < 60_000);
    assert_eq!(row(&scheduled, "fit").blocked_by, ["paint: paint cures"]);
    assert_eq!(work_ms(&scheduled, "fit").0, at("2026-03-26", 19 * 60));
    // The next coat ends the clock of this one: nothing is waited for any more.
    bike.coats.get_mut("coat").unwrap().ended_ms = Some(noon.now_ms - 1);
    let scheduled = schedule(&bike, &noon);
    assert!(row(&scheduled, "fit").blocked_by.is_empty());
    assert_eq!(work_ms(&scheduled, "fit").0, at("2026-03-24", 19 * 60));
}

#[test]
fn a_job_waits_for_its_parcel_until_the_morning_of_its_day() {
    let mut bike = bike(vec![needing(job("chain", 1.0, &[]), &["kit"]), job("tyre", 1.0, &[])]);
    bike.parts.insert("kit".to_owned(), part("Chain kit", PartState::Ordered, Some("2026-03-28")));
    let scheduled = schedule(&bike, &tuesday_noon());
    assert_eq!(work_ms(&scheduled, "chain").0, at("2026-03-28", 9 * 60));
    assert_eq!(row(&scheduled, "chain").blocked_by, ["Chain kit"]);
    assert_eq!(work_ms(&scheduled, "tyre").0, at("2026-03-24", 19 * 60));
    for here in [PartState::Here, PartState::Fitted] {
        bike.parts.get_mut("kit").unwrap().state = here;
        let scheduled = schedule(&bike, &tuesday_noon());
        assert_eq!(work_ms(&scheduled, "chain").0, at("2026-03-24", 19 * 60));
        assert!(row(&scheduled, "chain").blocked_by.is_empty());
    }
}

#[test]
fn a_parcel_without_a_day_cannot_be_planned_and_is_named() {
    for (state, word) in [(PartState::Ordered, "ordered"), (PartState::Wanted, "not ordered yet")] {
        let mut bike =
            bike(vec![needing(job("chain", 1.0, &[]), &["kit"]), job("tyre", 1.0, &[]), job("ride", 1.0, &["chain"])]);
        bike.parts.insert("kit".to_owned(), part("Chain kit", state, None));
        let scheduled = schedule(&bike, &tuesday_noon());
        assert_eq!(scheduled.ready_ms, None);
        assert_eq!(codes(&scheduled), ["plan.part-without-day"]);
        assert!(
            scheduled.findings[0].text.english().contains("Chain kit")
                && scheduled.findings[0].text.english().contains(word)
        );
        assert!(
            scheduled.held_by.english().starts_with("No date yet.")
                && scheduled.held_by.english().contains("Chain kit")
        );
        for id in ["chain", "ride"] {
            let row = row(&scheduled, id);
            assert!(row.work.is_empty() && row.slack_hours.is_none() && !row.critical);
        }
        assert_eq!(work_ms(&scheduled, "tyre").0, at("2026-03-24", 19 * 60));
    }
}

#[test]
fn a_late_parcel_is_counted_on_for_tomorrow_and_said_to_be_late() {
    let mut bike = bike(vec![needing(job("chain", 1.0, &[]), &["kit"])]);
    bike.parts.insert("kit".to_owned(), part("Chain kit", PartState::Ordered, Some("2026-03-20")));
    let scheduled = schedule(&bike, &tuesday_noon());
    assert_eq!(codes(&scheduled), ["plan.part-late"]);
    assert_eq!(work_ms(&scheduled, "chain").0, at("2026-03-26", 19 * 60));
}

#[test]
fn a_circle_is_shown_by_its_titles_and_the_other_jobs_are_planned() {
    let jobs = vec![
        job("Fit the rim", 1.0, &["True the wheel"]),
        job("True the wheel", 1.0, &["Lace the spokes"]),
        job("Lace the spokes", 1.0, &["Fit the rim"]),
        job("Ride", 1.0, &["True the wheel"]),
        job("Lamps", 1.0, &[]),
    ];
    let scheduled = schedule(&bike(jobs), &tuesday_noon());
    assert_eq!(codes(&scheduled), ["plan.circle"]);
    let text = &scheduled.findings[0].text;
    for link in [
        "“Fit the rim” must follow “True the wheel”",
        "“True the wheel” must follow “Lace the spokes”",
        "“Lace the spokes” must follow “Fit the rim”",
    ] {
        assert!(text.english().contains(link), "{text}");
    }
    assert_eq!(scheduled.ready_ms, None);
    for stuck in ["Fit the rim", "True the wheel", "Lace the spokes", "Ride"] {
        assert!(row(&scheduled, stuck).work.is_empty() && !row(&scheduled, stuck).blocked_by.is_empty());
    }
    assert_eq!(work_ms(&scheduled, "Lamps").0, at("2026-03-24", 19 * 60));
}

#[test]
fn a_done_job_breaks_a_circle() {
    let jobs = vec![done(job("a", 1.0, &["b"]), at("2026-03-20", 0)), job("b", 1.0, &["a"])];
    let scheduled = schedule(&bike(jobs), &tuesday_noon());
    assert!(scheduled.findings.is_empty());
    assert_eq!(scheduled.ready_ms, Some(at("2026-03-24", 20 * 60)));
}

#[test]
fn a_begun_job_keeps_what_was_done() {
    let steps = vec![Step { text: "One step".to_owned(), ..Step::default() }; 4];
    let begun = Job { steps, steps_done: 3, state: JobState::Begun, ..job("strip", 4.0, &[]) };
    let scheduled = schedule(&bike(vec![job("tyre", 1.0, &[]), begun]), &tuesday_noon());
    assert_eq!(row(&scheduled, "strip").minutes_left, 60.0);
    // What is begun is finished before something else is begun.
    assert_eq!(work_ms(&scheduled, "strip"), (at("2026-03-24", 19 * 60), at("2026-03-24", 20 * 60)));
}

#[test]
fn a_wait_of_unknown_length_is_said_and_leaves_no_date() {
    let endless =
        Job { wait: Some(Wait { name: "something dries".to_owned(), ..Wait::default() }), ..job("dip", 1.0, &[]) };
    let scheduled = schedule(&bike(vec![endless, job("fit", 1.0, &["dip"])]), &tuesday_noon());
    assert_eq!(codes(&scheduled), ["plan.wait-unknown"]);
    assert_eq!(scheduled.ready_ms, None);
    assert!(!row(&scheduled, "dip").work.is_empty() && row(&scheduled, "fit").work.is_empty());
}

#[test]
fn work_on_the_day_the_clock_goes_forward_loses_the_hour_that_is_not_there() {
    // Central European time, Sunday 29 March 2026: 2:00 becomes 3:00.
    let shift = |from_ms, offset_minutes| ZoneShift { from_ms, offset_minutes };
    let zone = Zone { name: "Europe/Berlin".to_owned(), shifts: vec![shift(0, 60), shift(1_774_746_000_000, 120)] };
    let mut bike = bike(vec![job("night shift", 3.0, &[])]);
    bike.bench_time.spans = vec![Span { weekday: 7, from_minute: 0, to_minute: 240 }];
    let now_ms = at("2026-03-28", 12 * 60);
    let scheduled = schedule(&bike, &Moment { now_ms, zone });
    // Midnight is 23:00 UTC; three hours later the clock on the wall shows 4:00.
    assert_eq!(work_ms(&scheduled, "night shift"), (at("2026-03-28", 23 * 60), at("2026-03-29", 2 * 60)));
    assert_eq!(scheduled.rows[0].work.len(), 1);
}

#[test]
fn days_off_are_passed_over() {
    let mut bike = bike(vec![job("tyre", 1.0, &[])]);
    bike.bench_time.days_off = vec![DayOff { day: "2026-03-24".to_owned() }, DayOff { day: "2026-03-26".to_owned() }];
    assert_eq!(work_ms(&schedule(&bike, &tuesday_noon()), "tyre").0, at("2026-03-28", 9 * 60));
}

#[test]
fn without_bench_time_an_assumed_pattern_is_used_and_said() {
    let mut bike = bike(vec![job("tyre", 1.0, &[])]);
    bike.bench_time.spans.clear();
    let scheduled = schedule(&bike, &tuesday_noon());
    assert_eq!(codes(&scheduled), ["plan.assumed-bench-time"]);
    assert_eq!(work_ms(&scheduled, "tyre").0, at("2026-03-24", 19 * 60));
    let said = "No bench time is set. The plan assumes Tuesday and Thursday 19:00 to 21:00, Saturday 9:00 to 16:00.";
    assert_eq!(scheduled.findings[0].text, said);
}

#[test]
fn slack_is_how_much_later_a_job_could_end_and_what_cannot_be_put_off_is_critical() {
    let jobs = vec![
        job("lamps", 1.0, &[]),
        waiting(job("liner", 1.0, &[]), "liner cures", 80.0),
        job("refit", 6.0, &["liner"]),
        job("tyre", 1.0, &[]),
    ];
    let scheduled = schedule(&bike(jobs), &tuesday_noon());
    // Tuesday lamps and liner until 21:00, cured Saturday 5:00, refit Saturday 9 to 15, tyre Thursday 19 to 20.
    assert_eq!(scheduled.ready_ms, Some(at("2026-03-28", 15 * 60)));
    let of = |job: &str| (row(&scheduled, job).slack_hours.unwrap(), row(&scheduled, job).critical);
    assert_eq!(of("refit"), (0.0, true));
    // The liner could be cured an hour before Saturday's work at most, and there is no bench time before Thursday.
    assert_eq!(of("liner"), (0.0, true));
    // The lamps could be left until Thursday evening after the tyre.
    assert_eq!(of("lamps"), (48.0, false));
    // The tyre could end an hour later, but on no later day.
    assert_eq!(of("tyre"), (1.0, true));
    // A job that the end does not wait for until the Saturday after can be put off.
    let jobs = vec![job("tyre", 1.0, &[]), needing(job("chain", 1.0, &[]), &["kit"])];
    let mut bike = bike(jobs);
    bike.parts.insert("kit".to_owned(), part("Chain kit", PartState::Ordered, Some("2026-03-28")));
    let scheduled = schedule(&bike, &tuesday_noon());
    assert_eq!(row(&scheduled, "tyre").slack_hours, Some(49.0));
    assert!(!row(&scheduled, "tyre").critical && row(&scheduled, "chain").critical);
}

#[test]
fn a_running_wait_is_critical_when_the_work_after_it_cannot_be_put_off() {
    let sealed_ms = at("2026-03-24", 8 * 60);
    let seal = |hours| done(waiting(job("seal", 1.0, &[]), "sets", hours), sealed_ms);
    let plan = |hours| schedule(&bike(vec![seal(hours), job("fill", 2.0, &["seal"])]), &tuesday_noon());
    // Set on Wednesday 8:00; the work has all of Thursday's bench time and needs it.
    let scheduled = plan(24.0);
    assert!(row(&scheduled, "seal").critical && row(&scheduled, "fill").critical);
    assert_eq!(row(&scheduled, "seal").slack_hours, Some(35.0));
    // Set long ago: nothing hangs on it.
    let long_over = schedule(
        &bike(vec![
            done(waiting(job("seal", 1.0, &[]), "sets", 1.0), at("2026-03-01", 0)),
            job("fill", 9.0, &["seal"]),
        ]),
        &tuesday_noon(),
    );
    assert!(!row(&long_over, "seal").critical);
}

#[test]
fn a_ready_date_needs_the_coats_that_belong_to_no_job_too() {
    let mut bike = bike(vec![job("tyre", 1.0, &[])]);
    (bike.place.day_celsius, bike.place.night_celsius) = (Some(20.0), Some(20.0));
    let product = Product {
        name: "Clear".to_owned(),
        full_cure_hours: Some(100.0),
        at_celsius: Some(20.0),
        ..Product::default()
    };
    let coat = Coat { title: "Side panel".to_owned(), product, applied_ms: tuesday_noon().now_ms, ..Coat::default() };
    bike.coats.insert("panel".to_owned(), coat);
    let scheduled = schedule(&bike, &tuesday_noon());
    assert!(scheduled.ready_ms.unwrap().abs_diff(at("2026-03-28", 16 * 60)) < 60_000);
    assert_eq!(scheduled.held_by, "Side panel: Clear cures until Sat 28 Mar, 16:00. That holds the date.");
}

#[test]
fn everything_done_is_ready_when_the_last_wait_was_over() {
    let over = waiting(job("seal", 1.0, &[]), "sets", 24.0);
    let scheduled = schedule(&bike(vec![done(over, at("2026-03-20", 0))]), &tuesday_noon());
    assert_eq!(scheduled.ready_ms, Some(at("2026-03-21", 0)));
    assert_eq!(scheduled.held_by, "Every job is done and every wait is over.");
    let nothing = schedule(&Bike::default(), &tuesday_noon());
    assert_eq!((nothing.ready_ms, nothing.rows.len()), (None, 0));
    assert!(nothing.held_by.english().contains("no jobs yet"));
}

#[test]
fn what_holds_the_date_is_a_cure_a_parcel_or_bench_time() {
    let liner = || waiting(job("Reline the tank", 1.0, &[]), "liner cures", 96.0);
    let kit = |day: &str| part("Chain kit", PartState::Ordered, Some(day));
    let with_kit = |day: &str| {
        let mut bike = bike(vec![liner(), needing(job("Fit the chain", 1.0, &[]), &["kit"])]);
        bike.parts.insert("kit".to_owned(), kit(day));
        bike
    };
    let held_by = |bike: &Bike| schedule(bike, &tuesday_noon()).held_by;
    assert_eq!(
        held_by(&with_kit("2026-03-26")),
        "Reline the tank: liner cures until Sat 28 Mar, 20:00. That holds the date, not the parcel."
    );
    assert_eq!(
        held_by(&with_kit("2026-04-10")),
        "Chain kit is counted on for Fri 10 Apr. The parcel holds the date, not the curing."
    );
    assert_eq!(held_by(&bike(vec![job("Strip", 30.0, &[])])), "Bench time holds the date: 30 h of work, 11 h a week.");
}

#[test]
fn damaged_records_do_not_break_the_plan() {
    let mut bike = bike(vec![
        job("nan", f64::NAN, &[]),
        job("minus", -5.0, &[]),
        waiting(job("wait", 1.0, &[]), "w", f64::INFINITY),
        job("gone", 1.0, &["never there"]),
    ]);
    bike.jobs.get_mut("nan").unwrap().rank = f64::NAN;
    for now_ms in [i64::MIN, 0, i64::MAX] {
        let scheduled = schedule(&bike, &Moment { now_ms, zone: Zone::default() });
        assert_eq!(scheduled.rows.len(), 4);
    }
}
