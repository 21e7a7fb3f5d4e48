//! Packages of ready-made jobs: only what suits, each job at its place whichever came first, and taken back as a whole.

use std::collections::BTreeMap;

use layshaft_core::ready_made::OfferState;
use layshaft_core::record::{Brake, BrakeKind, Cooling, End, Identity, Job, Side};
use layshaft_door::Bench;
use layshaft_door::command::{
    AddPackages, AddReadyMade, ChangeJob, FinishJob, Outcome, PutJobAway, RecordBrake, StartBike, Undo,
};
use layshaft_door::query::{BareAsk, IdAsk, PackageOffer, PlanAsk};

use crate::{English, SATURDAY, act, at};

fn twin_drum() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    let identity = Identity { name: "Barn find".to_owned(), cooling: Some(Cooling::Air), ..Identity::default() };
    act(&mut bench, StartBike { identity }, SATURDAY).unwrap();
    for end in [End::Front, End::Rear] {
        let brake = Brake { brake: Some(BrakeKind::Drum), ..Brake::default() };
        act(&mut bench, RecordBrake { side: Side::Standard, end, brake }, SATURDAY).unwrap();
    }
    bench
}

fn package(package: &str, leave_out: &[&str]) -> AddPackages {
    let leave_out = Some(leave_out.iter().map(|id| (*id).to_owned()).collect());
    AddPackages { packages: vec![package.to_owned()], leave_out }
}

fn add(bench: &mut Bench, mark: &str) -> Outcome {
    act(bench, AddReadyMade { ready_made: mark.to_owned() }, SATURDAY).unwrap()
}

/// The jobs of the plan by the ready-made ones that they were made from, with their ids.
fn planned(bench: &Bench) -> BTreeMap<String, (String, Job)> {
    let plan = bench.plan(&PlanAsk::default(), &at(SATURDAY)).unwrap();
    let jobs = plan.rows.iter().map(|row| (row.job.clone(), job(bench, &row.job)));
    jobs.filter_map(|(id, job)| Some((job.ready_made.clone()?, (id, job)))).collect()
}

fn job(bench: &Bench, id: &str) -> Job {
    bench.job(&IdAsk { id: id.to_owned() }, &at(SATURDAY)).unwrap().job
}

fn offer(bench: &Bench, id: &str) -> PackageOffer {
    let packages = bench.ready_made(&BareAsk {}, &at(SATURDAY)).unwrap().packages;
    packages.into_iter().find(|offer| offer.id == id).unwrap()
}

#[test]
fn a_package_brings_what_suits_and_undo_takes_all_of_it_back() {
    let mut bench = twin_drum();
    let offered = offer(&bench, "stood-for-years");
    let of =
        |state| offered.jobs.iter().filter(|job| job.state == state).map(|job| job.id.as_str()).collect::<Vec<_>>();
    assert_eq!(of(OfferState::Unsuited), ["caliper-rebuild", "brake-hose", "brake-bleed", "cooling"]);
    let valves = offered.jobs.iter().find(|job| job.id == "valve-clearance").unwrap();
    assert!(valves.why.as_ref().unwrap().english().contains("depends"), "two-stroke or four-stroke is not known");

    let outcome = act(&mut bench, package("stood-for-years", &["tank-derust"]), SATURDAY).unwrap();
    let mut wanted = of(OfferState::Offered);
    wanted.retain(|id| *id != "tank-derust");
    wanted.sort_unstable();
    assert!(planned(&bench).keys().eq(wanted), "{:?}", planned(&bench).keys());
    act(&mut bench, Undo { batch: outcome.batch }, SATURDAY).unwrap();
    assert!(planned(&bench).is_empty());
}

#[test]
fn what_is_there_is_left_alone_also_when_it_is_done_and_comes_anew_when_it_was_put_away() {
    let mut bench = twin_drum();
    let done = add(&mut bench, "rear-tyre-tube").made.unwrap();
    act(&mut bench, FinishJob { id: done.clone(), ..FinishJob::default() }, SATURDAY).unwrap();
    let away = add(&mut bench, "spokes-true").made.unwrap();
    act(&mut bench, PutJobAway { id: away }, SATURDAY).unwrap();
    let before = job(&bench, &done);
    act(&mut bench, package("tyres-and-chain", &[]), SATURDAY).unwrap();
    assert_eq!(job(&bench, &done), before);
    assert!(offer(&bench, "tyres-and-chain").jobs.iter().all(|job| job.state == OfferState::InPlan));
}

