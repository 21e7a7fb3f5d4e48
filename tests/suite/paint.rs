//! A paint job through the door: laid coat by coat, refused too soon, sanded when the window closed, taken back.

use layshaft_core::coating::{Hold, ProcessAnswer, ProcessAsk, ProcessState};
use layshaft_core::error::Code;
use layshaft_core::record::StayPlace;
use layshaft_door::Bench;
use layshaft_door::command::{
    AddReadyMade, BringBack, DescribePlace, EndProcess, FinishJob, LayCoat, MoveCoat, PutJobAway, SandCoat, StartBike,
    StartClock, StartCure, StartProcess, Undo,
};
use layshaft_door::query::{BareAsk, IdAsk};

use crate::{English, HOUR, SATURDAY, act, at};

fn bench() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    let identity =
        layshaft_core::record::Identity { name: "Orrin Tern 175".into(), invented: true, ..Default::default() };
    act(&mut bench, StartBike { identity }, SATURDAY).unwrap();
    let place =
        layshaft_core::record::Place { night_celsius: Some(20.0), day_celsius: Some(20.0), humidity: Some(50.0) };
    act(&mut bench, DescribePlace { place }, SATURDAY).unwrap();
    bench
}

fn start(bench: &mut Bench, title: &str) -> String {
    let plans = bench.products(&BareAsk {}, &at(SATURDAY)).unwrap().processes;
    let process = plans.into_iter().find(|plan| plan.title == title).unwrap();
    act(bench, StartProcess { process }, SATURDAY).unwrap().made.unwrap()
}

fn sheet(bench: &Bench, process: &str, now_ms: i64) -> ProcessAnswer {
    bench.process(&ProcessAsk { process: Some(process.into()), plan: None }, &at(now_ms)).unwrap()
}

fn lay(process: &str) -> LayCoat {
    LayCoat { process: process.into(), applied_ms: None, product: None, anyway: None }
}

#[test]
fn a_tank_goes_from_primer_to_the_last_clear_and_everything_waits_for_it() {
    let mut bench = bench();
    let tank = start(&mut bench, "Fuel tank, outside");
    let mut now = SATURDAY;
    while let Some(next) = sheet(&bench, &tank, now).steps.iter().find(|step| step.next).cloned() {
        now = next.from_ms.unwrap_or(now).max(now);
        act(&mut bench, lay(&tank), now).unwrap();
    }
    let all_on = sheet(&bench, &tank, now);
    assert_eq!(all_on.state, ProcessState::AllOn);
    assert!(all_on.on_hold.iter().any(|line| line.hold == Hold::Fuel && line.until_ms == all_on.cured_ms));
    // Only the topmost coat still has a running clock.
    let cures = bench.today(&Default::default(), &at(now)).unwrap().cures;
    assert_eq!(cures.len(), 1);
    assert!(act(&mut bench, lay(&tank), now + HOUR).unwrap_err().message.english().contains("on already"));
    assert_eq!(sheet(&bench, &tank, all_on.cured_ms.unwrap()).state, ProcessState::Cured);
}

#[test]
fn too_soon_is_refused_with_the_hour_from_which_it_may_and_writes_nothing() {
    let mut bench = bench();
    let panel = start(&mut bench, "Side panel");
    act(&mut bench, lay(&panel), SATURDAY).unwrap();
    let facts = bench.facts().count();
    let soon = act(&mut bench, lay(&panel), SATURDAY + HOUR / 2).unwrap_err();
    assert_eq!((soon.code, soon.field.as_deref()), (Code::Conflict, Some("appliedMs")));
    assert!(soon.message.english().contains("from Sat 21 Mar, 12:00"), "{}", soon.message);
    let before = LayCoat { applied_ms: Some(SATURDAY - HOUR), anyway: Some(true), ..lay(&panel) };
    assert!(act(&mut bench, before, SATURDAY + 2 * HOUR).is_err());
    assert_eq!(bench.facts().count(), facts);
    // What was done anyway can be told as it was.
    act(&mut bench, LayCoat { anyway: Some(true), ..lay(&panel) }, SATURDAY + HOUR / 2).unwrap();
    assert!(sheet(&bench, &panel, SATURDAY + HOUR).steps[1].laid_ms.is_some());
}

