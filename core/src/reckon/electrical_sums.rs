//! Sums of lamps, flashers, battery and wire: every input against its range, then the formula.

use super::Sum;
use super::figure::{Figure, figure};
use crate::bounds::{self, Bound};
use crate::electrical::{self, Conductor};
use crate::error::Refused;
use crate::units::Unit;

/// The figures of an electrical sum; none for a sum of another area.
pub(super) fn electrical(sum: &Sum) -> Result<Vec<Figure>, Refused> {
    match sum.clone() {
        Sum::LampLight { lumens, test_volts, volts } => {
            bounds::LUMENS.check(lumens)?;
            bounds::TEST_VOLTS.check(test_volts)?;
            Bound { field: "volts", label: "Voltage", ..bounds::TEST_VOLTS }.check(volts)?;
            Ok(vec![
                figure("lumens", electrical::lamp_lumens(lumens, test_volts, volts), Unit::Lumen),
                figure("life", electrical::lamp_life(test_volts, volts), Unit::None),
            ])
        }
        Sum::ThermalFlasher { load_percent, contacts, flashes_minute } => {
            Bound { field: "loadPercent", label: "Load", min: 1.0, max: 300.0, ..bounds::PRELOAD_SHARE }
                .check(load_percent)?;
            Bound { field: "contacts", label: "Closing over opening temperature", min: 0.1, max: 0.99, ..bounds::DUTY }
                .check(contacts)?;
            bounds::FLASH_RATE.check(flashes_minute)?;
            let rate = electrical::thermal_rate(load_percent / 100.0, contacts, flashes_minute);
            Ok(vec![figure("flashesMinute", rate, Unit::FlashesMinute)])
        }
        Sum::FlashCount { flashes, seconds } => {
            Ok(vec![figure("flashesMinute", electrical::counted_rate(flashes, seconds)?, Unit::FlashesMinute)])
        }
        Sum::LoadResistor { volts, old_watts, new_watts } => resistor(volts, old_watts, new_watts),
        Sum::GravityCharge { gravity, celsius } => {
            bounds::GRAVITY.check(gravity)?;
            bounds::TEMPERATURE.check(celsius)?;
            let at_25 = electrical::gravity_at_25(gravity, celsius);
            Ok(vec![figure("charge", electrical::charge_from_gravity(at_25), Unit::Percent)])
        }
        Sum::DaysToFlat { battery_ah, charge_percent, drain_milliamperes } => {
            bounds::BATTERY_AH.check(battery_ah)?;
            charge(charge_percent)?;
            Bound { min: 0.001, ..bounds::DRAIN }.check(drain_milliamperes)?;
            let days = electrical::days_to_flat(battery_ah, charge_percent, drain_milliamperes / 1000.0);
            Ok(vec![figure("days", days, Unit::Day)])
        }
        Sum::RechargeHours { battery_ah, charge_percent, charger_amperes } => {
            bounds::BATTERY_AH.check(battery_ah)?;
            charge(charge_percent)?;
            bounds::CHARGER.check(charger_amperes)?;
            let hours = electrical::recharge_hours(battery_ah, charge_percent, charger_amperes);
            Ok(vec![figure("hours", hours, Unit::Hour)])
        }
        Sum::WireDrop { section_mm2, conductor, celsius, amperes, out_metres, back_metres } => {
            electrical::check_wire(section_mm2, out_metres, celsius)?;
            bounds::AMPERES.check(amperes)?;
            bounds::WIRE_BACK.check(back_metres)?;
            let resistance = electrical::wire_resistance(section_mm2, made(&conductor)?, celsius);
            Ok(vec![
                figure("volts", electrical::voltage_drop(amperes, resistance, out_metres, back_metres), Unit::Volt),
                figure("milliohmsMetre", resistance, Unit::None),
            ])
        }
        Sum::WireGauge { gauge } => {
            let range = Bound { field: "gauge", label: "Gauge", min: -3.0, max: 40.0, ..bounds::COUNT };
            range.check(gauge)?;
            if gauge.fract() != 0.0 {
                let reason = format!("gauges are whole numbers, {gauge} is none");
                return Err(Refused::Conflict { field: "gauge".to_owned(), reason });
            }
            let gauge = gauge as i32;
            Ok(vec![
                figure("section", electrical::gauge_section(gauge), Unit::SquareMillimetre),
                figure("diameter", electrical::gauge_diameter(gauge), Unit::Millimetre),
            ])
        }
        _ => Ok(Vec::new()),
    }
}

/// A conductor by its word.
fn made(word: &str) -> Result<Conductor, Refused> {
    match word {
        "ideal" => Ok(Conductor::Ideal),
        "solid" => Ok(Conductor::Solid),
        "flexible" => Ok(Conductor::Flexible),
        "tinned" => Ok(Conductor::Tinned),
        _ => Err(Refused::Unreadable {
            field: "conductor".to_owned(),
            label: "Conductor".to_owned(),
            reason: format!("“{word}” is none of ideal, solid, flexible, tinned"),
        }),
    }
}

fn charge(percent: f64) -> Result<f64, Refused> {
    Bound { field: "chargePercent", label: "Charge", min: 0.0, ..bounds::PRELOAD_SHARE }.check(percent)
}

fn resistor(volts: f64, old_watts: f64, new_watts: f64) -> Result<Vec<Figure>, Refused> {
    bounds::CIRCUIT_VOLTS.check(volts)?;
    Bound { field: "oldWatts", label: "Old lamp", ..bounds::WATTS }.check(old_watts)?;
    Bound { field: "newWatts", label: "New lamp", ..bounds::WATTS }.check(new_watts)?;
    let Some(ohms) = electrical::load_resistance(volts, old_watts, new_watts) else {
        return Err(Refused::Conflict {
            field: "newWatts".to_owned(),
            reason: "the new lamp takes no less than the old one: there is nothing to make up".to_owned(),
        });
    };
    let peak = volts * volts / ohms;
    Ok(vec![
        figure("ohms", ohms, Unit::Ohm),
        figure("peakWatts", peak, Unit::Watt),
        figure("meanWatts", peak / 2.0, Unit::Watt),
    ])
}
