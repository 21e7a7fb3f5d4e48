//! What is worth saying about load, output and battery.

use super::balance::{Balance, StateLoad, Stationary};
use crate::electrical::formulas::{RidingState, Volts, output_at};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Slot, Supply};

/// Everything worth saying on the load page, the heaviest first.
pub(crate) fn of_load(
    supply: &Supply,
    consumers: &[Slot],
    volts: &Volts,
    loads: &[StateLoad],
    balances: &[Balance],
    stationary: &[Stationary],
) -> Vec<Finding> {
    let mut findings: Vec<Finding> = [
        use_unknown(consumers),
        charging_outside(volts),
        balance_never(supply, loads, balances),
        balance_above_idle(balances),
        output_assumed(supply),
        battery_unknown(supply),
        leave_half(stationary),
    ]
    .into_iter()
    .flatten()
    .collect();
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.weight));
    findings
}

/// A consumer that does not say when it draws current is left out of every sum; that must not look like a pass.
fn use_unknown(consumers: &[Slot]) -> Option<Finding> {
    let silent: Vec<&str> =
        consumers.iter().filter(|slot| slot.consumer.used.is_none()).map(|slot| slot.consumer.name.as_str()).collect();
    if silent.is_empty() {
        return None;
    }
    let text = format!("Left out, because it is not said when it draws current: {}.", silent.join(", "));
    Some(Finding::new(FindingCode::LoadUseUnknown, Weight::Care, text))
}

/// The regulated voltage is outside what service manuals accept.
fn charging_outside(volts: &Volts) -> Option<Finding> {
    if volts.charging_assumed || volts.charging_in_window() {
        return None;
    }
    let scale = volts.system / 12.0;
    let text = format!(
        "The regulator holds {:.1} V; service manuals ask for {:.1} to {:.1} V at 5,000 rpm on a {:.0} V machine. Too low \
         never fills the battery, too high boils it dry and burns lamps.",
        volts.charging,
        14.0 * scale,
        15.5 * scale,
        volts.system
    );
    Some(Finding::new(FindingCode::ChargingOutside, Weight::Care, text))
}

/// The output never meets the load. Braking with an indicator on passes, so that alone is only worth a note.
pub(crate) fn balance_never(supply: &Supply, loads: &[StateLoad], balances: &[Balance]) -> Option<Finding> {
    let never = balances.iter().find(|balance| balance.from_rpm.is_none())?;
    let load = loads.iter().find(|load| load.state == never.state)?;
    let most = supply.output.iter().map(|point| point.watts).fold(0.0, f64::max);
    let weight = if never.state == RidingState::Busy { Weight::Note } else { Weight::Care };
    let text = format!(
        "Output never meets the load {}: {:.0} W asked, {most:.0} W given at best. The battery discharges at any speed.",
        with_article(never.state),
        load.watts
    );
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
    let text = format!(
        "With the lights on the battery gives {:.1} A at idle and is filled again only above about {about:.0} rpm.",
        -idle
    );
    Some(Finding::new(FindingCode::BalanceAboveIdle, Weight::Note, text))
}

/// The output is not known, or only from one point.
fn output_assumed(supply: &Supply) -> Option<Finding> {
    match supply.output.as_slice() {
        [] => Some(Finding::new(
            FindingCode::OutputUnknown,
            Weight::Note,
            "The alternator's output is not known, so load cannot be set against it. One figure from its plate is enough \
             to begin with.",
        )),
        [rated] => {
            let half = output_at(&supply.output, rated.rpm / 2.0).unwrap_or_default();
            let text = format!(
                "Only one point of the output is known. Between, a usual curve is assumed ({half:.0} W at {:.0} rpm); \
                 measure a second point to be sure.",
                rated.rpm / 2.0
            );
            Some(Finding::new(FindingCode::OutputNominalCurve, Weight::Note, text))
        }
        _ => None,
    }
}

fn battery_unknown(supply: &Supply) -> Option<Finding> {
    if supply.battery_ah.is_some() {
        return None;
    }
    let text = "The battery's capacity is not known, so it cannot be said how long it lasts standing.";
    Some(Finding::new(FindingCode::BatteryUnknown, Weight::Note, text))
}

/// A lead battery that is emptied ages, and the starter wants its share.
fn leave_half(stationary: &[Stationary]) -> Option<Finding> {
    let standing = stationary.first()?;
    let text = format!(
        "Standing with the lights on, plan on half of the {:.0} minutes: a lead battery that is run flat ages fast, and the \
         starter needs its share (common practice).",
        standing.minutes
    );
    Some(Finding::new(FindingCode::BatteryLeaveHalf, Weight::Note, text))
}

fn with_article(state: RidingState) -> &'static str {
    match state {
        RidingState::Standing => "while standing",
        RidingState::Day => "by day",
        RidingState::Lights => "with lights",
        RidingState::Busy => "while lights, brake lamp and indicators are on",
    }
}
