//! What must never come too early, over all ready-made jobs, all products they lay, the fault tables and the demo bike.
//! The rules are common practice, no source; the maker's manual comes first.

use std::collections::BTreeMap;

use layshaft_core::coating::{process_plan, process_plans};
use layshaft_core::faults::{KNOWLEDGE, knowledge_case};
use layshaft_core::ready_made::{ReadyMade, WorkKind, last_steps, ready_made, ready_made_job, typical_product};
use layshaft_core::record::{Job, JobPlace, Place, ProductKind, WorkSpot};
use layshaft_door::Bench;
use layshaft_door::command::{AddReadyMade, DescribePlace, FinishJob, LoadDemo, StartBike, StartCure};
use layshaft_door::query::{CureAsk, IdAsk, PlanAsk};

use crate::{English, SATURDAY, act, at};

fn doing(kind: WorkKind) -> Vec<ReadyMade> {
    ready_made().into_iter().filter(|ready| ready.work.contains(&kind)).collect()
}

fn marks(jobs: &[ReadyMade]) -> Vec<&str> {
    jobs.iter().map(|ready| ready.id.as_str()).collect()
}

fn follows(job: &ReadyMade, before: &str) {
    assert!(job.follows.iter().any(|mark| mark == before), "{} does not follow {before}", job.id);
}

#[test]
fn nothing_turns_an_engine_before_its_first_turning_over_by_hand() {
    let turning = doing(WorkKind::TurnsEngine);
    for known in ["valve-clearance", "ignition-timing", "starter-circuit"] {
        assert!(marks(&turning).contains(&known), "{known} turns the engine");
    }
    for job in &turning {
        follows(job, "first-turn");
    }
    let first = ready_made_job("first-turn").unwrap();
    assert_eq!(first.work, [WorkKind::FirstTurn]);
    follows(&first, "bore-oil");
    assert!(ready_made_job("bore-oil").unwrap().job.wait.is_some(), "the oil has to creep");
}

#[test]
fn nothing_runs_an_engine_before_its_first_start() {
    let running = doing(WorkKind::RunsEngine);
    for known in ["first-start", "timing-strobe", "charging-check", "first-ride", "pre-inspection"] {
        assert!(marks(&running).contains(&known), "{known} runs the engine");
    }
    for job in running.iter().filter(|job| job.id != "first-start") {
        follows(job, "first-start");
    }
}

#[test]
fn no_first_start_before_throttle_oil_and_fuel_line_and_none_before_the_first_turning_over() {
    let start = ready_made_job("first-start").unwrap();
    for before in [
        "first-turn",
        "cables",
        "control-levers",
        "grips",
        "battery-fit",
        "oil-filter",
        "gasket-reseal",
        "fuel-tap-lines",
        "carburettor-clean",
    ] {
        follows(&start, before);
    }
}

#[test]
fn no_ride_before_every_job_on_a_brake_and_the_first_start() {
    let ride = ready_made_job("first-ride").unwrap();
    follows(&ride, "first-start");
    for brake in doing(WorkKind::Brake) {
        follows(&ride, &brake.id);
    }
}

#[test]
fn no_fuel_comes_before_the_coats_of_the_tank() {
    let fuelling = doing(WorkKind::Fuel);
    for known in ["fuel-tap-lines", "leak-check", "first-start"] {
        assert!(marks(&fuelling).contains(&known), "{known} brings fuel");
    }
    for job in &fuelling {
        for coat in ["tank-reline", "tank-paint", "decals"] {
            follows(job, coat);
        }
    }
}

#[test]
fn every_job_on_a_brake_ends_with_the_test_standing_still_and_the_one_at_walking_pace() {
    let ending = last_steps(&[WorkKind::Brake]);
    assert_eq!(ending.len(), 2);
    assert!(ending.iter().all(|step| step.caution.is_some()));
    assert!(ending[0].clock_minutes.is_some(), "a brake is held for a while");
    let brakes = doing(WorkKind::Brake);
    let known = [
        "brake-bleed",
        "brake-hose",
        "cables",
        "caliper-rebuild",
        "chain-sprockets",
        "control-levers",
        "drum-shoes",
        "fork-seals",
        "front-tyre-tube",
        "head-bearings",
        "master-cylinder-swap",
        "rear-tyre-tube",
        "stop-lamp-switches",
        "swing-arm-bushes",
        "wheel-bearings",
    ];
    for mark in known {
        assert!(marks(&brakes).contains(&mark), "{mark} touches a brake");
    }
    for ready in ready_made() {
        let ends = ready.job.steps.ends_with(&ending);
        assert_eq!(ends, ready.work.contains(&WorkKind::Brake), "{}", ready.id);
        // Whoever buys brake fluid, shoes or a cylinder works on a brake.
        let supplies = ready.supplies.join(" ").to_lowercase();
        if ["brake", "shoes", "master cylinder"].iter().any(|word| supplies.contains(word)) {
            assert!(ends, "{} works on a brake", ready.id);
        }
    }
}

