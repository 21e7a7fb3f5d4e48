//! A paint job goes through its coats.

use super::*;
use crate::coating::judge::Hold;
use crate::coating::plans::process_plans;
use crate::error::{Code, Refusal};
use crate::quantity::Finding;
use crate::ready_made::typical_product;
use crate::record::Stay;
use crate::record::{Climate, Coat, Job, PaintedPart, Place, ProcessStep, PutOn, StayPlace, Surface};
use crate::time::Zone;

/// Saturday 4 April 2026, 10:00 UTC.
const NOW: i64 = 1_775_296_800_000;
const HOUR: i64 = 3_600_000;

fn at(hours: f64) -> Moment {
    Moment { now_ms: NOW + (hours * HOUR as f64) as i64, zone: Zone::default() }
}

fn step(name: &str, layer: Layer, product: Option<&str>) -> ProcessStep {
    let product = product.map(|id| typical_product(id).unwrap());
    ProcessStep { name: name.to_owned(), layer, product, done_ms: None }
}

/// Colour, clear, decal, clear at the temperature of the cans. Windows: colour 1 to 24 h, clear 1 to 24 h, handle 12 h.
fn tank() -> Process {
    let steps = vec![
        step("Colour", Layer::Colour, Some("colour")),
        step("Clear", Layer::Clear, Some("clear")),
        step("Decal", Layer::Decal, None),
        step("Last clear", Layer::Clear, Some("clear")),
    ];
    Process { title: "Tank".to_owned(), part: PaintedPart::Tank, steps, ..Process::default() }
}

fn bike() -> Bike {
    let place = Place { night_celsius: Some(20.0), day_celsius: Some(20.0), humidity: Some(50.0) };
    let mut bike = Bike { place, ..Bike::default() };
    bike.processes.insert("tank".to_owned(), tank());
    bike
}

fn lay(bike: &mut Bike, step: u32, hours: f64) {
    let product = bike.processes["tank"].steps[step as usize].product.clone();
    let Some(product) = product else {
        bike.processes.get_mut("tank").unwrap().steps[step as usize].done_ms = Some(at(hours).now_ms);
        return;
    };
    for coat in bike.coats.values_mut().filter(|coat| coat.ended_ms.is_none()) {
        coat.ended_ms = Some(at(hours).now_ms);
    }
    let coat = Coat {
        title: "Tank".to_owned(),
        product,
        applied_ms: at(hours).now_ms,
        process: Some("tank".to_owned()),
        step: Some(step),
        ..Coat::default()
    };
    bike.coats.insert(format!("coat-{step}"), coat);
}

fn sheet(bike: &Bike, hours: f64) -> ProcessAnswer {
    process_answer(bike, &ProcessAsk { process: Some("tank".to_owned()), plan: None }, &at(hours)).unwrap()
}

fn hours_of(at_ms: Option<i64>) -> Option<f64> {
    at_ms.map(|at_ms| (at_ms - NOW) as f64 / HOUR as f64)
}

#[test]
fn before_anything_is_on_the_whole_job_is_foreseen_as_early_as_each_coat_may() {
    let sheet = sheet(&bike(), 0.0);
    assert_eq!((sheet.state, sheet.sentence.english().as_str()), (ProcessState::Ready, "Begin with “Colour”."));
    let windows: Vec<_> = sheet.steps.iter().map(|step| (hours_of(step.from_ms), hours_of(step.until_ms))).collect();
    // Clear an hour after the colour; the decal when the clear may be handled; the last clear right after the decal.
    assert_eq!(windows, [(None, None), (Some(1.0), Some(24.0)), (Some(13.0), Some(25.0)), (Some(13.0), Some(25.0)),]);
    assert_eq!(hours_of(sheet.cured_ms), Some(13.0 + 168.0));
    assert!(sheet.on_hold.is_empty());
    assert!(sheet.steps[0].next && !sheet.steps[1].next);
}

