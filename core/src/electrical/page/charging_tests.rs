//! The charging page: what is unknown, what is judged, and a battery of another voltage.

use super::*;
use crate::record::{Reading, Supply};

fn bike() -> Bike {
    let mut bike = Bike::default();
    bike.fitted.supply = Supply { battery_ah: Some(9.0), ..Supply::default() };
    bike
}

#[test]
fn nothing_measured_is_all_unknown_and_means_not_enough_known() {
    let sheet = charging_answer(&bike(), &ChargingAsk::default()).unwrap();
    assert!(sheet.tests.iter().all(|line| line.verdict == TestVerdict::Unknown));
    assert_eq!((sheet.pattern, sheet.charge_by_volts), (ChargingPattern::NotEnoughKnown, None));
    assert!(sheet.findings.iter().any(|finding| finding.code.as_str() == "charging.unknown"));
}

#[test]
fn the_rested_voltage_comes_from_the_bikes_readings() {
    let mut bike = bike();
    let reading = Reading { what: RESTED.to_owned(), value: 12.4, ..Reading::default() };
    bike.readings.insert("r".to_owned(), reading);
    let ask = ChargingAsk { idle_volts: Some(13.1), fast_volts: Some(14.3), ..ChargingAsk::default() };
    let sheet = charging_answer(&bike, &ask).unwrap();
    assert_eq!(sheet.pattern, ChargingPattern::Healthy);
    assert!((sheet.charge_by_volts.unwrap() - 69.05).abs() < 0.01);
    assert!((sheet.recharge_hours.unwrap() - 1.2 * 9.0 * 0.3095 / 0.9).abs() < 0.01);
}

/// A bike of 6 V, as half of those that stood in a barn are.
fn six_volts() -> Bike {
    let mut bike = bike();
    bike.fitted.supply.system_volts = Some(6.0);
    bike
}

#[test]
fn a_voltage_of_another_battery_is_refused_in_words_and_never_called_full() {
    let ask = ChargingAsk { rested_volts: Some(12.6), ..ChargingAsk::default() };
    let refused = charging_answer(&six_volts(), &ask).unwrap_err().english();
    assert!(refused.contains("12.6 V") && refused.contains("6 V battery") && refused.contains("7.2 V"), "{refused}");
    // A reading that was kept before the voltage of the bike was known is explained, and taken as unknown.
    let mut bike = six_volts();
    let reading = Reading { what: RESTED.to_owned(), value: 12.6, ..Reading::default() };
    bike.readings.insert("r".to_owned(), reading);
    let sheet = charging_answer(&bike, &ChargingAsk::default()).unwrap();
    assert_eq!((sheet.charge_by_volts, sheet.tests[0].verdict), (None, TestVerdict::Unknown));
    assert_eq!(sheet.findings[0].code, FindingCode::BatteryAnotherVoltage);
}

#[test]
fn a_full_battery_of_six_volts_is_good() {
    let ask = ChargingAsk { rested_volts: Some(6.35), ..ChargingAsk::default() };
    let sheet = charging_answer(&six_volts(), &ask).unwrap();
    assert_eq!(sheet.tests[0].verdict, TestVerdict::Good);
    assert!(sheet.charge_by_volts.unwrap() > 95.0);
    assert!(sheet.findings.iter().all(|finding| finding.code != FindingCode::BatteryAnotherVoltage));
}

#[test]
fn a_bad_cell_a_drain_and_a_strong_charger_are_said() {
    let ask = ChargingAsk {
        gravities: vec![1.26, 1.26, 1.25, 1.26, 1.15, 1.26],
        drain_milliamperes: Some(40.0),
        charger_amperes: Some(4.0),
        ..ChargingAsk::default()
    };
    let sheet = charging_answer(&bike(), &ask).unwrap();
    let codes: Vec<&str> = sheet.findings.iter().map(|finding| finding.code.as_str()).collect();
    for code in ["battery.cell", "battery.drain", "charger.too-strong", "battery.gas"] {
        assert!(codes.contains(&code), "{codes:?}");
    }
    assert!((sheet.days_to_flat.unwrap() - 9.0 * 0.2142857 / 0.04 / 24.0).abs() < 0.001);
}

#[test]
fn a_voltage_that_cannot_be_is_refused_by_name() {
    let ask = ChargingAsk { fast_volts: Some(140.0), ..ChargingAsk::default() };
    let text = charging_answer(&bike(), &ask).unwrap_err().english();
    assert_eq!(text, "Voltage at 5,000 rpm: 140 V is outside 0 to 40 V");
}
