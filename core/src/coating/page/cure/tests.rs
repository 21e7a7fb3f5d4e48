//! The cure page, as a coat goes through its days.

use super::*;
use crate::error::{Code, Refusal};
use crate::ready_made::typical_product;
use crate::record::{Climate, Coat, Place};
use crate::time::Zone;

/// Saturday 4 April 2026, 10:00 UTC.
const NOW: i64 = 1_775_296_800_000;
const HOUR: i64 = 3_600_000;

fn moment(hours: f64) -> Moment {
    Moment { now_ms: NOW + (hours * HOUR as f64) as i64, zone: Zone::default() }
}

fn bike(product: &str, celsius: Option<f64>) -> Bike {
    let product = typical_product(product).unwrap();
    let coat = Coat { title: "Fuel tank, inside".to_owned(), product, applied_ms: NOW, ..Coat::default() };
    let mut bike =
        Bike { place: Place { night_celsius: celsius, day_celsius: celsius, humidity: Some(55.0) }, ..Bike::default() };
    bike.coats.insert("tank".to_owned(), coat);
    bike
}

fn of_coat() -> CureAsk {
    CureAsk { coat: Some("tank".to_owned()), ..CureAsk::default() }
}

fn codes(sheet: &CureAnswer) -> Vec<&str> {
    sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
}

fn finding(sheet: &CureAnswer, code: &str) -> String {
    sheet.findings.iter().find(|finding| finding.code.as_str() == code).unwrap().text.english()
}

#[test]
fn a_liner_at_13_degrees_says_how_long_the_can_means_and_how_long_it_takes_here() {
    let sheet = cure_answer(&bike("tank-liner", Some(13.0)), &of_coat(), &moment(96.0)).unwrap();
    // 96 h at a rate of exp(-5000 (1/286.15 - 1/293.15)) = 0.658864.
    assert!((sheet.equivalent_hours - 63.2509).abs() < 0.001, "{}", sheet.equivalent_hours);
    assert!((sheet.percent - 65.8864).abs() < 0.001);
    assert!((sheet.left_hours_here.unwrap() - (49.7054)).abs() < 0.01);
    assert_eq!(sheet.state, CureState::Handle);
    assert_eq!(sheet.reason, "33 h on the can at 20 °C; 50 h here at 13 °C.");
    assert!(finding(&sheet, "cure.hold").contains("Do not fill, close or paint the tank"));
}

#[test]
fn a_coat_goes_through_its_states_in_order_and_each_is_due_when_the_can_says_at_its_own_temperature() {
    use CureState::{Cured, Handle, RecoatOpen, RecoatShut, TouchDry, Wet};
    let bike = bike("colour", Some(20.0));
    let state = |hours| cure_answer(&bike, &of_coat(), &moment(hours)).unwrap().state;
    assert_eq!(
        [0.0, 0.4, 0.5, 1.0, 11.9, 12.0, 24.0, 167.9, 168.0].map(state),
        [Wet, Wet, TouchDry, RecoatOpen, RecoatOpen, Handle, RecoatShut, RecoatShut, Cured]
    );
    let sheet = cure_answer(&bike, &of_coat(), &moment(2.0)).unwrap();
    let due: Vec<_> = sheet.milestones.iter().map(|milestone| (milestone.state, milestone.due_ms)).collect();
    let after = |hours: f64| Some(NOW + (hours * HOUR as f64) as i64);
    assert_eq!(
        due,
        [
            (Wet, after(0.0)),
            (TouchDry, after(0.5)),
            (RecoatOpen, after(1.0)),
            (Handle, after(12.0)),
            (RecoatShut, after(24.0)),
            (Cured, after(168.0))
        ]
    );
}