#[test]
fn whoever_lays_paint_keeps_place_spot_and_air_for_it_and_waits() {
    let sprayed = [ProductKind::Paint, ProductKind::Primer, ProductKind::Clear, ProductKind::RustConverter].as_slice();
    let mut seen = 0;
    for ReadyMade { id, job, lays, .. } in ready_made() {
        if job.place == Some(JobPlace::SprayPlace) {
            assert!(!lays.is_empty(), "{id} is done at the spray place and names no product");
        }
        if let Some(product) = job.wait.as_ref().and_then(|wait| wait.product.as_ref()) {
            assert!(lays.contains(product), "{id} waits for {product} and does not lay it");
        }
        for name in lays {
            let product = typical_product(&name).unwrap_or_else(|| panic!("{id} lays {name}, which has no sheet"));
            assert!(job.wait.is_some(), "{id} lays {name} and waits for nothing");
            if !sprayed.contains(&product.product) {
                continue;
            }
            seen += 1;
            assert_eq!(job.place, Some(JobPlace::SprayPlace), "{id}");
            let spots = job.spots.clone().unwrap_or_default();
            assert!(
                spots.iter().any(|taken| taken.spot == WorkSpot::SprayPlace && taken.hours_after > Some(0.0)),
                "{id}: wet paint keeps the spray place"
            );
            let air = job.air.clone().unwrap_or_default();
            assert!(air.lowest_celsius >= product.lowest_celsius, "{id} is colder than {name} allows");
            assert!(air.highest_humidity.is_some(), "{id}");
            assert!(
                product.highest_humidity.is_none_or(|most| air.highest_humidity <= Some(most)),
                "{id} is damper than {name} allows"
            );
        }
    }
    assert!(seen >= 4);
}

/// Adds a ready-made job to a bike in a place of even temperature, finishes it, and lays a product at the same moment.
fn wait_and_cure(mark: &str, name: &str, celsius: f64) -> (Option<i64>, Option<i64>) {
    let mut bench = Bench::in_memory().unwrap();
    act(
        &mut bench,
        StartBike { identity: layshaft_core::record::Identity { name: "Own".into(), ..Default::default() } },
        SATURDAY,
    )
    .unwrap();
    let place = Place { night_celsius: Some(celsius), day_celsius: Some(celsius), humidity: Some(50.0) };
    act(&mut bench, DescribePlace { place }, SATURDAY).unwrap();
    let job = act(&mut bench, AddReadyMade { ready_made: mark.into() }, SATURDAY).unwrap().made.unwrap();
    act(&mut bench, FinishJob { id: job.clone(), ..FinishJob::default() }, SATURDAY).unwrap();
    let plan = bench.plan(&PlanAsk::default(), &at(SATURDAY)).unwrap();
    let wait_ms = plan.rows.iter().find(|row| row.job == job).unwrap().wait_until_ms;
    let product = typical_product(name).unwrap();
    let cure = StartCure { title: "Part".into(), product, job: None, applied_ms: None };
    let coat = act(&mut bench, cure, SATURDAY).unwrap().made.unwrap();
    let ask = CureAsk { coat: Some(coat), ..CureAsk::default() };
    let sheet = bench.cure(&ask, &at(SATURDAY)).unwrap();
    (wait_ms, sheet.milestones.last().unwrap().due_ms)
}

#[test]
fn no_wait_of_a_job_ends_before_what_it_laid_releases_the_part() {
    let mut seen = 0;
    for ready in ready_made() {
        for name in &ready.lays {
            for celsius in [6.0, 11.0, 14.0, 20.0, 28.0] {
                let (wait_ms, cured_ms) = wait_and_cure(&ready.id, name, celsius);
                seen += 1;
                // Where a coat stands still in the cold, no end of the wait may be made up either.
                match (wait_ms, cured_ms) {
                    (Some(wait_ms), Some(cured_ms)) => {
                        assert!(wait_ms >= cured_ms, "{} at {celsius} °C ends before {name} is cured", ready.id);
                    }
                    (Some(_), None) => panic!("{} at {celsius} °C ends and {name} never cures", ready.id),
                    (None, _) => {}
                }
            }
        }
    }
    assert!(seen >= 5 * 9);
}

#[test]
fn whatever_coats_a_job_is_done_in_end_with_what_it_lays() {
    let in_coats: Vec<ReadyMade> = ready_made().into_iter().filter(|ready| !ready.coats.is_empty()).collect();
    assert!(in_coats.len() >= 4);
    for ReadyMade { id, lays, coats, .. } in in_coats {
        for plan in coats {
            let process = process_plan(&plan).unwrap_or_else(|| panic!("{id} has no coats {plan}"));
            let top = process.steps.iter().rev().find_map(|step| step.product.as_ref()).unwrap();
            assert!(lays.contains(&top.name), "{id} in {plan} does not end with {}", top.name);
        }
    }
    // Every usual order of coats belongs to some job.
    let known: Vec<String> = ready_made().into_iter().flat_map(|ready| ready.coats).collect();
    assert_eq!(process_plans().len(), known.len());
}

