//! The first page as a whole.

use super::*;
use crate::error::Refused;
use crate::inspection::Verdict;
use crate::plan::schedule;
use crate::plan::tests::example::{at, bike, done, job, needing, part, tuesday_noon, waiting};
use crate::ready_made::typical_product;
use crate::record::{Air, Bike, Coat, Job, JobPlace, JobState, PartState, Step};

fn asked(bike: &Bike, ask: &TodayAsk) -> Result<TodayAnswer, Refused> {
    today_answer(bike, ask, &tuesday_noon(), &schedule(bike, &tuesday_noon()))
}

fn today(bike: &Bike, minutes_at_hand: f64) -> TodayAnswer {
    asked(bike, &TodayAsk { minutes_at_hand: Some(minutes_at_hand), ..TodayAsk::default() }).unwrap()
}

fn titles(sheet: &TodayAnswer) -> Vec<&str> {
    sheet.next.iter().map(|next| next.title.as_str()).collect()
}

#[test]
fn what_a_job_asks_of_the_hour_is_said_beside_it() {
    let outdoors = Job { place: Some(JobPlace::Daylight), helper: Some(true), ..job("ride", 0.5, &[]) };
    let sheet = today(&bike(vec![outdoors, Job { helper: Some(false), ..job("tyre", 0.5, &[]) }]), 60.0);
    let why = |title: &str| sheet.next.iter().find(|next| next.title == title).map(|next| next.why.clone()).unwrap();
    assert!(why("ride").english().starts_with("needs daylight and a helper"), "{}", why("ride"));
    assert!(!why("tyre").english().contains("needs"), "{}", why("tyre"));
    let air = Air { lowest_celsius: Some(12.5), highest_humidity: Some(70.0), ..Air::default() };
    let paint = Job { place: Some(JobPlace::SprayPlace), air: Some(air), ..job("paint", 0.5, &[]) };
    let needs = "needs the spray place in daylight, 12.5 °C or more and 70 % humidity or less";
    assert_eq!(today(&bike(vec![paint]), 60.0).next[0].why, needs);
}

#[test]
fn what_fits_and_holds_the_date_comes_first_then_what_frees_most() {
    let jobs = vec![
        job("Label a plug", 0.25, &[]),
        job("Fit the rear tyre", 0.75, &[]),
        job("Fit the chain", 0.5, &["Fit the rear tyre"]),
        job("Set the rear brake", 0.5, &["Fit the rear tyre"]),
        waiting(job("Reline the tank", 1.0, &[]), "liner cures", 160.0),
        job("Refit the tank", 2.0, &["Reline the tank"]),
        job("Strip the engine", 2.0, &[]),
    ];
    let sheet = today(&bike(jobs), 60.0);
    assert_eq!(titles(&sheet), ["Reline the tank", "Fit the rear tyre", "Label a plug", "Strip the engine"]);
    let [reline, tyre, label, strip] = sheet.next.as_slice() else { panic!("{:?}", sheet.next) };
    assert!(reline.critical && reline.fits && reline.frees == 1);
    assert_eq!(reline.why, "holds the ready date, frees one job");
    assert_eq!((tyre.frees, tyre.why.english().as_str()), (2, "frees 2 jobs"));
    assert_eq!(label.why, "nothing stands in its way");
    assert!(!strip.fits && strip.why.english().starts_with("longer than the time at hand"));
}

#[test]
fn a_job_is_not_offered_while_a_job_a_wait_or_a_part_stands_in_its_way() {
    let noon_ms = tuesday_noon().now_ms;
    let mut bike = bike(vec![
        job("Strip", 1.0, &[]),
        job("After a job", 1.0, &["Strip"]),
        done(waiting(job("Seal", 1.0, &[]), "sealant sets", 24.0), noon_ms - 3_600_000),
        job("After a wait", 1.0, &["Seal"]),
        needing(job("With a part", 1.0, &[]), &["kit"]),
    ]);
    bike.parts.insert("kit".to_owned(), part("Chain kit", PartState::Ordered, Some("2026-03-24")));
    assert_eq!(titles(&today(&bike, 60.0)), ["Strip"]);
    // A day later the sealant has set, and the kit has come.
    bike.parts.get_mut("kit").unwrap().state = PartState::Here;
    bike.jobs.get_mut("Seal").unwrap().done_ms = Some(noon_ms - 25 * 3_600_000);
    let sheet = today(&bike, 60.0);
    assert_eq!(titles(&sheet), ["Strip", "After a wait", "With a part"]);
    assert!(sheet.next[2].why.english().contains("its parts are here"));
}

#[test]
fn a_begun_job_counts_with_what_is_left_of_it() {
    let steps = vec![Step { text: "One step".to_owned(), ..Step::default() }; 4];
    let begun = crate::record::Job { steps, steps_done: 3, state: JobState::Begun, ..job("Strip", 2.0, &[]) };
    let sheet = today(&bike(vec![begun]), 30.0);
    assert_eq!((sheet.next[0].minutes_left, sheet.next[0].fits), (30.0, true));
}

#[test]
fn parts_on_their_way_and_running_cures_stand_in_the_order_of_their_days() {
    let mut bike = bike(vec![done(job("Strip", 1.0, &[]), 0), job("Build", 1.0, &["Strip"])]);
    for (mark, state, expected) in [
        ("a", PartState::Ordered, None),
        ("b", PartState::Ordered, Some("2026-04-02")),
        ("c", PartState::Ordered, Some("2026-03-26")),
        ("d", PartState::Here, Some("2026-03-01")),
        ("e", PartState::Wanted, Some("2026-03-30")),
    ] {
        bike.parts.insert(mark.to_owned(), part(mark, state, expected));
    }
    for (mark, hours) in [("first", 20), ("second", 10)] {
        let product = typical_product("tank-liner").unwrap();
        let applied_ms = tuesday_noon().now_ms - hours * 3_600_000;
        bike.coats.insert(mark.to_owned(), Coat { title: mark.to_owned(), product, applied_ms, ..Coat::default() });
    }
    let sheet = today(&bike, 60.0);
    assert_eq!(sheet.parts_due.iter().map(|due| due.id.as_str()).collect::<Vec<_>>(), ["c", "b", "a"]);
    assert_eq!(sheet.cures.iter().map(|cure| cure.title.as_str()).collect::<Vec<_>>(), ["first", "second"]);
    assert_eq!((sheet.jobs_done, sheet.jobs), (1, 2));
    assert!(sheet.ready_ms > Some(at("2026-03-27", 0)));
}

#[test]
fn an_empty_bike_has_a_page_and_no_pass() {
    let sheet = asked(&Bike::default(), &TodayAsk::default()).unwrap();
    assert_eq!((sheet.ready_ms, sheet.jobs, sheet.next.len()), (None, 0, 0));
    assert_ne!(sheet.readiness.verdict, Verdict::Pass);
}

#[test]
fn an_unknown_pack_is_no_pass_and_no_error() {
    let mut bike = Bike::default();
    bike.identity.pack = Some("never there".to_owned());
    let sheet = asked(&bike, &TodayAsk::default()).unwrap();
    assert_eq!(sheet.readiness.verdict, Verdict::Unknown);
}

#[test]
fn a_time_at_hand_outside_its_range_is_refused() {
    for minutes in [0.0, 1441.0, f64::NAN] {
        let ask = TodayAsk { minutes_at_hand: Some(minutes), ..TodayAsk::default() };
        let refused = asked(&Bike::default(), &ask).unwrap_err().english();
        assert!(refused.starts_with("Time at hand") && refused.contains("1 to 1 440 min"), "{refused}");
    }
}