#[test]
fn every_milestone_is_reached_at_the_moment_it_was_due_and_not_before() {
    let mut bike = bike("colour", None);
    bike.place = Place { night_celsius: Some(11.0), day_celsius: Some(19.0), humidity: None };
    let first = cure_answer(&bike, &of_coat(), &moment(0.0)).unwrap();
    for milestone in first.milestones.iter().filter(|milestone| milestone.state != CureState::Wet) {
        let reached = |late_ms| {
            let now = Moment { now_ms: milestone.due_ms.unwrap() + late_ms, zone: Zone::default() };
            let sheet = cure_answer(&bike, &of_coat(), &now).unwrap();
            sheet.milestones.iter().find(|later| later.state == milestone.state).unwrap().reached
        };
        assert!(reached(0) && !reached(-10), "{milestone:?}");
    }
}

#[test]
fn the_window_says_until_when_it_is_open_and_then_to_sand_first() {
    let bike = bike("colour", Some(20.0));
    let open = cure_answer(&bike, &of_coat(), &moment(2.0)).unwrap();
    assert_eq!(finding(&open, "window.open"), "May be recoated now, until Sun 5 Apr, 10:00; after that sand first.");
    let shut = cure_answer(&bike, &of_coat(), &moment(30.0)).unwrap();
    assert!(finding(&shut, "window.closed").contains("sand first"));
}

#[test]
fn a_coat_that_was_recoated_no_longer_speaks_of_its_window() {
    let mut bike = bike("colour", Some(20.0));
    bike.coats.get_mut("tank").unwrap().ended_ms = Some(NOW + 2 * HOUR);
    let sheet = cure_answer(&bike, &of_coat(), &moment(30.0)).unwrap();
    assert!(!codes(&sheet).contains(&"window.closed"));
}

#[test]
fn too_cold_stands_still_without_an_end_and_says_so() {
    let sheet = cure_answer(&bike("tank-liner", Some(6.0)), &of_coat(), &moment(48.0)).unwrap();
    assert!(sheet.stands_still && sheet.left_hours_here.is_none());
    assert_eq!(sheet.equivalent_hours, 0.0);
    assert!(codes(&sheet).contains(&"cold.stands-still"));
    assert_eq!(sheet.reason, "Stands still at 6 °C, the can asks for 10 °C; 96 h at 20 °C are left.");
    assert!(sheet.milestones.iter().skip(1).all(|milestone| milestone.due_ms.is_none()));
    assert_eq!(sheet.curve.len(), 41);
}

#[test]
fn a_place_whose_nights_are_too_cold_says_that_the_clock_stands_in_them() {
    let mut bike = bike("tank-liner", None);
    bike.place = Place { night_celsius: Some(7.0), day_celsius: Some(17.0), humidity: None };
    let at_noon = cure_answer(&bike, &of_coat(), &moment(4.0)).unwrap();
    assert!(codes(&at_noon).contains(&"cold.part-of-day") && !at_noon.stands_still);
    let at_night = cure_answer(&bike, &of_coat(), &moment(17.0)).unwrap();
    assert!(codes(&at_night).contains(&"cold.stands-still") && at_night.stands_still);
    assert!(at_night.reason.english().ends_with("here with the warmer hours to come."), "{}", at_night.reason);
    bike.place.night_celsius = Some(11.0);
    let mild = cure_answer(&bike, &of_coat(), &moment(4.0)).unwrap();
    assert!(!codes(&mild).contains(&"cold.part-of-day"));
}

#[test]
fn a_product_to_try_is_put_on_now_and_checked_against_dew_and_humidity() {
    let product = typical_product("clear");
    let damp = CureAsk {
        product: product.clone(),
        celsius: Some(15.0),
        humidity: Some(85.0),
        surface_celsius: Some(14.0),
        ..CureAsk::default()
    };
    let sheet = cure_answer(&Bike::default(), &damp, &moment(0.0)).unwrap();
    assert_eq!((sheet.applied_ms, sheet.state, sheet.percent), (NOW, CureState::Wet, 0.0));
    assert!((sheet.dew_point_celsius.unwrap() - 12.497).abs() < 0.001);
    assert!(finding(&sheet, "dew.too-close").contains("only 1.5 K above"));
    assert!(finding(&sheet, "humidity.too-high").contains("at most 75 %"));
    assert!(!codes(&sheet).contains(&"climate.assumed"));

    let dry = CureAsk { humidity: Some(50.0), surface_celsius: None, ..damp.clone() };
    let sheet = cure_answer(&Bike::default(), &dry, &moment(0.0)).unwrap();
    assert!(!codes(&sheet).contains(&"dew.too-close") && !codes(&sheet).contains(&"humidity.too-high"));

    let unknown = CureAsk { product, ..CureAsk::default() };
    let sheet = cure_answer(&Bike::default(), &unknown, &moment(0.0)).unwrap();
    assert!(codes(&sheet).contains(&"climate.assumed") && codes(&sheet).contains(&"humidity.unknown"));
    assert!(sheet.dew_point_celsius.is_none());
    let text = finding(&sheet, "climate.assumed");
    assert!(text.contains("15 °C is assumed"), "{text}");
}