#[test]
fn each_window_says_what_the_can_names_and_what_it_comes_to_here() {
    let mut bike = bike();
    bike.place = Place { night_celsius: Some(12.0), day_celsius: Some(12.0), humidity: Some(50.0) };
    lay(&mut bike, 0, 0.0);
    let cool = sheet(&bike, 0.5);
    assert_eq!(cool.steps[0].reason, None);
    // An hour at 20 °C with Q = 5,000 K is exp(5000 (1/285.15 - 1/293.15)) = 1.614 h at 12 °C, 24 h are 38.7 h.
    assert_eq!(
        cool.steps[1].reason.as_ref().map(|said| said.english()).as_deref(),
        Some("“Colour” on the can at 20 °C: 1 h to 24 h; here at 12 °C: 1.6 h to 39 h.")
    );
    // A decal waits until the clear below bears a finger: 12 h on the can.
    assert!(
        cool.steps[2]
            .reason
            .as_ref()
            .map(|said| said.english())
            .as_deref()
            .unwrap()
            .starts_with("“Clear” on the can at 20 °C: 12 h to 24 h; here")
    );
    bike.place = Place { night_celsius: Some(2.0), day_celsius: Some(2.0), humidity: Some(50.0) };
    let cold = sheet(&bike, 0.5);
    assert!(
        cold.steps[1]
            .reason
            .as_ref()
            .map(|said| said.english())
            .as_deref()
            .unwrap()
            .contains("here it stands still, below 10 °C"),
        "{:?}",
        cold.steps[1]
    );
}

#[test]
fn a_coat_is_too_soon_then_open_and_then_the_window_shuts_and_the_process_changes() {
    let mut bike = bike();
    lay(&mut bike, 0, 0.0);
    let state = |bike: &Bike, hours| sheet(bike, hours).state;
    use ProcessState::{Open, SandFirst, Sanded, TooSoon};
    assert_eq!(
        [0.0, 0.99, 1.0, 23.9, 24.0].map(|hours| state(&bike, hours)),
        [TooSoon, TooSoon, Open, Open, SandFirst]
    );
    assert_eq!(sheet(&bike, 2.0).sentence, "“Clear” now, until Sun 5 Apr, 10:00; after that sand first.");
    let shut = sheet(&bike, 30.0);
    assert_eq!(
        shut.sentence,
        "The window of “Colour” closed on Sun 5 Apr, 10:00 unused: sand it, wipe it, then “Clear”."
    );
    assert!(shut.findings.iter().any(|finding| finding.code.as_str() == "process.sand-first"));
    bike.processes.get_mut("tank").unwrap().sanded_ms = Some(at(31.0).now_ms);
    assert_eq!(state(&bike, 30.5), SandFirst);
    assert_eq!(state(&bike, 31.0), Sanded);
    lay(&mut bike, 1, 31.5);
    assert_eq!(state(&bike, 31.6), TooSoon);
    // The sanding was of the coat below, so it does not count for the next one.
    lay(&mut bike, 2, 44.0);
    assert_eq!(state(&bike, 60.0), SandFirst);
}

#[test]
fn a_decal_lies_between_clears_while_the_window_of_the_clear_below_runs_on() {
    let mut bike = bike();
    lay(&mut bike, 0, 0.0);
    lay(&mut bike, 1, 2.0);
    let wait = sheet(&bike, 4.0);
    assert_eq!((wait.state, hours_of(wait.steps[2].from_ms)), (ProcessState::TooSoon, Some(14.0)));
    assert_eq!(sheet(&bike, 14.0).state, ProcessState::Open);
    lay(&mut bike, 2, 15.0);
    let over = sheet(&bike, 16.0);
    assert_eq!((over.state, hours_of(over.steps[3].until_ms)), (ProcessState::Open, Some(26.0)));
    let late = sheet(&bike, 27.0);
    assert_eq!(late.state, ProcessState::SandFirst);
    let words = &late.findings.iter().find(|finding| finding.code.as_str() == "process.sand-first").unwrap().text;
    assert!(words.english().contains("never over it"), "{words}");
}

