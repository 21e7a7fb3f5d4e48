//! The load page and the derived quantities on a small single with invented lamps.

use super::*;
use crate::electrical::judge::derive_electrical;
use crate::error::{Code, Refusal};
use crate::quantity::{Judgement, Weight};
use crate::record::{Consumer, Drive, Indication, LightSource, Spec, Use};

fn slot(id: &str, watts: f64, count: u32, used: Use, source: LightSource) -> Slot {
    let consumer =
        Consumer { name: id.to_owned(), watts, count, used: Some(used), source: Some(source), ..Consumer::default() };
    Slot { id: id.to_owned(), consumer }
}

/// Filament lamps throughout, a battery of 9 Ah, an alternator of 126 W at 5,000 rpm.
fn spec() -> Spec {
    let lamp = |id, watts, count, used| slot(id, watts, count, used, LightSource::Filament);
    let supply = Supply {
        system_volts: Some(12.0),
        battery_ah: Some(9.0),
        output: vec![OutputPoint { rpm: 5000.0, watts: 126.0 }],
        idle_rpm: Some(1300.0),
        ..Supply::default()
    };
    let consumers = vec![
        lamp("headlamp", 35.0, 1, Use::Lights),
        lamp("tail", 5.0, 1, Use::Lights),
        lamp("speedometer", 1.7, 1, Use::Lights),
        lamp("stop", 21.0, 1, Use::Braking),
        lamp("indicators", 10.0, 2, Use::Indicating),
        lamp("pilot", 3.0, 1, Use::Indicating),
        slot("ignition", 12.0, 1, Use::Steady, LightSource::Electronics),
        slot("horn", 30.0, 1, Use::Moment, LightSource::Motor),
    ];
    let drive = Drive { rev_limit_rpm: Some(9500.0), ..Drive::default() };
    Spec { drive, supply, consumers, ..Spec::default() }
}

fn bike() -> Bike {
    Bike { standard: spec(), fitted: spec(), ..Bike::default() }
}

fn load(sheet: &LoadAnswer, state: RidingState) -> &StateLoad {
    sheet.loads.iter().find(|load| load.state == state).unwrap()
}

fn codes(findings: &[Finding]) -> Vec<&str> {
    findings.iter().map(|finding| finding.code.as_str()).collect()
}

/// Whether two numbers agree to a hundredth.
fn near(value: f64, wanted: f64) -> bool {
    (value - wanted).abs() < 0.01
}

#[test]
fn the_loads_are_the_sums_by_hand_at_the_voltage_of_each_state() {
    let sheet = load_answer(&bike(), &LoadAsk::default()).unwrap();
    // 41.7 W of lamps at 13.5 V, by P ~ V^1.55; the ignition box holds its power.
    let at = |volts: f64| (volts / 13.5_f64).powf(1.55);
    assert!(near(load(&sheet, RidingState::Day).watts, 12.0));
    assert!(near(load(&sheet, RidingState::Lights).watts, 12.0 + 41.7 * at(14.0)));
    assert!(near(load(&sheet, RidingState::Busy).watts, 12.0 + (41.7 + 21.0 + 0.5 * 23.0) * at(14.0)));
    assert!(near(load(&sheet, RidingState::Standing).watts, 12.0 + 41.7 * at(12.6)));
    assert!(near(load(&sheet, RidingState::Standing).amperes, (12.0 + 41.7 * at(12.6)) / 12.6));
    assert!(sheet.loads.iter().all(|load| load.watts == load.fitted_watts));
}