#[test]
fn a_temperature_to_try_moves_only_what_is_to_come() {
    let bike = bike("tank-liner", Some(12.0));
    let plain = cure_answer(&bike, &of_coat(), &moment(24.0)).unwrap();
    let warm = cure_answer(&bike, &CureAsk { celsius: Some(25.0), ..of_coat() }, &moment(24.0)).unwrap();
    assert_eq!(plain.equivalent_hours, warm.equivalent_hours);
    assert!(warm.left_hours_here < plain.left_hours_here);
    assert_eq!(warm.celsius_now, 25.0);
}

#[test]
fn the_curve_runs_from_the_coat_to_its_full_cure_and_never_falls() {
    let mut bike = bike("colour", None);
    bike.place = Place { night_celsius: Some(8.0), day_celsius: Some(22.0), humidity: None };
    let sheet = cure_answer(&bike, &of_coat(), &moment(20.0)).unwrap();
    let (first, last) = (&sheet.curve[0], &sheet.curve[40]);
    assert_eq!((first.at_ms, first.equivalent_hours), (NOW, 0.0));
    assert!((last.equivalent_hours - 168.0).abs() < 1e-6);
    assert!(sheet.curve.windows(2).all(|pair| pair[0].equivalent_hours <= pair[1].equivalent_hours));
}

#[test]
fn a_sheet_without_full_cure_runs_to_its_last_time_and_never_says_cured() {
    let mut bike = bike("colour", Some(20.0));
    bike.coats.get_mut("tank").unwrap().product.full_cure_hours = None;
    let sheet = cure_answer(&bike, &of_coat(), &moment(1000.0)).unwrap();
    assert_eq!((sheet.state, sheet.percent), (CureState::RecoatShut, 100.0));
    assert!(codes(&sheet).contains(&"cure.full-unknown"));
    assert!(!sheet.reason.english().contains("Fully cured"));
}

#[test]
fn what_the_can_does_not_say_is_assumed_cautiously_and_said() {
    let product = Product { name: "Old tin".to_owned(), full_cure_hours: Some(48.0), ..Product::default() };
    let ask = CureAsk { product: Some(product), celsius: Some(7.0), ..CureAsk::default() };
    let sheet = cure_answer(&Bike::default(), &ask, &moment(0.0)).unwrap();
    assert_eq!(sheet.at_celsius, 23.0);
    assert!(codes(&sheet).contains(&"cold.limit-unknown"));
    assert!(sheet.working.range.english().contains("5 000 K") && sheet.working.range.english().contains("23 °C"));
}

#[test]
fn running_cures_come_next_to_end_first_and_cured_ones_go_after_a_week_or_when_ended() {
    let mut bike = bike("tank-liner", Some(20.0));
    let gasket = Coat {
        title: "Crankcase".to_owned(),
        product: typical_product("gasket-silicone").unwrap(),
        applied_ms: NOW,
        ..Coat::default()
    };
    bike.coats.insert("case".to_owned(), gasket);
    let titles = |bike: &Bike, hours| -> Vec<String> {
        running_cures(bike, &moment(hours)).into_iter().map(|sheet| sheet.title).collect()
    };
    assert_eq!(titles(&bike, 1.0), ["Crankcase", "Fuel tank, inside"]);
    assert_eq!(titles(&bike, 24.0 + 168.0), ["Crankcase", "Fuel tank, inside"]);
    assert_eq!(titles(&bike, 24.0 + 168.1), ["Fuel tank, inside"]);
    bike.coats.get_mut("tank").unwrap().ended_ms = Some(NOW + HOUR);
    assert_eq!(titles(&bike, 2.0), ["Crankcase"]);
}

