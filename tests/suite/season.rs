//! The demo bike over some weeks, the clock moved on: a wet coat, a recoat window that closes, a late parcel, a cold week.
//! Every date and reason is worked out here again, by hand or from the facts.

use layshaft_core::coating::ProcessState;
use layshaft_core::plan::{PlanRow, PlanSheet, Supposition};
use layshaft_core::record::{Climate, Place};
use layshaft_door::Bench;
use layshaft_door::command::{DescribePlace, LayCoat, LoadDemo, NoteClimate, SandCoat, StartProcess};
use layshaft_door::query::{BareAsk, PlanAsk};

use crate::{HOUR, SATURDAY, act, at};

const DAY: i64 = 24 * HOUR;

fn demo() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo {}, SATURDAY).unwrap();
    bench
}

fn plan(bench: &Bench, now_ms: i64) -> PlanSheet {
    bench.plan(&PlanAsk::default(), &at(now_ms)).unwrap()
}

fn row<'a>(sheet: &'a PlanSheet, job: &str) -> &'a PlanRow {
    sheet.rows.iter().find(|row| row.job == job).unwrap()
}

fn begins(sheet: &PlanSheet, job: &str) -> i64 {
    row(sheet, job).work.first().unwrap().from_ms
}

#[test]
fn what_follows_a_wet_coat_waits_for_its_cure_and_a_cold_week_moves_both() {
    let mut bench = demo();
    let sheet = plan(&bench, SATURDAY);
    assert_eq!(sheet.rows.len(), 60);
    let cured_ms = row(&sheet, "tank-reline").wait_until_ms.unwrap();
    // 96 h of full cure at 20 °C, of which 26 h have passed in a garage at about 12 °C: later than by the wall clock.
    assert!(cured_ms > SATURDAY + (96 - 26) * HOUR, "{}", (cured_ms - SATURDAY) / HOUR);
    assert!(begins(&sheet, "tank-primer") >= cured_ms, "nothing is painted over a liner that still cures");
    assert!(row(&sheet, "tank-primer").blocked_by[0].contains("tank liner cures"));
    // A week at 6 °C: the cure runs at less than half the speed, and what follows with it.
    let cold = Place { night_celsius: Some(6.0), day_celsius: Some(6.0), humidity: Some(60.0) };
    act(&mut bench, DescribePlace { place: cold }, SATURDAY).unwrap();
    act(&mut bench, NoteClimate { climate: Climate { from_ms: 0, celsius: 6.0, humidity: Some(60.0) } }, SATURDAY)
        .unwrap();
    let colder = plan(&bench, SATURDAY);
    let liner = bench.today(&Default::default(), &at(SATURDAY)).unwrap().cures[0].clone();
    match row(&colder, "tank-reline").wait_until_ms {
        Some(later_ms) => {
            assert!(later_ms > cured_ms + DAY, "{}", (later_ms - cured_ms) / HOUR);
            assert!(begins(&colder, "tank-primer") >= later_ms && !liner.stands_still);
        }
        None => assert!(colder.ready_ms.is_none() && liner.stands_still, "it stands still, and no date is made up"),
    }
}

#[test]
fn a_parcel_that_is_late_is_said_and_moves_what_needs_it() {
    let bench = demo();
    let before = plan(&bench, SATURDAY);
    let parts = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().parts;
    let expected =
        |id: &str| parts.iter().find(|each| each.id == id).and_then(|each| each.part.expected.clone()).unwrap();
    assert_eq!(expected("led-indicators"), "2026-04-02");
    assert!(!before.findings.iter().any(|finding| finding.code == "plan.part-late"));
    // Ten days on, and the sprockets that were expected on the 26th are not here.
    let late = SATURDAY + 10 * DAY;
    let after = plan(&bench, late);
    let finding =
        after.findings.iter().find(|each| each.code == "plan.part-late" && each.text.contains("Sprockets")).unwrap();
    assert!(finding.text.contains("Thu 26 Mar") && finding.text.contains("tomorrow"), "{}", finding.text);
    assert!(begins(&after, "sprockets") >= late, "{}", begins(&after, "sprockets"));
    // A week later still, supposed: the job moves at least behind the new day, and nothing is stored.
    let what_if = Supposition { part: Some("led-indicators".into()), days: Some(60), ..Supposition::default() };
    let supposed = bench.plan(&PlanAsk { what_if: Some(what_if), ..PlanAsk::default() }, &at(SATURDAY)).unwrap();
    let outcome = supposed.what_if.unwrap();
    assert!(outcome.later_hours.unwrap() > 0.0 && outcome.held_by.contains("LED indicators"), "{outcome:?}");
    assert_eq!(plan(&bench, SATURDAY), before);
}

#[test]
fn a_recoat_window_that_closed_changes_the_paint_job_to_sand_first() {
    let mut bench = demo();
    let plans = bench.products(&BareAsk {}, &at(SATURDAY)).unwrap().processes;
    let process = plans.into_iter().find(|plan| plan.title == "Side panel").unwrap();
    let panel = act(&mut bench, StartProcess { process }, SATURDAY).unwrap().made.unwrap();
    let lay = || LayCoat { process: panel.clone(), applied_ms: None, product: None, anyway: None };
    act(&mut bench, lay(), SATURDAY).unwrap();
    let state = |bench: &Bench, now_ms: i64| {
        let running = bench.today(&Default::default(), &at(now_ms)).unwrap().processes;
        running.into_iter().next().unwrap()
    };
    let wet = state(&bench, SATURDAY);
    assert_eq!(wet.state, ProcessState::TooSoon);
    let opens_ms = wet.steps.iter().find(|step| step.next).and_then(|step| step.from_ms).unwrap();
    assert_eq!(state(&bench, opens_ms).state, ProcessState::Open);
    let closed = SATURDAY + 10 * DAY;
    assert_eq!(state(&bench, closed).state, ProcessState::SandFirst);
    assert!(act(&mut bench, lay(), closed).unwrap_err().message.contains("sand it"));
    act(&mut bench, SandCoat { process: panel.clone() }, closed).unwrap();
    act(&mut bench, lay(), closed).unwrap();
    assert_eq!(state(&bench, closed).state, ProcessState::TooSoon);
}

#[test]
fn the_odds_stand_beside_the_date_and_the_same_bike_gives_the_same_odds() {
    let bench = demo();
    let ask = PlanAsk { how_sure: Some(true), ..PlanAsk::default() };
    let sheet = bench.plan(&ask, &at(SATURDAY)).unwrap();
    assert!(sheet.ready_ms.is_some(), "{} {:#?}", sheet.held_by, sheet.findings);
    let odds = sheet.odds.clone().unwrap();
    assert!(odds.likely_ms.unwrap() <= odds.safe_ms.unwrap());
    assert!(odds.safe_ms.unwrap() > sheet.ready_ms.unwrap(), "parcels and work that vary rarely all come early");
    assert!(sheet.bound_ms.unwrap() <= sheet.ready_ms.unwrap());
    // What is wanted and not ordered is listed with its last day; the slower parcel first.
    assert_eq!(sheet.order_first.iter().map(|each| each.part.as_str()).collect::<Vec<_>>().len(), 2);
    assert!(sheet.offers.iter().any(|offer| offer.supposed.later_hours.is_some_and(|hours| hours > 0.0)));
    assert_eq!(bench.plan(&ask, &at(SATURDAY)).unwrap(), sheet);
}
