//! The answer of the load page.

use layshaft_wire::wire;

use super::message::{ElectricalWorking, LoadPageMessage};
use crate::bounds;
use crate::electrical::formulas::{
    BatteryHours, ChargeCurrent, CoilLampVolts, ConsumerPower, LOAD_RESISTORS, LoadSum, RidingState, Volts, drawn,
    drawn_output, output_at, share_of_time, sources,
};
use crate::electrical::judge::{
    COMPARED_AT_RPM, FLOODED, Fed, TEN_HOURS, at_work, balance, coil_lamps, fed, of_coil, state_loads, stationary,
};
use crate::electrical::{Balance, CoilLamps, StateLoad, Stationary};
use crate::error::Refused;
use crate::message::{ListStyle, Message};
use crate::quantity::{Finding, Line, WorkLine, Working};
use crate::record::{Bike, ElectricalSystem, LightSource, OutputPoint, Slot, Supply};
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
    /// What the electrical system is made of.
    pub system: ElectricalSystem,
    /// Balance in each riding state, where the output is known and charges a battery.
    pub balances: Vec<Balance>,
    /// The lamps of a lighting coil in each riding state in which it feeds any.
    pub coil: Vec<CoilLamps>,
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
    let supply = at_work(&bike.fitted.supply.clone().checked()?);
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
    let hang = fed(&supply, &tried);
    let loads = state_loads(&supply, &hang, &fed(&supply, &fitted));
    let coil = coil_lamps(&supply, &hang, engine_rpm);
    let balances: Vec<Balance> = loads.iter().filter_map(|load| balance(&supply, load, &volts, engine_rpm)).collect();
    let stationary: Vec<Stationary> = stationary(&supply, &loads).into_iter().collect();
    let said = of_coil(&supply, &coil, engine_rpm);
    let draw_to = bike.fitted.drive.rev_limit_rpm.unwrap_or_default().max(engine_rpm);
    let findings = crate::electrical::judge::of_load(&supply, &tried, &volts, &loads, &balances, &stationary, said);
    let answered = Answered { loads: &loads, balances: &balances, coil: &coil, stationary: &stationary, engine_rpm };
    let working = working(&supply, &tried, &hang, &answered);
    let output = drawn_output(&supply.output, draw_to);
    Ok(LoadAnswer {
        loads: loads.into(),
        output,
        system: supply.kind(),
        balances,
        coil,
        engine_rpm,
        stationary,
        findings,
        working,
    })
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

/// What was worked out, for the working to tell.
struct Answered<'a> {
    loads: &'a [StateLoad],
    balances: &'a [Balance],
    coil: &'a [CoilLamps],
    stationary: &'a [Stationary],
    engine_rpm: f64,
}

fn working(supply: &Supply, consumers: &[Slot], hang: &Fed, answered: &Answered) -> Working {
    let &Answered { loads, balances, coil, stationary, engine_rpm } = answered;
    let volts = &Volts::of(supply);
    let at_coil = |slot: &Slot| hang.coil.iter().any(|there| there.id == slot.id);
    let at = |slot: &Slot| if at_coil(slot) { Volts::at_coil(supply) } else { *volts };
    let mut lines: Vec<WorkLine> = consumers.iter().filter_map(|slot| consumer_line(slot, &at(slot))).collect();
    lines.extend(loads.iter().flat_map(|load| {
        hang.parts(supply, load.state).into_iter().filter_map(|(slots, volts)| {
            let (shares, watts) = drawn(slots, load.state, &volts);
            let volts = Unit::Volt.of(volts.in_state(load.state));
            LoadSum { shares, watts }.line(ElectricalWorking::Load { state: load.state, volts })
        })
    }));
    lines.extend(coil.iter().filter(|_| !supply.kind().is_regulated()).filter_map(|lamps| {
        let coil_watts = output_at(&supply.output, engine_rpm)?;
        let driven = CoilLampVolts { test_volts: lamps.rated_volts, coil_watts, watts: lamps.watts };
        driven.line(ElectricalWorking::AtLamps { state: lamps.state, rpm: Unit::Rpm.of(engine_rpm) })
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
    if !coil.is_empty() {
        sources.push(sources::lighting_coil());
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
    let charging = Unit::Volt.of(volts.charging);
    match supply.kind() {
        ElectricalSystem::LightingCoil | ElectricalSystem::LightingCoilRegulated => {
            said.push(LoadPageMessage::AtCoil { volts: charging });
        }
        _ if !volts.charging_assumed => {}
        ElectricalSystem::RegulatedBattery => said.push(LoadPageMessage::AssumedCharging { volts: charging }),
        _ => said.push(LoadPageMessage::AssumedUnregulated { volts: charging }),
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