#[test]
fn what_cannot_be_answered_is_refused_at_the_field_to_mend() {
    let refusal = |ask: &CureAsk| {
        let refusal = Refusal::from(cure_answer(&bike("colour", None), ask, &moment(0.0)).unwrap_err());
        (refusal.code, refusal.field.unwrap_or_default())
    };
    let product = typical_product("colour");
    assert_eq!(refusal(&CureAsk::default()), (Code::Missing, "product".to_owned()));
    assert_eq!(refusal(&CureAsk { product: product.clone(), ..of_coat() }), (Code::Conflict, "product".to_owned()));
    let strange = CureAsk { coat: Some("moon".to_owned()), ..CureAsk::default() };
    assert_eq!(refusal(&strange), (Code::Unknown, String::new()));
    let empty =
        CureAsk { product: Some(Product { name: "Tin".to_owned(), ..Product::default() }), ..CureAsk::default() };
    assert_eq!(refusal(&empty), (Code::Missing, "fullCureHours".to_owned()));
    let tried = CureAsk { product, ..CureAsk::default() };
    assert_eq!(refusal(&CureAsk { celsius: Some(90.0), ..tried.clone() }), (Code::OutOfRange, "celsius".to_owned()));
    assert_eq!(
        refusal(&CureAsk { humidity: Some(f64::NAN), ..tried.clone() }),
        (Code::NotANumber, "humidity".to_owned())
    );
    assert_eq!(
        refusal(&CureAsk { surface_celsius: Some(-50.0), ..tried }),
        (Code::OutOfRange, "surfaceCelsius".to_owned())
    );
}

#[test]
fn readings_of_the_log_are_what_the_cure_runs_on() {
    let mut bike = bike("tank-liner", Some(12.0));
    bike.climate.push(Climate { from_ms: NOW, celsius: 20.0, humidity: Some(40.0) });
    // A day at 20 °C by the reading, then the usual 12 °C.
    let sheet = cure_answer(&bike, &of_coat(), &moment(48.0)).unwrap();
    assert!((sheet.equivalent_hours - (24.0 + 24.0 * 0.619_702)).abs() < 0.001, "{}", sheet.equivalent_hours);
}

#[test]
fn an_absurd_clock_is_answered_at_once() {
    let mut bike = bike("tank-liner", None);
    bike.place = Place { night_celsius: Some(8.0), day_celsius: Some(20.0), humidity: None };
    for now_ms in [i64::MIN, 0, i64::MAX] {
        let sheet = cure_answer(&bike, &of_coat(), &Moment { now_ms, zone: Zone::default() }).unwrap();
        assert!(sheet.percent >= 0.0 && sheet.percent <= 100.0);
    }
}

/// A log that a careful owner would have after half a year: a reading every six hours.
fn well_kept(bike: &mut Bike) {
    bike.place = Place { night_celsius: Some(4.0), day_celsius: Some(16.0), humidity: Some(70.0) };
    bike.climate = (0..720)
        .map(|step| Climate { from_ms: NOW - step * 6 * HOUR, celsius: 8.0 + (step % 7) as f64, humidity: None })
        .collect();
}

#[test]
fn a_long_log_and_a_coat_that_stands_still_are_walked_in_few_steps() {
    let mut bike = bike("tank-liner", None);
    well_kept(&mut bike);
    bike.place.day_celsius = Some(9.0);
    let climate = ClimateLog::of(&bike, &moment(0.0));
    let from_ms = NOW - 180 * 24 * HOUR;
    let spells = climate.spells(from_ms, horizon_ms(from_ms, &climate)).count();
    assert!(spells < 2 * 180 * 24, "{spells}");
    let sheet = cure_answer(&bike, &of_coat(), &moment(200.0)).unwrap();
    assert!(sheet.left_hours_here.is_none());
}