#[test]
fn what_takes_a_night_is_a_wait_and_not_a_sentence() {
    for ReadyMade { id, job, .. } in ready_made() {
        for step in &job.steps {
            let text = step.text.to_lowercase();
            let night = ["over night", "overnight", "for a night", "in the morning", "tomorrow", "next day"];
            assert!(!night.iter().any(|word| text.contains(word)), "{id}: {}", step.text);
        }
    }
    for waiting in ["bore-oil", "soak-fasteners", "tank-derust", "leak-check"] {
        let wait = ready_made_job(waiting).unwrap().job.wait.unwrap();
        assert!(wait.hours.is_some_and(|hours| hours >= 12.0), "{waiting}");
    }
}

#[test]
fn no_check_of_the_fault_tables_rides_and_what_turns_or_runs_the_engine_says_what_can_hurt() {
    for mark in KNOWLEDGE {
        for check in knowledge_case(mark).unwrap().checks {
            let told: Vec<String> = [check.label.english()]
                .into_iter()
                .chain(check.outcomes.iter().map(|each| each.label.english()))
                .collect();
            let words: Vec<String> = told
                .join(" ")
                .to_lowercase()
                .split(|letter: char| !letter.is_alphabetic())
                .map(str::to_owned)
                .collect();
            for riding in ["ride", "riding", "rides", "road", "km"] {
                assert!(!words.iter().any(|word| word == riding), "{mark}, {}: {}", check.id, check.label.english());
            }
            let turns = words.windows(2).any(|two| two[0] == "engine" && two[1] == "running")
                || ["run", "idle", "rpm"].iter().any(|word| words.iter().any(|each| each == word));
            // “RUN” is also a position of the stop switch.
            if turns && check.id != "stop-switch" {
                let caution = check.caution.map(|caution| caution.english()).unwrap_or_default().to_lowercase();
                assert!(caution.contains("outdoors"), "{mark}, {}: {caution}", check.id);
            }
        }
    }
    let start = knowledge_case("turns-but-does-not-start").unwrap();
    assert!(start.check("float-bowl").unwrap().covers.is_empty(), "fuel flows only with the tank on");
    assert!(start.check("compression-gauge").unwrap().caution.is_some());
}

fn demo_jobs() -> BTreeMap<String, Job> {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let rows = bench.plan(&PlanAsk::default(), &at(SATURDAY)).unwrap().rows;
    let job = |id: String| {
        let job = bench.job(&IdAsk { id: id.clone() }, &at(SATURDAY)).unwrap().job;
        (id, job)
    };
    rows.into_iter().map(|row| job(row.job)).collect()
}

/// Everything that comes before a job, near or far.
fn all_before(jobs: &BTreeMap<String, Job>, id: &str) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let mut open = jobs[id].after.clone();
    while let Some(next) = open.pop() {
        if !found.contains(&next) {
            open.extend(jobs[&next].after.clone());
            found.push(next);
        }
    }
    found
}

#[test]
fn the_demo_bike_keeps_the_same_order() {
    let jobs = demo_jobs();
    let kinds =
        |job: &Job| job.ready_made.as_deref().and_then(ready_made_job).map(|ready| ready.work).unwrap_or_default();
    for (id, job) in &jobs {
        let before = all_before(&jobs, id);
        let comes =
            |needed: &str| assert!(before.iter().any(|each| each == needed), "{id} does not come after {needed}");
        let work = kinds(job);
        if work.contains(&WorkKind::TurnsEngine) || id == "first-start" {
            comes("first-turn");
        }
        if work.contains(&WorkKind::RunsEngine) && id != "first-start" {
            comes("first-start");
        }
        if work.contains(&WorkKind::Fuel) {
            comes("decals");
            comes("tank-reline");
        }
    }
    let start = all_before(&jobs, "first-start");
    for needed in ["cables", "levers", "grips", "battery-fit", "oil", "reseal", "tap", "carburettor", "refit-tank"] {
        assert!(start.iter().any(|each| each == needed), "the first start does not come after {needed}");
    }
    let ending = last_steps(&[WorkKind::Brake]);
    let ride = all_before(&jobs, "first-ride");
    let mut own = 0;
    for (id, job) in &jobs {
        if job.steps.ends_with(&ending) {
            assert!(ride.contains(id), "the first ride does not come after {id}");
            own += usize::from(job.ready_made.is_none());
        }
    }
    for brake in ["front-brake", "front-tyre", "rear-tyre", "rear-shoes", "sprockets"] {
        assert!(jobs[brake].steps.ends_with(&ending), "{brake} does not end with the tests of a brake");
        own -= 1;
    }
    assert_eq!(own, 0);
}
