//! What the electrical area adds to everything that is derived about a bike.

use super::balance::{COMPARED_AT_RPM, StateLoad, balance, stationary};
use super::coil::{coil_lamps, of_coil};
use super::feed::{at_work, fed, state_loads};
use super::findings;
use super::message::LoadMessage;
use crate::electrical::formulas::{RidingState, Volts, indicating_watts, sources, with_resistors};
use crate::quantity::{Finding, Judgement, Quantity};
use crate::record::{Bike, ElectricalSystem, FlasherKind, Slot, Spec};
use crate::units::Unit;

/// Share of the load as made within which a thermal flasher is expected to keep its rate. Common practice, no source.
const FLASHER_FROM: f64 = 0.75;
const FLASHER_TO: f64 = 1.25;

/// Loads, balance, standing time and indicator load of a spec. What cannot be derived is absent.
///
/// The indicator load is judged against the bike as made, because its flasher was made for that.
pub fn derive_electrical(bike: &Bike, spec: &Spec) -> (Vec<Quantity>, Vec<Finding>) {
    let Some(spec) = electrically_sound(spec) else {
        return (Vec::new(), Vec::new());
    };
    let supply = at_work(&spec.supply);
    let volts = Volts::of(&supply);
    let consumers = with_resistors(&spec, &volts);
    let hang = fed(&supply, &consumers);
    let loads = state_loads(&supply, &hang, &hang);
    let balances: Vec<_> = loads.iter().filter_map(|load| balance(&supply, load, &volts, COMPARED_AT_RPM)).collect();
    // Beside a battery the output is that of the lighting coil, which is no match for the whole load.
    let coil = coil_lamps(&supply, &hang, COMPARED_AT_RPM);
    let open = supply.kind() == ElectricalSystem::LightingCoilAndBattery;
    let most = supply.output.iter().map(|point| point.watts).reduce(f64::max).filter(|_| !open);

    let mut quantities: Vec<Quantity> = loads.iter().filter_map(|load| load_quantity(load, most)).collect();
    quantities.extend(balances.iter().filter_map(|balance| balance_quantity(balance.state, balance.from_rpm?)));
    quantities.extend(stationary(&supply, &loads).map(|standing| Quantity {
        id: "battery.standing-minutes".to_owned(),
        label: LoadMessage::BatteryFlatStanding.into(),
        value: standing.minutes,
        unit: Unit::Minute,
        judgement: Judgement::Open,
        why: None,
        source: sources::peukert(),
    }));
    let as_made = indicating_watts(&bike.standard.consumers, &volts);
    let minds_no_load = spec.indication.flasher == Some(FlasherKind::ElectronicThree);
    quantities
        .extend(indicating_watts(&consumers, &volts).map(|watts| indicator_quantity(watts, as_made, minds_no_load)));

    let balance = [findings::balance_never(&supply, &loads, &balances), findings::balance_above_idle(&balances)];
    let mut findings: Vec<Finding> = balance.into_iter().flatten().collect();
    findings.extend(of_coil(&supply, &coil, COMPARED_AT_RPM));
    (quantities, findings)
}

/// The spec with its supply and consumers in order; none where there is no consumer, or one of them or the supply holds a number
/// that cannot be.
pub(crate) fn electrically_sound(spec: &Spec) -> Option<Spec> {
    let (supply, consumers) = (spec.supply.clone().checked().ok()?, checked(&spec.consumers)?);
    (!consumers.is_empty()).then(|| Spec { consumers, supply, ..spec.clone() })
}

/// The consumers, or none when one of them holds a number that cannot be.
fn checked(consumers: &[Slot]) -> Option<Vec<Slot>> {
    let sound = |slot: &Slot| Some(Slot { id: slot.id.clone(), consumer: slot.consumer.clone().checked().ok()? });
    consumers.iter().map(sound).collect()
}

fn load_quantity(load: &StateLoad, most: Option<f64>) -> Option<Quantity> {
    let (id, label) = match load.state {
        RidingState::Standing => return None,
        RidingState::Day => ("load.day", LoadMessage::LoadByDay),
        RidingState::Lights => ("load.lights", LoadMessage::LoadWithLights),
        RidingState::Busy => ("load.busy", LoadMessage::LoadBusy),
    };
    let (judgement, why) = match most {
        Some(most) if load.watts > most => {
            (Judgement::Outside, Some(LoadMessage::LoadAboveOutput { most: Unit::Watt.of(most) }))
        }
        Some(most) => (Judgement::Fine, Some(LoadMessage::LoadWithinOutput { most: Unit::Watt.of(most) })),
        None => (Judgement::Open, None),
    };
    Some(Quantity::new(id, label, load.watts, Unit::Watt, (judgement, why.map(Into::into)), sources::filament_law()))
}

fn balance_quantity(state: RidingState, from_rpm: f64) -> Option<Quantity> {
    let (id, label) = match state {
        RidingState::Lights => ("balance.lights.from-rpm", LoadMessage::BalanceWithLights),
        RidingState::Busy => ("balance.busy.from-rpm", LoadMessage::BalanceBusy),
        RidingState::Standing | RidingState::Day => return None,
    };
    let rpm = Unit::Rpm.of(COMPARED_AT_RPM);
    let judged = if state == RidingState::Busy {
        (Judgement::Open, None)
    } else if from_rpm <= COMPARED_AT_RPM {
        (Judgement::Fine, Some(LoadMessage::BalanceFromInTown { rpm }.into()))
    } else {
        (Judgement::Outside, Some(LoadMessage::BalanceFromAboveTown { rpm }.into()))
    };
    Some(Quantity::new(id, label, from_rpm, Unit::Rpm, judged, sources::balance_limit()))
}

fn indicator_quantity(watts: f64, as_made: Option<f64>, minds_no_load: bool) -> Quantity {
    let judged = match as_made.filter(|made| *made > 0.0) {
        _ if minds_no_load => (Judgement::Fine, Some(LoadMessage::FlasherMindsNoLoad.into())),
        None => (Judgement::Open, None),
        Some(made) if (FLASHER_FROM * made..=FLASHER_TO * made).contains(&watts) => {
            (Judgement::Fine, Some(LoadMessage::FlasherLoadAsMade { made: Unit::Watt.of(made) }.into()))
        }
        Some(made) => (Judgement::Outside, Some(LoadMessage::FlasherLoadOther { made: Unit::Watt.of(made) }.into())),
    };
    let label = LoadMessage::IndicatorsOfSide;
    Quantity::new("indicator.load-per-side", label, watts, Unit::Watt, judged, sources::flasher_load())
}