#[test]
fn balance_and_standing_time_follow_from_output_and_battery() {
    let sheet = load_answer(&bike(), &LoadAsk { engine_rpm: Some(5000.0), ..LoadAsk::default() }).unwrap();
    let lights = sheet.balances.iter().find(|balance| balance.state == RidingState::Lights).unwrap();
    assert!(near(lights.at_speed_amperes, (126.0 - load(&sheet, RidingState::Lights).watts) / 14.0));
    let from_rpm = lights.from_rpm.unwrap();
    assert!(near(output_at(&bike().fitted.supply.output, from_rpm).unwrap(), load(&sheet, RidingState::Lights).watts));
    assert!(lights.at_idle_amperes.unwrap() < 0.0 && from_rpm > 1300.0);
    assert!(sheet.balances.iter().all(|balance| balance.state != RidingState::Standing));

    let standing = &sheet.stationary[0];
    assert!(near(standing.minutes, 600.0 * (0.9 / standing.amperes).powf(1.25)));
    assert_eq!(sheet.output.last().unwrap().rpm, 9500.0);
    let said = codes(&sheet.findings);
    for code in ["balance.above-idle", "output.nominal-curve", "battery.leave-half"] {
        assert!(said.contains(&code), "{code} in {said:?}");
    }
    assert!(
        sheet.working.range.english().contains("the regulator holds 14 V")
            && sheet.working.range.english().contains("1.25")
    );
}

#[test]
fn a_proposed_lamp_stands_in_for_the_one_with_its_mark_and_the_fitted_load_stays_beside_it() {
    let led = slot("indicators", 2.0, 2, Use::Indicating, LightSource::Led);
    let fog = slot("fog", 55.0, 1, Use::Lights, LightSource::Filament);
    let ask = LoadAsk { proposed: vec![led, fog], engine_rpm: None };
    let sheet = load_answer(&bike(), &ask).unwrap();
    let busy = load(&sheet, RidingState::Busy);
    let change = 55.0 * (14.0 / 13.5_f64).powf(1.55) + 0.5 * (4.0 - 20.0 * (14.0 / 13.5_f64).powf(1.55));
    assert!(near(busy.watts - busy.fitted_watts, change));
    assert_eq!(sheet.engine_rpm, 3000.0);
}

#[test]
fn an_output_below_the_load_is_found_with_a_weight_that_fits_the_state() {
    let weight = |watts: f64| {
        let mut bike = bike();
        bike.fitted.supply.output = vec![OutputPoint { rpm: 5000.0, watts }];
        let sheet = load_answer(&bike, &LoadAsk::default()).unwrap();
        let never = sheet.findings.into_iter().find(|finding| finding.code.as_str() == "balance.never");
        never.map(|finding| finding.weight)
    };
    assert_eq!(
        [126.0, 70.0, 40.0, 10.0].map(weight),
        [None, Some(Weight::Note), Some(Weight::Care), Some(Weight::Care)]
    );
}

#[test]
fn loads_are_answered_without_any_supply_and_what_is_not_known_is_said() {
    let mut bike = bike();
    bike.fitted.supply = Supply::default();
    let sheet = load_answer(&bike, &LoadAsk::default()).unwrap();
    assert_eq!(sheet.loads.len(), 4);
    assert!(sheet.balances.is_empty() && sheet.output.is_empty() && sheet.stationary.is_empty());
    let said = codes(&sheet.findings);
    assert!(said.contains(&"output.unknown") && said.contains(&"battery.unknown"), "{said:?}");
    assert!(sheet.working.range.english().contains("a 12 V system"));
}

#[test]
fn a_consumer_that_does_not_say_when_it_draws_is_named_and_left_out() {
    let mut bike = bike();
    bike.fitted.consumers[0].consumer.used = None;
    let sheet = load_answer(&bike, &LoadAsk::default()).unwrap();
    let silent = sheet.findings.iter().find(|finding| finding.code.as_str() == "load.use-unknown").unwrap();
    assert_eq!(silent.weight, Weight::Care);
    assert!(silent.text.english().contains("headlamp"));
}

#[test]
fn a_regulator_outside_the_window_is_found_and_one_inside_is_not() {
    let found = |system: f64, charging: f64| {
        let mut bike = bike();
        bike.fitted.supply.system_volts = Some(system);
        bike.fitted.supply.charging_volts = Some(charging);
        let sheet = load_answer(&bike, &LoadAsk::default()).unwrap();
        codes(&sheet.findings).contains(&"charging.outside")
    };
    assert!(!found(12.0, 14.4) && found(12.0, 13.0) && found(12.0, 16.0));
    assert!(!found(6.0, 7.2) && found(6.0, 14.4));
}

