//! A reading beyond its limit, and a change that was tried, become a job or a part in one step, on a bike entered by hand.

use layshaft_core::quantity::FindingCode;
use layshaft_core::record::{ChangeKind, End, Identity, JobReason, JobState, Reading, Side, Wheel};
use layshaft_core::ripple::{Proposal, RippleAsk};
use layshaft_core::units::Unit;
use layshaft_door::Bench;
use layshaft_door::command::{FinishJob, PutRight, RecordDrive, RecordWheel, StartBike, TakeReading, Undo, WantPart};
use layshaft_door::query::{BareAsk, ChainWearAsk, FoundAsk, FoundCard, IdAsk, PartCard};

use crate::{English, HOUR, SATURDAY, act, at, chain_drive};

fn own_bike() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    let identity = Identity { name: "Barn find".into(), ..Identity::default() };
    act(&mut bench, StartBike { identity }, SATURDAY).unwrap();
    act(&mut bench, RecordDrive { side: Side::Standard, drive: chain_drive() }, SATURDAY).unwrap();
    bench
}

fn finding(code: FindingCode, slot: Option<&str>) -> JobReason {
    JobReason::Finding { code, slot: slot.map(str::to_owned) }
}

fn plain(reason: &JobReason) -> PutRight {
    PutRight { reason: reason.clone(), title: None, proposals: Vec::new() }
}

fn want(reason: &JobReason, title: Option<&str>) -> WantPart {
    WantPart { reason: reason.clone(), title: title.map(str::to_owned) }
}

fn card(bench: &Bench, reason: &JobReason) -> FoundCard {
    bench.found(&FoundAsk { reasons: vec![reason.clone()] }, &at(SATURDAY)).unwrap().found.remove(0)
}

fn parts(bench: &Bench) -> Vec<PartCard> {
    bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().parts
}

fn slack(bench: &Bench) -> FindingCode {
    let ask = ChainWearAsk {
        slack_mm: vec![40.0, 45.0],
        chain_slack_from_mm: Some(15.0),
        chain_slack_to_mm: Some(25.0),
        ..ChainWearAsk::default()
    };
    bench.chain_wear(&ask, &at(SATURDAY)).unwrap().findings.last().unwrap().code
}

#[test]
fn a_reading_beyond_its_limit_becomes_the_ready_made_job_and_each_names_the_other() {
    let mut bench = own_bike();
    let reason = finding(slack(&bench), None);
    assert_eq!(reason, finding(FindingCode::ChainTooSlack, None));
    assert_eq!(card(&bench, &reason).job, None);
    let made = act(&mut bench, plain(&reason), SATURDAY + HOUR).unwrap();
    let id = made.made.unwrap();
    let shown = bench.job(&IdAsk { id: id.clone() }, &at(SATURDAY)).unwrap();
    assert_eq!(shown.job.ready_made.as_deref(), Some("chain-slack"));
    assert_eq!((&shown.reasons[0].reason, shown.reasons[0].name.english()), (&reason, "Slack of the chain".to_owned()));
    let found = card(&bench, &reason);
    assert_eq!((found.job.unwrap().job, found.again), (id.clone(), false));
    let refused = act(&mut bench, plain(&reason), SATURDAY + HOUR).unwrap_err();
    assert_eq!(refused.field.as_deref(), Some("reason"));
    act(&mut bench, FinishJob { id, ..FinishJob::default() }, SATURDAY + 2 * HOUR).unwrap();
    let found = card(&bench, &reason);
    assert_eq!((found.job.unwrap().state, found.again), (JobState::Done, true), "measure it again");
}

#[test]
fn a_reading_that_was_taken_before_its_job_was_done_counts_no_more() {
    let mut bench = own_bike();
    let take = |value, at_ms| {
        let what = "chain.elongation".to_owned();
        let reading = Reading { what, value, unit: Some(Unit::Percent), taken_ms: Some(at_ms), ..Reading::default() };
        TakeReading { reading }
    };
    let noted = |bench: &Bench| bench.chain_wear(&ChainWearAsk::default(), &at(SATURDAY)).unwrap().noted_percent;
    act(&mut bench, take(3.4, SATURDAY), SATURDAY).unwrap();
    assert_eq!(noted(&bench), Some(3.4));
    let reason = finding(FindingCode::ChainWornOut, None);
    let id = act(&mut bench, plain(&reason), SATURDAY).unwrap().made.unwrap();
    assert_eq!(noted(&bench), Some(3.4), "a job that is planned puts nothing right");
    act(&mut bench, FinishJob { id, ..FinishJob::default() }, SATURDAY + HOUR).unwrap();
    assert_eq!((noted(&bench), card(&bench, &reason).again), (None, true));
    let sheet = bench.chain_wear(&ChainWearAsk::default(), &at(SATURDAY)).unwrap();
    let said: Vec<String> = sheet.findings.iter().map(|finding| finding.text.english()).collect();
    assert!(said.iter().any(|text| text.contains("“Chain and sprockets” is done: measure again")), "{said:?}");
    act(&mut bench, take(0.1, SATURDAY + 2 * HOUR), SATURDAY + 2 * HOUR).unwrap();
    assert_eq!((noted(&bench), card(&bench, &reason).again), (Some(0.1), false));
}