#[test]
fn what_waits_for_it_is_said_until_the_last_coat_is_cured() {
    let mut bike = bike();
    bike.processes.get_mut("tank").unwrap().job = Some("paint".to_owned());
    bike.jobs.insert(
        "fit".to_owned(),
        Job { title: "Fit the tank".to_owned(), after: vec!["paint".to_owned()], ..Job::default() },
    );
    for (number, hours) in [(0, 0.0), (1, 2.0), (2, 14.0), (3, 15.0)] {
        lay(&mut bike, number, hours);
    }
    let cures = sheet(&bike, 20.0);
    assert_eq!(cures.state, ProcessState::AllOn);
    let held: Vec<Hold> = cures.on_hold.iter().map(|line| line.hold).collect();
    assert_eq!(held, [Hold::Handle, Hold::Mount, Hold::Fuel, Hold::Ride]);
    assert_eq!(hours_of(cures.on_hold[0].until_ms), Some(27.0));
    assert!(cures.on_hold.iter().skip(1).all(|line| hours_of(line.until_ms) == Some(183.0)));
    assert_eq!(cures.jobs_waiting, ["Fit the tank"]);
    let done = sheet(&bike, 183.0);
    assert_eq!((done.state, done.on_hold.len(), done.jobs_waiting.len()), (ProcessState::Cured, 0, 0));
    assert_eq!(running_processes(&bike, &at(184.0)).len(), 1);
    assert!(running_processes(&bike, &at(183.0 + 169.0)).is_empty());
}

#[test]
fn the_last_coat_speaks_of_no_window() {
    let mut bike = bike();
    for (number, hours) in [(0, 0.0), (1, 2.0), (2, 14.0), (3, 15.0)] {
        lay(&mut bike, number, hours);
    }
    let cure = |hours| crate::coating::page::cure::running_cures(&bike, &at(hours)).remove(0);
    for hours in [17.0, 60.0] {
        assert!(cure(hours).findings.iter().all(|finding| !finding.code.as_str().starts_with("window.")));
    }
    assert_eq!(cure(17.0).process.as_deref(), Some("tank"));
}

#[test]
fn too_cold_the_next_coat_has_no_date_and_is_warned_of_before_it_goes_on() {
    let mut bike = bike();
    bike.place = Place { night_celsius: Some(6.0), day_celsius: Some(6.0), humidity: Some(90.0) };
    lay(&mut bike, 0, 0.0);
    let cold = sheet(&bike, 30.0);
    assert_eq!((cold.state, cold.cured_ms), (ProcessState::TooSoon, None));
    assert!(cold.sentence.english().contains("stands still"), "{}", cold.sentence);
    assert_eq!(codes(&cold.against), ["cold.stands-still", "dew.too-close", "humidity.too-high"]);
    assert_eq!(codes(&cold.before), ["product.caution"]);
    // In the house it goes on.
    let coat = bike.coats.get_mut("coat-0").unwrap();
    coat.stays = vec![Stay { from_ms: at(30.0).now_ms, place: StayPlace::House, celsius: None }];
    assert_eq!(hours_of(sheet(&bike, 30.5).steps[1].from_ms), Some(31.0));
    let in_the_house = sheet(&bike, 31.0);
    assert_eq!((in_the_house.state, codes(&in_the_house.against)), (ProcessState::Open, vec![]));
}

fn codes(findings: &[Finding]) -> Vec<&str> {
    let mut codes: Vec<&str> = findings.iter().map(|finding| finding.code.as_str()).collect();
    codes.sort_unstable();
    codes
}

#[test]
fn what_speaks_against_the_air_stands_apart_and_the_sentence_does_not_say_now() {
    let mut bike = bike();
    let mut in_air = |celsius: f64, humidity: Option<f64>| {
        bike.place = Place { night_celsius: Some(celsius), day_celsius: Some(celsius), humidity };
        sheet(&bike, 0.0)
    };
    // The sheet of the colour asks for 10 °C and at most 80 %; 3 K above the dew point are asked of every coat.
    for (celsius, humidity, against) in [
        (20.0, Some(50.0), vec![]),
        (10.0, Some(50.0), vec![]),
        (9.9, Some(50.0), vec!["cold.stands-still"]),
        (8.0, Some(50.0), vec!["cold.stands-still"]),
        (20.0, Some(81.0), vec!["humidity.too-high"]),
        (20.0, Some(90.0), vec!["dew.too-close", "humidity.too-high"]),
        // Humidity that is not known is said, and does not stop anybody.
        (20.0, None, vec![]),
    ] {
        let sheet = in_air(celsius, humidity);
        assert_eq!(codes(&sheet.against), against, "{celsius} °C, {humidity:?} %");
        assert!(sheet.before.iter().any(|finding| finding.code.as_str() == "product.caution"));
        let begins = if against.is_empty() {
            "Begin with “Colour”."
        } else {
            "“Colour” comes first, but not in this air."
        };
        assert_eq!(sheet.sentence, begins);
    }
    let cold = in_air(8.0, Some(50.0));
    assert!(cold.against[0].text.english().contains("8 °C here, and the can asks for 10 °C or more. Warm it, or wait"));
}

