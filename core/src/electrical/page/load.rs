//! The answer of the load page.

use layshaft_wire::wire;

use super::message::{ElectricalWorking, LoadPageMessage};
use crate::bounds;
use crate::electrical::formulas::{
    BatteryHours, ChargeCurrent, ConsumerPower, LOAD_RESISTORS, LoadSum, RidingState, Volts, drawn, drawn_output,
    load_watts, output_at, share_of_time, sources,
};
use crate::electrical::judge::{COMPARED_AT_RPM, FLOODED, TEN_HOURS, balance, stationary};
use crate::electrical::{Balance, StateLoad, Stationary};
use crate::error::Refused;
use crate::message::{ListStyle, Message};
use crate::quantity::{Finding, Line, WorkLine, Working};
use crate::record::{Bike, LightSource, OutputPoint, Slot, Supply};
use crate::units::Unit;

/// What to work out. What is left out is taken from the fitted bike.
#[wire(lenient)]
pub struct LoadAsk {
    /// Consumers to try in place of (or beside) the fitted ones, by their ids.
    pub proposed: Vec<Slot>,
    /// Engine speed for the comparison, revolutions a minute; left out: 3,000.
    pub engine_rpm: Option<f64>,
}

/// The load page.
#[wire]
pub struct LoadAnswer {
    /// Load in each riding state.
    pub loads: Vec<StateLoad>,
    /// Output curve, lowest speed first.
    pub output: Vec<OutputPoint>,
    /// Balance in each riding state, where the output is known.
    pub balances: Vec<Balance>,
    /// Engine speed of the comparison, revolutions a minute.
    pub engine_rpm: f64,
    /// How long the battery lasts standing, where it is known.
    pub stationary: Vec<Stationary>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}

/// The load page for the fitted bike, with what is being tried in its place.
///
/// Loads are answered without knowing battery or alternator; what is not known then is left empty and said in a
/// finding. Refused: no consumer at all, or a number outside its range.
pub fn load_answer(bike: &Bike, ask: &LoadAsk) -> Result<LoadAnswer, Refused> {
    let engine_rpm = bounds::ENGINE_SPEED.check(ask.engine_rpm.unwrap_or(COMPARED_AT_RPM))?;
    let supply = bike.fitted.supply.clone().checked()?;
    let fitted = crate::electrical::formulas::with_resistors(&bike.fitted, &Volts::of(&supply));
    let tried = with_proposed(&fitted, &ask.proposed)?;
    if tried.is_empty() {
        return Err(Refused::Missing {
            field: "consumers".to_owned(),
            label: LoadPageMessage::Consumers.into(),
            help: LoadPageMessage::EnterConsumers.into(),
        });
    }
    let volts = Volts::of(&supply);
    let loads = RidingState::ALL.map(|state| {
        let watts = load_watts(&tried, state, &volts);
        let fitted_watts = load_watts(&fitted, state, &volts);
        StateLoad { state, watts, amperes: watts / volts.in_state(state), fitted_watts }
    });
    let balances: Vec<Balance> = loads.iter().filter_map(|load| balance(&supply, load, &volts, engine_rpm)).collect();
    let stationary: Vec<Stationary> = stationary(&supply, &loads).into_iter().collect();
    let draw_to = bike.fitted.drive.rev_limit_rpm.unwrap_or_default().max(engine_rpm);
    let findings = crate::electrical::judge::of_load(&supply, &tried, &volts, &loads, &balances, &stationary);
    let working = working(&supply, &tried, &volts, &loads, &balances, &stationary, engine_rpm);
    let output = drawn_output(&supply.output, draw_to);
    Ok(LoadAnswer { loads: loads.into(), output, balances, engine_rpm, stationary, findings, working })
}

/// The fitted consumers with the proposed ones in place of those with the same id, or beside them.
fn with_proposed(fitted: &[Slot], proposed: &[Slot]) -> Result<Vec<Slot>, Refused> {
    let mut tried = fitted.to_vec();
    for slot in proposed {
        match tried.iter_mut().find(|there| there.id == slot.id) {
            Some(there) => *there = slot.clone(),
            None => tried.push(slot.clone()),
        }
    }
    let checked = |slot: Slot| Ok(Slot { consumer: slot.consumer.checked()?, ..slot });
    tried.into_iter().map(checked).collect()
}