#[test]
fn in_cold_air_a_coat_is_refused_with_what_would_help_and_noted_when_it_went_on_all_the_same() {
    let mut bench = bench();
    let panel = start(&mut bench, "Side panel");
    let place = layshaft_core::record::Place { night_celsius: Some(8.0), day_celsius: Some(8.0), humidity: Some(50.0) };
    act(&mut bench, DescribePlace { place }, SATURDAY).unwrap();
    let facts = bench.facts().count();
    let cold = act(&mut bench, lay(&panel), SATURDAY).unwrap_err();
    assert_eq!(cold.code, Code::Conflict);
    assert!(
        cold.message.english().contains("8 °C here") && cold.message.english().contains("Warm it, or wait for warmth"),
        "{}",
        cold.message
    );
    assert_eq!(cold.message, sheet(&bench, &panel, SATURDAY).against[0].text);
    // Another can may bear the cold: the limit is that of the can that is used.
    let hardy = sheet(&bench, &panel, SATURDAY).process.steps[0].product.clone().unwrap();
    let hardy = layshaft_core::record::Product { lowest_celsius: Some(5.0), ..hardy };
    act(&mut bench, LayCoat { product: Some(hardy), ..lay(&panel) }, SATURDAY).unwrap();
    let on = bench.facts().count();
    assert!(on > facts);
    let other = start(&mut bench, "Side panel");
    let facts = bench.facts().count();
    assert!(act(&mut bench, lay(&other), SATURDAY).is_err());
    assert_eq!(bench.facts().count(), facts);
    act(&mut bench, LayCoat { anyway: Some(true), ..lay(&other) }, SATURDAY).unwrap();
    assert!(sheet(&bench, &other, SATURDAY).steps[0].laid_ms.is_some());
}

#[test]
fn a_window_that_closed_unused_is_sanded_before_the_next_coat_and_undo_gives_it_back() {
    let mut bench = bench();
    let panel = start(&mut bench, "Side panel");
    act(&mut bench, lay(&panel), SATURDAY).unwrap();
    let late = SATURDAY + 30 * HOUR;
    let refusal = act(&mut bench, lay(&panel), late).unwrap_err();
    assert!(refusal.message.english().contains("sand it"), "{}", refusal.message);
    act(&mut bench, SandCoat { process: panel.clone() }, late).unwrap();
    assert_eq!(sheet(&bench, &panel, late).state, ProcessState::Sanded);
    let laid = act(&mut bench, lay(&panel), late).unwrap();
    assert_eq!(sheet(&bench, &panel, late).state, ProcessState::TooSoon);
    act(&mut bench, Undo { batch: laid.batch }, late).unwrap();
    assert_eq!(sheet(&bench, &panel, late).state, ProcessState::Sanded);
    assert_eq!(
        bench.bike(&BareAsk {}, &at(late)).unwrap().coats.iter().filter(|card| card.coat.ended_ms.is_none()).count(),
        1
    );
    act(&mut bench, EndProcess { process: panel }, late).unwrap();
    assert!(bench.today(&Default::default(), &at(late)).unwrap().processes.is_empty());
}