#[test]
fn what_cannot_be_is_refused_at_the_field_to_mend() {
    let refusal = |bike: &Bike, ask: &LoadAsk| {
        let refusal = Refusal::from(load_answer(bike, ask).unwrap_err());
        (refusal.code, refusal.field.unwrap())
    };
    let propose = |change: fn(&mut Consumer)| {
        let mut lamp = slot("headlamp", 35.0, 1, Use::Lights, LightSource::Filament);
        change(&mut lamp.consumer);
        refusal(&bike(), &LoadAsk { proposed: vec![lamp], engine_rpm: None })
    };
    assert_eq!(propose(|lamp| lamp.watts = -5.0), (Code::OutOfRange, "watts".to_owned()));
    assert_eq!(propose(|lamp| lamp.watts = f64::NAN), (Code::NotANumber, "watts".to_owned()));
    assert_eq!(propose(|lamp| lamp.count = 0), (Code::OutOfRange, "count".to_owned()));
    assert_eq!(propose(|lamp| lamp.test_volts = Some(0.0)), (Code::OutOfRange, "testVolts".to_owned()));
    let fast = LoadAsk { engine_rpm: Some(90_000.0), ..LoadAsk::default() };
    assert_eq!(refusal(&bike(), &fast), (Code::OutOfRange, "engineRpm".to_owned()));
    assert_eq!(refusal(&Bike::default(), &LoadAsk::default()), (Code::Missing, "consumers".to_owned()));
}

#[test]
fn the_derived_quantities_are_those_of_the_load_page() {
    let (quantities, _) = derive_electrical(&bike(), &spec());
    let value = |id: &str| quantities.iter().find(|quantity| quantity.id == id).unwrap().value;
    let sheet = load_answer(&bike(), &LoadAsk::default()).unwrap();
    assert_eq!(value("load.day"), load(&sheet, RidingState::Day).watts);
    assert_eq!(value("load.lights"), load(&sheet, RidingState::Lights).watts);
    assert_eq!(value("load.busy"), load(&sheet, RidingState::Busy).watts);
    assert_eq!(value("balance.lights.from-rpm"), sheet.balances[1].from_rpm.unwrap());
    assert_eq!(value("balance.busy.from-rpm"), sheet.balances[2].from_rpm.unwrap());
    assert_eq!(value("battery.standing-minutes"), sheet.stationary[0].minutes);
    assert!(near(value("indicator.load-per-side"), 23.0 * (14.0 / 13.5_f64).powf(1.55)));
}

#[test]
fn led_indicators_leave_the_load_that_the_flasher_was_made_for() {
    let indicator = |fitted: &Spec| {
        let (quantities, _) = derive_electrical(&bike(), fitted);
        quantities.into_iter().find(|quantity| quantity.id == "indicator.load-per-side").unwrap()
    };
    assert_eq!(indicator(&spec()).judgement, Judgement::Fine);
    let mut led = spec();
    led.consumers[4] = slot("indicators", 2.0, 2, Use::Indicating, LightSource::Led);
    let after = indicator(&led);
    assert_eq!(after.judgement, Judgement::Outside);
    assert!(after.why.unwrap().english().contains("60 to 120 a minute"));
}

#[test]
fn what_cannot_be_derived_is_absent() {
    let bare = Spec { supply: Supply::default(), ..spec() };
    let (quantities, findings) = derive_electrical(&bike(), &bare);
    let ids: Vec<&str> = quantities.iter().map(|quantity| quantity.id.as_str()).collect();
    assert_eq!(ids, ["load.day", "load.lights", "load.busy", "indicator.load-per-side"]);
    assert!(findings.is_empty());
    assert!(quantities.iter().take(3).all(|quantity| quantity.judgement == Judgement::Open));

    let mut broken = spec();
    broken.consumers[0].consumer.watts = f64::NAN;
    assert!(derive_electrical(&bike(), &broken).0.is_empty());
    assert!(derive_electrical(&bike(), &Spec::default()).0.is_empty());
}