fn working(
    supply: &Supply,
    consumers: &[Slot],
    volts: &Volts,
    loads: &[StateLoad],
    balances: &[Balance],
    stationary: &[Stationary],
    engine_rpm: f64,
) -> Working {
    let mut lines: Vec<WorkLine> = consumers.iter().filter_map(|slot| consumer_line(slot, volts)).collect();
    lines.extend(loads.iter().filter_map(|load| {
        let (shares, watts) = drawn(consumers, load.state, volts);
        let volts = Unit::Volt.of(volts.in_state(load.state));
        LoadSum { shares, watts }.line(ElectricalWorking::Load { state: load.state, volts })
    }));
    for balance in balances {
        let Some(load) = loads.iter().find(|load| load.state == balance.state) else { continue };
        let output_watts = output_at(&supply.output, engine_rpm).unwrap_or_default();
        let current = ChargeCurrent { output_watts, load_watts: load.watts, volts: volts.charging };
        let rpm = Unit::Rpm.of(engine_rpm);
        lines.extend(current.line(ElectricalWorking::IntoBattery { state: balance.state, rpm }));
    }
    lines.extend(stationary.iter().filter_map(|standing| {
        let lasts = BatteryHours {
            battery_ah: supply.battery_ah?,
            rated_hours: supply.rated_hours.unwrap_or(TEN_HOURS),
            peukert: supply.peukert.unwrap_or(FLOODED),
            amperes: standing.amperes,
        };
        lasts.line_of("minutes", ElectricalWorking::FlatAfter)
    }));
    let mut sources = vec![sources::filament_law(), sources::regulated_volts()];
    if !balances.is_empty() {
        sources.push(sources::balance());
        if supply.output.len() == 1 {
            sources.push(sources::nominal_output());
        }
    }
    if !stationary.is_empty() {
        sources.push(sources::peukert());
        if supply.rated_hours.is_none() {
            sources.push(sources::rated_hours());
        }
    }
    Working { lines, sources, range: range(supply, volts) }
}

fn consumer_line(slot: &Slot, volts: &Volts) -> Option<WorkLine> {
    let consumer = &slot.consumer;
    let power = ConsumerPower {
        count: consumer.count,
        watts: consumer.watts,
        test_volts: consumer.test_volts.unwrap_or(volts.test),
        volts: volts.charging,
    };
    let filament = consumer.source == Some(LightSource::Filament);
    let counted = RidingState::ALL.iter().any(|state| share_of_time(consumer.used, *state) > 0.0);
    let label = match counted {
        _ if slot.id == LOAD_RESISTORS => ElectricalWorking::LoadResistors.into(),
        true => Message::as_entered(&consumer.name),
        false => ElectricalWorking::InNoSum { consumer: consumer.name.clone() }.into(),
    };
    power.line_of(if filament { "filament_watts" } else { "steady_watts" }, label)
}

/// Where it holds and what was taken for granted.
fn range(supply: &Supply, volts: &Volts) -> Message {
    let mut said = vec![LoadPageMessage::Range];
    if volts.system_assumed {
        said.push(LoadPageMessage::AssumedSystem);
    }
    if volts.charging_assumed {
        said.push(LoadPageMessage::AssumedCharging { volts: Unit::Volt.of(volts.charging) });
    }
    if supply.battery_ah.is_some() {
        said.push(LoadPageMessage::StandingAt { volts: Unit::Volt.of(volts.standing) });
        if supply.rated_hours.is_none() {
            said.push(LoadPageMessage::AssumedHours);
        }
        if supply.peukert.is_none() {
            said.push(LoadPageMessage::AssumedPeukert);
        }
    }
    Message::joined(ListStyle::Sentences, said.into_iter().map(Into::into).collect())
}

#[cfg(test)]
mod tests;