#[test]
fn what_cannot_be_added_is_refused_at_its_field_in_words() {
    let mut none = Bench::in_memory().unwrap();
    assert!(act(&mut none, package("tyres-and-chain", &[]), SATURDAY).is_err(), "no bike is open");
    let mut bench = twin_drum();
    let mut refused = |command| {
        let refusal = act(&mut bench, command, SATURDAY).unwrap_err();
        (refusal.field.unwrap(), refusal.message.english())
    };
    let (field, said) = refused(package("nothing", &[]));
    assert!(field == "packages" && said.contains("package of ready-made jobs"), "{said}");
    let (field, said) = refused(package("tyres-and-chain", &["seat"]));
    assert!(field == "leaveOut" && said.contains("job of this package"), "{said}");
    let all = ["spokes-true", "wheel-bearings", "front-tyre-tube", "rear-tyre-tube", "chain-sprockets"];
    let (field, said) = refused(package("tyres-and-chain", &all));
    assert!(field == "leaveOut" && said.contains("left out"), "{said}");
    act(&mut bench, package("tyres-and-chain", &[]), SATURDAY).unwrap();
    let refusal = act(&mut bench, package("tyres-and-chain", &[]), SATURDAY).unwrap_err();
    assert!(refusal.field.as_deref() == Some("packages") && refusal.message.english().contains("in the plan already"));
}

#[test]
fn jobs_find_their_place_by_kind_of_work_whichever_comes_first() {
    for first in ["charging-check", "oil-filter"] {
        let mut bench = twin_drum();
        add(&mut bench, first);
        let second = if first == "oil-filter" { "charging-check" } else { "oil-filter" };
        let said: Vec<String> = add(&mut bench, second).notes.iter().map(English::english).collect();
        assert_eq!(said[0], "“Check the charging” now follows Change oil and filter.");
        let plan = planned(&bench);
        assert_eq!(plan["charging-check"].1.after, std::slice::from_ref(&plan["oil-filter"].0));
    }
    // A package later finds its place before a job that is there, and the outcome says so.
    let mut bench = twin_drum();
    add(&mut bench, "first-ride");
    let said = act(&mut bench, package("tyres-and-chain", &[]), SATURDAY).unwrap().notes;
    assert!(said[0].english().starts_with("“First ride, off the road” now follows "), "{said:?}");
    let plan = planned(&bench);
    assert!(plan["first-ride"].1.after.contains(&plan["front-tyre-tube"].0));
}

#[test]
fn an_order_that_the_owner_turned_round_stays() {
    let mut bench = twin_drum();
    let drain = add(&mut bench, "tank-drain").made.unwrap();
    let paint = add(&mut bench, "tank-paint").made.unwrap();
    let free = Job { after: Vec::new(), ..job(&bench, &paint) };
    act(&mut bench, ChangeJob { id: paint.clone(), job: free }, SATURDAY).unwrap();
    let turned = Job { after: vec![paint.clone()], ..job(&bench, &drain) };
    act(&mut bench, ChangeJob { id: drain.clone(), job: turned }, SATURDAY).unwrap();
    let reline = add(&mut bench, "tank-reline").made.unwrap();
    assert!(job(&bench, &paint).after.is_empty(), "it comes before the tank is drained, as the owner wants it");
    assert_eq!(job(&bench, &reline).after, [drain]);
}

#[test]
fn several_packages_come_together_each_job_once_and_one_undo_takes_all_of_them_back() {
    let mut bench = twin_drum();
    let packages = vec!["brakes-all-round".to_owned(), "stood-for-years".to_owned(), "tyres-and-chain".to_owned()];
    let outcome = act(&mut bench, AddPackages { packages: packages.clone(), leave_out: None }, SATURDAY).unwrap();
    let rows = bench.plan(&PlanAsk::default(), &at(SATURDAY)).unwrap().rows;
    assert_eq!(rows.len(), planned(&bench).len(), "no job stands twice");
    for id in &packages {
        assert!(offer(&bench, id).jobs.iter().all(|job| job.state != OfferState::Offered), "{id}");
    }
    act(&mut bench, Undo { batch: outcome.batch }, SATURDAY).unwrap();
    assert!(planned(&bench).is_empty());
    let none = AddPackages { packages: Vec::new(), leave_out: None };
    assert_eq!(act(&mut bench, none, SATURDAY).unwrap_err().field.as_deref(), Some("packages"));
}