#[test]
fn the_published_balance_of_190_watts_against_105_at_14_volts_is_met() {
    let supply = Supply {
        charging_volts: Some(14.0),
        output: vec![OutputPoint { rpm: 2000.0, watts: 100.0 }, OutputPoint { rpm: 5000.0, watts: 190.0 }],
        ..Supply::default()
    };
    let load = StateLoad { state: RidingState::Lights, watts: 105.0, amperes: 7.5, fitted_watts: 105.0 };
    let balance = balance(&supply, &load, &Volts::of(&supply), 5000.0).unwrap();
    assert!((balance.at_speed_amperes - 6.071).abs() < 0.0005);
}

#[test]
fn a_working_names_consumers_states_and_the_load_resistors() {
    let mut bike = bike();
    bike.fitted.indication =
        Indication { resistor_ohms: Some(10.0), resistors_per_side: Some(1), ..Indication::default() };
    let labels: Vec<String> = load_answer(&bike, &LoadAsk::default())
        .unwrap()
        .working
        .lines
        .iter()
        .map(|line| line.label.english())
        .collect();
    for label in [
        "headlamp",
        "horn, in no sum",
        "Load resistors, one side",
        "Load, standing, lights on, at 12.6 V",
        "Into the battery, riding with lights, at 3 000 rpm",
        "Full battery flat after",
    ] {
        assert!(labels.iter().any(|said| said == label), "{label}: {labels:#?}");
    }
}

/// The same lamps on another system of 6 V, with two points of the output.
fn on(system: ElectricalSystem) -> LoadAnswer {
    let mut bike = bike();
    bike.fitted.supply = Supply {
        system: Some(system),
        system_volts: Some(6.0),
        battery_ah: Some(4.0),
        idle_rpm: Some(1500.0),
        output: vec![OutputPoint { rpm: 1500.0, watts: 20.0 }, OutputPoint { rpm: 5000.0, watts: 60.0 }],
        ..Supply::default()
    };
    load_answer(&bike, &LoadAsk { engine_rpm: Some(5000.0), ..LoadAsk::default() }).unwrap()
}

#[test]
fn one_diode_leaves_the_battery_half_of_the_output() {
    let (whole, half) = (on(ElectricalSystem::RegulatedBattery), on(ElectricalSystem::HalfWaveBattery));
    let load = load(&half, RidingState::Day).watts;
    let day = |sheet: &LoadAnswer| sheet.balances[0].at_speed_amperes;
    assert!(near(day(&whole), (60.0 - load) / 7.0) && near(day(&half), (30.0 - load) / 7.0));
    assert!(
        codes(&half.findings).contains(&"output.half-wave") && !codes(&whole.findings).contains(&"output.half-wave")
    );
    assert!(half.working.range.english().contains("no regulator holds it"), "{}", half.working.range.english());
}

#[test]
fn without_a_battery_the_engine_has_to_run_and_nothing_is_asked_of_a_battery() {
    let sheet = on(ElectricalSystem::LightingCoil);
    assert_eq!(load(&sheet, RidingState::Standing).watts, 0.0);
    assert!(sheet.balances.is_empty() && sheet.stationary.is_empty());
    let said = codes(&sheet.findings);
    assert!(said.contains(&"battery.none") && said.contains(&"coil.blown-lamp"), "{said:?}");
    assert!(!said.iter().any(|code| ["battery.unknown", "battery.leave-half", "charging.outside"].contains(code)));
    let lights = sheet.coil.iter().find(|lamps| lamps.state == RidingState::Lights).unwrap();
    assert!(near(lights.watts, 35.0 + 5.0 + 1.7 + 12.0));
    assert!(lights.one_out_volts.unwrap() > lights.at_speed_volts.unwrap());
}

#[test]
fn what_burns_with_the_lights_does_not_load_the_battery_beside_a_coil() {
    let sheet = on(ElectricalSystem::LightingCoilAndBattery);
    let standing = load(&sheet, RidingState::Standing);
    assert!(near(standing.watts, 12.0) && sheet.stationary.len() == 1 && sheet.balances.is_empty());
    let lights = sheet.coil.iter().find(|lamps| lamps.state == RidingState::Lights).unwrap();
    assert!(near(lights.watts, 41.7));
}