#[test]
fn what_a_bike_has_twice_is_put_right_where_it_was_found_and_no_work_follows_from_a_remark() {
    let mut bench = own_bike();
    let old = |slot| finding(FindingCode::TyreAge, slot);
    let reasons = vec![old(Some("rear")), old(None), finding(FindingCode::MixByVolume, None), old(Some("front"))];
    let found = bench.found(&FoundAsk { reasons }, &at(SATURDAY)).unwrap().found;
    let told: Vec<String> = found.iter().map(|card| card.name.english()).collect();
    assert_eq!(told, ["Rear tyre", "Front tyre"]);
    let made = act(&mut bench, plain(&old(Some("rear"))), SATURDAY).unwrap().made.unwrap();
    let job = bench.job(&IdAsk { id: made }, &at(SATURDAY)).unwrap().job;
    assert_eq!(job.ready_made.as_deref(), Some("rear-tyre-tube"));
    assert!(act(&mut bench, plain(&old(None)), SATURDAY).is_err());
}

#[test]
fn a_plain_job_on_a_brake_ends_with_the_tests_of_every_brake_job_and_a_long_name_is_cut() {
    let mut bench = own_bike();
    let reason = finding(FindingCode::BrakeBelowLine, Some("front"));
    let title = Some(format!("Put right: {}", "the front brake stops less than it should ".repeat(4)));
    let put = PutRight { reason, title, proposals: Vec::new() };
    let made = act(&mut bench, put, SATURDAY).unwrap().made.unwrap();
    let job = bench.job(&IdAsk { id: made }, &at(SATURDAY)).unwrap().job;
    assert_eq!(job.steps.len(), 2);
    assert!(job.title.chars().count() <= 120 && job.title.ends_with('…'), "{}", job.title);
}

#[test]
fn a_change_that_was_tried_becomes_a_job_with_the_parts_that_it_changes_in_their_new_sizes() {
    let mut bench = own_bike();
    let proposals = vec![Proposal::Sprockets { front_teeth: 16, rear_teeth: 41, chain_links: None }];
    let tried = bench.ripple(&RippleAsk { proposals: proposals.clone() }, &at(SATURDAY)).unwrap();
    let reason = tried.changes[0].clone();
    assert_eq!(reason, JobReason::Change { change: ChangeKind::Sprockets, slot: None });
    let made = act(&mut bench, PutRight { reason: reason.clone(), title: None, proposals }, SATURDAY).unwrap();
    let told: Vec<_> = parts(&bench).into_iter().map(|card| (card.part.title, card.part.size.unwrap())).collect();
    assert_eq!(told, [("Gearbox sprocket".to_owned(), "428, 16T".to_owned())]);
    let found = card(&bench, &reason);
    assert_eq!((found.job.map(|job| job.job), found.parts.len()), (made.made, 1));
    assert_eq!(bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().fitted.drive.front_teeth, Some(15), "nothing is fitted");
    act(&mut bench, Undo { batch: made.batch }, SATURDAY).unwrap();
    assert_eq!((parts(&bench), card(&bench, &reason).job), (Vec::new(), None));
}

#[test]
fn a_part_for_what_was_found_goes_on_the_list_and_the_job_for_it_waits_for_it() {
    let mut bench = own_bike();
    let wheel = Wheel { tyre: Some("3.00-18 52P".into()), tube: Some(false), ..Wheel::default() };
    act(&mut bench, RecordWheel { side: Side::Standard, end: End::Rear, wheel }, SATURDAY).unwrap();
    let reason = finding(FindingCode::TyreAge, Some("rear"));
    act(&mut bench, want(&reason, None), SATURDAY).unwrap();
    let wanted = parts(&bench);
    assert_eq!((wanted.len(), wanted[0].part.size.as_deref()), (1, Some("3.00-18 52P")), "no tube: it runs without");
    assert_eq!(wanted[0].part.reasons, std::slice::from_ref(&reason));
    let made = act(&mut bench, plain(&reason), SATURDAY).unwrap().made.unwrap();
    let job = bench.job(&IdAsk { id: made }, &at(SATURDAY)).unwrap().job;
    assert_eq!(job.parts, [wanted[0].id.clone()]);
    let refused = act(&mut bench, want(&reason, None), SATURDAY).unwrap_err();
    assert!(refused.message.english().contains("is on the list for this already"), "{}", refused.message.english());
}

#[test]
fn a_part_without_a_ready_made_job_needs_a_name_and_the_job_that_is_there_waits_for_it() {
    let mut bench = own_bike();
    let reason = finding(FindingCode::SpeedometerReadsLow, None);
    let refused = act(&mut bench, want(&reason, None), SATURDAY).unwrap_err();
    assert_eq!(refused.field.as_deref(), Some("title"));
    let put = PutRight { title: Some("Set the speedometer right".into()), ..plain(&reason) };
    let job = act(&mut bench, put, SATURDAY).unwrap().made.unwrap();
    let part = act(&mut bench, want(&reason, Some("Corrector")), SATURDAY).unwrap().made.unwrap();
    assert_eq!(bench.job(&IdAsk { id: job }, &at(SATURDAY)).unwrap().job.parts, std::slice::from_ref(&part));
    assert_eq!(card(&bench, &reason).parts[0].part, part);
}