#[test]
fn a_coat_that_is_carried_into_the_house_cures_there_and_the_next_one_begins_there() {
    let mut bench = bench();
    let place = layshaft_core::record::Place { night_celsius: Some(5.0), day_celsius: Some(5.0), humidity: None };
    act(&mut bench, DescribePlace { place }, SATURDAY).unwrap();
    let panel = start(&mut bench, "Side panel");
    let coat = act(&mut bench, LayCoat { anyway: Some(true), ..lay(&panel) }, SATURDAY).unwrap().made.unwrap();
    let day = SATURDAY + 24 * HOUR;
    assert_eq!(sheet(&bench, &panel, day).state, ProcessState::TooSoon);
    let to = |place| MoveCoat { id: coat.clone(), place, celsius: None, from_ms: None };
    let refusal = act(&mut bench, to(StayPlace::HeatLamp), day).unwrap_err();
    assert_eq!((refusal.code, refusal.field.as_deref()), (Code::Missing, Some("celsius")));
    act(&mut bench, to(StayPlace::House), day).unwrap();
    assert_eq!(sheet(&bench, &panel, day + 2 * HOUR).state, ProcessState::Open);
    act(&mut bench, lay(&panel), day + 2 * HOUR).unwrap();
    assert_eq!(sheet(&bench, &panel, day + 4 * HOUR).state, ProcessState::Open);
}

#[test]
fn ready_made_jobs_find_their_place_among_those_that_are_there() {
    let mut bench = bench();
    let mut add =
        |mark: &str| act(&mut bench, AddReadyMade { ready_made: mark.into() }, SATURDAY).unwrap().made.unwrap();
    let (paint, drain, reline) = (add("tank-paint"), add("tank-drain"), add("tank-reline"));
    let sheet = |id: &str| bench.job(&IdAsk { id: id.to_owned() }, &at(SATURDAY)).unwrap();
    assert_eq!(sheet(&reline).job.after, std::slice::from_ref(&drain));
    let mut before_paint = sheet(&paint).job.after;
    before_paint.sort();
    let mut wanted = vec![drain, reline];
    wanted.sort();
    assert_eq!(before_paint, wanted);
    assert!(!sheet(&paint).tools.is_empty() && !sheet(&paint).supplies.is_empty());
}

/// The coats of a job as its page shows them.
fn coats_of(bench: &Bench, job: &str, now_ms: i64) -> ProcessAnswer {
    bench.job(&IdAsk { id: job.to_owned() }, &at(now_ms)).unwrap().process.unwrap()
}

#[test]
fn a_ready_made_paint_job_brings_its_coats_and_the_plan_waits_for_the_last_of_them() {
    let mut bench = bench();
    let add = act(&mut bench, AddReadyMade { ready_made: "tank-paint".into() }, SATURDAY).unwrap();
    let job = add.made.unwrap();
    let coats = coats_of(&bench, &job, SATURDAY);
    assert_eq!((coats.state, coats.process.job.as_deref()), (ProcessState::Ready, Some(job.as_str())));
    assert_eq!(coats.process.title, "Fuel tank, no decals");
    // Nothing is on, so there is nothing to look after yet.
    assert!(bench.today(&Default::default(), &at(SATURDAY)).unwrap().processes.is_empty());
    let row = |bench: &Bench| {
        let plan = bench.plan(&Default::default(), &at(SATURDAY)).unwrap();
        plan.rows.into_iter().find(|row| row.job == job).unwrap()
    };
    let (work, over_ms) = (row(&bench).work, row(&bench).wait_until_ms.unwrap());
    // With one coat instead of six it is over sooner, and with none the usual wait of the job holds.
    let mut single = coats.process.clone();
    single.steps.drain(..5);
    let chosen = act(&mut bench, StartProcess { process: single }, SATURDAY).unwrap().made;
    assert_eq!(chosen, coats.id, "the coats of the job are changed, not joined by others");
    assert_eq!(row(&bench).work, work);
    let sooner_ms = row(&bench).wait_until_ms.unwrap();
    assert!(sooner_ms < over_ms, "{sooner_ms} {over_ms}");
    act(&mut bench, EndProcess { process: coats.id.unwrap() }, SATURDAY).unwrap();
    assert!(row(&bench).wait_until_ms.is_some());
    act(&mut bench, Undo { batch: add.batch }, SATURDAY).unwrap();
    assert!(bench.plan(&Default::default(), &at(SATURDAY)).unwrap().rows.is_empty());
}

