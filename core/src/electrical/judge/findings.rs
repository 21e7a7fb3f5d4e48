//! What is worth saying about load, output and battery.

use super::balance::{Balance, StateLoad, Stationary};
use super::message::LoadMessage;
use crate::electrical::formulas::{RidingState, Volts, output_at};
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{ElectricalSystem, Slot, Supply};
use crate::units::Unit;

/// Everything worth saying on the load page, the heaviest first.
pub(crate) fn of_load(
    supply: &Supply,
    consumers: &[Slot],
    volts: &Volts,
    loads: &[StateLoad],
    balances: &[Balance],
    stationary: &[Stationary],
    coil: Vec<Finding>,
) -> Vec<Finding> {
    let mut findings: Vec<Finding> = [
        use_unknown(consumers),
        charging_outside(volts).filter(|_| supply.kind().has_battery()),
        balance_never(supply, loads, balances),
        balance_above_idle(balances),
        output_assumed(supply),
        battery_unknown(supply),
        leave_half(stationary),
        system_said(supply),
    ]
    .into_iter()
    .flatten()
    .chain(coil)
    .collect();
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    findings
}

/// A consumer that does not say when it draws current is left out of every sum; that must not look like a pass.
fn use_unknown(consumers: &[Slot]) -> Option<Finding> {
    let silent = consumers.iter().filter(|slot| slot.consumer.used.is_none());
    let silent: Vec<Message> = silent.map(|slot| Message::as_entered(&slot.consumer.name)).collect();
    if silent.is_empty() {
        return None;
    }
    let text = LoadMessage::LoadUseUnknown { names: List(ListStyle::Comma, silent) };
    Some(Finding::new(FindingCode::LoadUseUnknown, Weight::Care, text))
}

/// The regulated voltage is outside what service manuals accept.
fn charging_outside(volts: &Volts) -> Option<Finding> {
    if volts.charging_assumed || volts.charging_in_window() {
        return None;
    }
    let scale = volts.system / 12.0;
    let text = LoadMessage::ChargingOutside {
        holds: Unit::Volt.of(volts.charging),
        least: Unit::Volt.of(14.0 * scale),
        most: Unit::Volt.of(15.5 * scale),
        system: Unit::Volt.of(volts.system),
    };
    Some(Finding::new(FindingCode::ChargingOutside, Weight::Care, text))
}

/// The output never meets the load. Braking with an indicator on passes, so that alone is only worth a note.
pub(crate) fn balance_never(supply: &Supply, loads: &[StateLoad], balances: &[Balance]) -> Option<Finding> {
    let never = balances.iter().find(|balance| balance.from_rpm.is_none())?;
    let load = loads.iter().find(|load| load.state == never.state)?;
    let most = supply.output.iter().map(|point| point.watts).fold(0.0, f64::max);
    let weight = if never.state == RidingState::Busy { Weight::Note } else { Weight::Care };
    let (asked, given) = (Unit::Watt.of(load.watts), Unit::Watt.of(most));
    let text = LoadMessage::BalanceNever { state: never.state, asked, given };
    Some(Finding::new(FindingCode::BalanceNever, weight, text))
}

/// At idle the battery discharges with the lights on.
pub(crate) fn balance_above_idle(balances: &[Balance]) -> Option<Finding> {
    let lights = balances.iter().find(|balance| balance.state == RidingState::Lights)?;
    let (idle, from) = (lights.at_idle_amperes?, lights.from_rpm?);
    if idle >= 0.0 {
        return None;
    }
    // The output curve is no better known than to some fifty revolutions.
    let about = (from / 50.0).ceil() * 50.0;
    let text = LoadMessage::BalanceAboveIdle { gives: Unit::Ampere.of(-idle), from: Unit::Rpm.of(about) };
    Some(Finding::new(FindingCode::BalanceAboveIdle, Weight::Note, text))
}

/// The output is not known, or only from one point.
fn output_assumed(supply: &Supply) -> Option<Finding> {
    match supply.output.as_slice() {
        [] => Some(Finding::new(FindingCode::OutputUnknown, Weight::Note, LoadMessage::OutputUnknown)),
        [rated] => {
            let half = output_at(&supply.output, rated.rpm / 2.0).unwrap_or_default();
            let text = LoadMessage::OutputOnePoint { watts: Unit::Watt.of(half), rpm: Unit::Rpm.of(rated.rpm / 2.0) };
            Some(Finding::new(FindingCode::OutputNominalCurve, Weight::Note, text))
        }
        _ => None,
    }
}

fn battery_unknown(supply: &Supply) -> Option<Finding> {
    if supply.battery_ah.is_some() || !supply.kind().has_battery() {
        return None;
    }
    Some(Finding::new(FindingCode::BatteryUnknown, Weight::Note, LoadMessage::BatteryUnknown))
}

/// What the kind of the electrics means for the sums.
fn system_said(supply: &Supply) -> Option<Finding> {
    let (code, text) = match supply.kind() {
        ElectricalSystem::RegulatedBattery => return None,
        ElectricalSystem::HalfWaveBattery => (FindingCode::OutputHalfWave, LoadMessage::OutputHalfWave),
        ElectricalSystem::LightingCoil | ElectricalSystem::LightingCoilRegulated => {
            (FindingCode::BatteryNone, LoadMessage::BatteryNone)
        }
        ElectricalSystem::LightingCoilAndBattery => (FindingCode::CoilBesideBattery, LoadMessage::CoilBesideBattery),
    };
    Some(Finding::new(code, Weight::Note, text))
}

/// A lead battery that is emptied ages, and the starter wants its share.
fn leave_half(stationary: &[Stationary]) -> Option<Finding> {
    let standing = stationary.first()?;
    let text = LoadMessage::BatteryLeaveHalf { minutes: Unit::Minute.of(standing.minutes) };
    Some(Finding::new(FindingCode::BatteryLeaveHalf, Weight::Note, text))
}
