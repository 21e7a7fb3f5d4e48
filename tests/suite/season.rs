//! The demo bike over some weeks, the clock moved on: a wet coat, a recoat window that closes, a late parcel, a cold week.
//! Every date and reason is worked out here again, by hand or from the facts.

use layshaft_core::coating::ProcessState;
use layshaft_core::plan::{PlanAnswer, PlanRow, Supposition};
use layshaft_core::record::Place;
use layshaft_door::Bench;
use layshaft_door::command::{DescribePlace, LayCoat, LoadDemo, NoteClimate, SandCoat, StartProcess};
use layshaft_door::query::{BareAsk, PlanAsk};

use crate::{English, HOUR, SATURDAY, act, at};

const DAY: i64 = 24 * HOUR;

fn demo() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    bench
}

fn plan(bench: &Bench, now_ms: i64) -> PlanAnswer {
    bench.plan(&PlanAsk::default(), &at(now_ms)).unwrap()
}

fn row<'a>(sheet: &'a PlanAnswer, job: &str) -> &'a PlanRow {
    sheet.rows.iter().find(|row| row.job == job).unwrap()
}

fn begins(sheet: &PlanAnswer, job: &str) -> i64 {
    row(sheet, job).work.first().unwrap().from_ms
}

#[test]
fn what_follows_a_wet_coat_waits_for_its_cure_without_a_date_in_the_cold_and_sooner_in_the_warm() {
    let mut bench = demo();
    let sheet = plan(&bench, SATURDAY);
    assert_eq!(sheet.rows.len(), 64);
    let cured_ms = row(&sheet, "tank-reline").wait_until_ms.unwrap();
    // 96 h of full cure at 20 °C, of which 26 h have passed in a garage at about 12 °C: later than by the wall clock.
    assert!(cured_ms > SATURDAY + (96 - 26) * HOUR, "{}", (cured_ms - SATURDAY) / HOUR);
    assert!(begins(&sheet, "tank-primer") >= cured_ms, "nothing is painted over a liner that still cures");
    assert!(row(&sheet, "tank-primer").blocked_by[0].english().contains("tank liner cures"));
    let mut keep = |celsius: f64, now_ms: i64| {
        let place = Place { night_celsius: Some(celsius), day_celsius: Some(celsius), humidity: Some(60.0) };
        act(&mut bench, DescribePlace { place }, now_ms).unwrap();
        let note = NoteClimate { celsius, humidity: Some(60.0), from_ms: None };
        act(&mut bench, note, now_ms).unwrap();
        let liner = bench.today(&Default::default(), &at(now_ms)).unwrap().cures[0].clone();
        (plan(&bench, now_ms), liner)
    };
    // The liner wants 10 °C: at 6 °C it stands still, and no date is made up for it, for what follows, or for the bike.
    let (cold, liner) = keep(6.0, SATURDAY);
    assert!(liner.stands_still);
    assert_eq!(row(&cold, "tank-reline").wait_until_ms, None);
    assert!(row(&cold, "tank-primer").work.is_empty() && cold.ready_ms.is_none());
    assert!(cold.held_by.english().contains("tank liner cures"), "{}", cold.held_by);
    // An hour later it is 18 °C: it goes on, faster than in the garage as it was, and what follows keeps behind it.
    let (warm, liner) = keep(18.0, SATURDAY + HOUR);
    let sooner_ms = row(&warm, "tank-reline").wait_until_ms.unwrap();
    assert!(!liner.stands_still && sooner_ms < cured_ms, "{}", (sooner_ms - cured_ms) / HOUR);
    assert!(begins(&warm, "tank-primer") >= sooner_ms && warm.ready_ms.is_some());
}

#[test]
fn a_parcel_that_is_late_is_said_and_moves_what_needs_it() {
    let bench = demo();
    let before = plan(&bench, SATURDAY);
    let parts = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().parts;
    let expected =
        |id: &str| parts.iter().find(|each| each.id == id).and_then(|each| each.part.expected.clone()).unwrap();
    assert_eq!(expected("led-indicators"), "2026-04-02");
    assert!(!before.findings.iter().any(|finding| finding.code.as_str() == "plan.part-late"));
    // Ten days on, and the sprockets that were expected on the 26th are not here.
    let late = SATURDAY + 10 * DAY;
    let after = plan(&bench, late);
    let finding = after
        .findings
        .iter()
        .find(|each| each.code.as_str() == "plan.part-late" && each.text.english().contains("Sprockets"))
        .unwrap();
    assert!(
        finding.text.english().contains("Thu 26 Mar") && finding.text.english().contains("tomorrow"),
        "{}",
        finding.text
    );
    assert!(begins(&after, "sprockets") >= late, "{}", begins(&after, "sprockets"));
    // A week later still, supposed: the job moves at least behind the new day, and nothing is stored.
    let what_if = Supposition { part: Some("led-indicators".into()), days: Some(60), ..Supposition::default() };
    let supposed = bench.plan(&PlanAsk { what_if: Some(what_if), ..PlanAsk::default() }, &at(SATURDAY)).unwrap();
    let outcome = supposed.what_if.unwrap();
    assert!(outcome.later_hours.unwrap() > 0.0 && outcome.held_by.english().contains("LED indicators"), "{outcome:?}");
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
    assert!(act(&mut bench, lay(), closed).unwrap_err().message.english().contains("sand it"));
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