#[test]
fn coats_that_are_under_way_are_not_exchanged_and_a_clock_beside_them_is_refused() {
    let mut bench = bench();
    let job = act(&mut bench, AddReadyMade { ready_made: "panel-paint".into() }, SATURDAY).unwrap().made.unwrap();
    let coats = coats_of(&bench, &job, SATURDAY);
    let id = coats.id.clone().unwrap();
    act(&mut bench, lay(&id), SATURDAY).unwrap();
    assert_eq!(bench.today(&Default::default(), &at(SATURDAY)).unwrap().processes.len(), 1);
    let facts = bench.facts().count();
    let exchanged = act(&mut bench, StartProcess { process: coats.process.clone() }, SATURDAY).unwrap_err();
    assert_eq!((exchanged.code, exchanged.field.as_deref()), (Code::Conflict, Some("job")));
    let product = coats.process.steps[0].product.clone().unwrap();
    let clock = StartCure { title: "Panel".into(), product: product.clone(), job: Some(job.clone()), applied_ms: None };
    let refused = act(&mut bench, clock, SATURDAY).unwrap_err();
    assert!(refused.message.english().contains("“First colour” is next"), "{}", refused.message);
    let start_clock = StartClock { product, title: None, started_ms: None, place: None, celsius: None };
    let finish = FinishJob { id: job.clone(), start_clock: Some(start_clock), ..Default::default() };
    assert!(act(&mut bench, finish, SATURDAY).is_err());
    assert_eq!(bench.facts().count(), facts);
    // Done with coats to come: what follows waits for the last of them all the same.
    act(&mut bench, FinishJob { id: job.clone(), ..Default::default() }, SATURDAY).unwrap();
    let row =
        bench.plan(&Default::default(), &at(SATURDAY)).unwrap().rows.into_iter().find(|row| row.job == job).unwrap();
    assert_eq!(row.wait_until_ms, sheet(&bench, &id, SATURDAY).cured_ms);
}

#[test]
fn coats_without_a_job_go_to_the_one_that_paints_such_a_part_or_bring_it_along() {
    let mut bench = bench();
    let plans = bench.products(&BareAsk {}, &at(SATURDAY)).unwrap().processes;
    let tank = || plans.iter().find(|plan| plan.title == "Fuel tank, outside").unwrap().clone();
    let first = act(&mut bench, StartProcess { process: tank() }, SATURDAY).unwrap();
    let jobs = |bench: &Bench| bench.plan(&Default::default(), &at(SATURDAY)).unwrap().rows;
    assert_eq!(jobs(&bench).len(), 1);
    assert!(
        first.notes.iter().any(|note| note.english().contains("“Paint a tank” is in the plan")),
        "{:?}",
        first.notes
    );
    let again = act(&mut bench, StartProcess { process: tank() }, SATURDAY).unwrap();
    assert_eq!((jobs(&bench).len(), &again.made), (1, &first.made));
    act(&mut bench, lay(&first.made.unwrap()), SATURDAY).unwrap();
    act(&mut bench, StartProcess { process: tank() }, SATURDAY).unwrap();
    assert_eq!(jobs(&bench).len(), 2, "a second tank is a job of its own");
    // Put away with its job, the coats hold nothing; brought back, they are there again.
    let open = jobs(&bench).into_iter().find(|row| coats_of(&bench, &row.job, SATURDAY).state == ProcessState::Ready);
    let open = open.unwrap().job;
    act(&mut bench, PutJobAway { id: open.clone() }, SATURDAY).unwrap();
    assert_eq!(bench.today(&Default::default(), &at(SATURDAY)).unwrap().processes.len(), 1);
    act(&mut bench, BringBack { record_kind: "job".into(), id: open.clone() }, SATURDAY).unwrap();
    assert_eq!(coats_of(&bench, &open, SATURDAY).state, ProcessState::Ready);
}