#[test]
fn a_window_that_is_open_in_cold_air_is_not_now_and_an_unknown_limit_is_no_pass() {
    let mut bike = bike();
    lay(&mut bike, 0, 0.0);
    bike.climate = vec![Climate { from_ms: at(2.0).now_ms, celsius: 8.0, humidity: Some(50.0) }];
    let open = sheet(&bike, 2.5);
    assert_eq!((open.state, codes(&open.against)), (ProcessState::Open, vec!["cold.stands-still"]));
    assert!(open.sentence.english().ends_with("but not in this air."), "{}", open.sentence);
    assert!(!open.sentence.english().contains("now"), "{}", open.sentence);
    bike.processes.get_mut("tank").unwrap().steps[1].product.as_mut().unwrap().lowest_celsius = None;
    assert_eq!(codes(&sheet(&bike, 2.5).against), ["cold.limit-unknown"]);
}

#[test]
fn a_measured_tank_says_how_many_cans() {
    let surface = Surface::Shell { length_mm: 480.0, girth_mm: 620.0, both_sides: false, count: 1 };
    let plan = Process { surfaces: vec![surface], put_on: Some(PutOn::Aerosol), ..tank() };
    let sheet = process_answer(&Bike::default(), &ProcessAsk { process: None, plan: Some(plan) }, &at(0.0)).unwrap();
    assert!((sheet.square_metres.unwrap() - 0.2976).abs() < 1e-9);
    let clear = &sheet.paint[1];
    // 16 % solids at 15 µm: 10.67 m²/L; 0.2976 m² twice with 40 to 60 % lost.
    assert_eq!((clear.product.as_str(), clear.coats, clear.cans), ("Clear coat, spray can", 2, Some(1)));
    assert!((clear.spreading_rate - 10.6667).abs() < 0.0001);
    assert!((clear.least_ml - 93.0).abs() < 0.05 && (clear.most_ml - 139.5).abs() < 0.05, "{clear:?}");
}

#[test]
fn the_plans_to_start_from_run_to_their_end_without_sanding() {
    for plan in process_plans() {
        let mut bike = bike();
        bike.processes.insert("tank".to_owned(), plan.clone());
        let mut hours = 0.0;
        for number in 0..plan.steps.len() {
            let before = sheet(&bike, hours);
            hours = hours_of(before.steps[number].from_ms).unwrap_or(hours).max(hours);
            let ready = sheet(&bike, hours);
            assert!(
                matches!(ready.state, ProcessState::Ready | ProcessState::Open),
                "{}: {}",
                plan.title,
                ready.sentence
            );
            lay(&mut bike, u32::try_from(number).unwrap(), hours);
        }
        assert_eq!(sheet(&bike, hours).state, ProcessState::AllOn, "{}", plan.title);
    }
}

#[test]
fn plans_that_no_paint_job_can_follow_are_refused() {
    let refusal = |plan: Process| {
        let ask = ProcessAsk { process: None, plan: Some(plan) };
        let refusal = Refusal::from(process_answer(&Bike::default(), &ask, &at(0.0)).unwrap_err());
        (refusal.code, refusal.field.unwrap_or_default())
    };
    let with = |steps: Vec<ProcessStep>| Process { steps, ..tank() };
    let conflict = (Code::Conflict, "steps".to_owned());
    assert_eq!(refusal(with(Vec::new())), (Code::OutOfRange, "steps".to_owned()));
    assert_eq!(refusal(with(tank().steps.split_off(2))), conflict);
    assert_eq!(refusal(with(tank().steps.drain(..3).collect())), conflict);
    assert_eq!(refusal(with(vec![step("Colour", Layer::Colour, None)])), (Code::Missing, "product".to_owned()));
    let painted = step("Decal", Layer::Decal, Some("clear"));
    assert_eq!(refusal(with(vec![painted])), (Code::Conflict, "product".to_owned()));
    let mut shut = tank();
    shut.steps[0].product.as_mut().unwrap().recoat_to_hours = Some(0.5);
    assert_eq!(refusal(shut), (Code::Conflict, "recoatToHours".to_owned()));
    let neither = Refusal::from(process_answer(&bike(), &ProcessAsk::default(), &at(0.0)).unwrap_err());
    assert_eq!(neither.code, Code::Missing);
}
