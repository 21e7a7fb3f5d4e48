//! A paint job through the door: laid coat by coat, refused too soon, sanded when the window closed, taken back.

use layshaft_core::coating::{Hold, ProcessAnswer, ProcessAsk, ProcessState};
use layshaft_core::error::Code;
use layshaft_core::record::StayPlace;
use layshaft_door::Bench;
use layshaft_door::command::{
    AddReadyMade, DescribePlace, EndProcess, LayCoat, MoveCoat, SandCoat, StartBike, StartProcess, Undo,
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
