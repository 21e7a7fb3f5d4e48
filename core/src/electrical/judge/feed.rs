//! What feeds which consumer, and what of the output is there for it.

use super::balance::StateLoad;
use crate::electrical::formulas::{HALF_OF_THE_WAVE, RidingState, Volts, load_watts};
use crate::record::{Consumer, ConsumerRole, ElectricalSystem, IgnitionKind, OutputPoint, Slot, Supply, Use};

/// What the consumers of a bike hang on.
#[derive(Clone, Debug, Default)]
pub(crate) struct Fed {
    /// On the battery's direct current.
    pub(crate) battery: Vec<Slot>,
    /// On the alternating current of the lighting coil.
    pub(crate) coil: Vec<Slot>,
}

/// Sorts consumers by what feeds them. A magneto makes its spark from a coil of its own and loads neither.
pub(crate) fn fed(supply: &Supply, consumers: &[Slot]) -> Fed {
    let mut fed = Fed::default();
    for slot in consumers.iter().filter(|slot| !is_own(supply, &slot.consumer)) {
        let side = if on_coil(supply.kind(), &slot.consumer) { &mut fed.coil } else { &mut fed.battery };
        side.push(slot.clone());
    }
    fed
}

fn is_own(supply: &Supply, consumer: &Consumer) -> bool {
    supply.ignition == Some(IgnitionKind::Magneto) && consumer.role == Some(ConsumerRole::Ignition)
}

/// Whether alternating current reaches a consumer.
pub(crate) fn on_coil(system: ElectricalSystem, consumer: &Consumer) -> bool {
    match system {
        ElectricalSystem::LightingCoilAndBattery => consumer.used == Some(Use::Lights),
        other => other.has_lighting_coil(),
    }
}

/// The supply as it works: no battery figures without a battery, and behind one diode half of the output.
pub(crate) fn at_work(supply: &Supply) -> Supply {
    let mut supply = supply.clone().as_built();
    if supply.kind() == ElectricalSystem::HalfWaveBattery {
        let half = |point: &OutputPoint| OutputPoint { rpm: point.rpm, watts: HALF_OF_THE_WAVE * point.watts };
        supply.output = supply.output.iter().map(half).collect();
    }
    supply
}

/// Load in each riding state of what is tried, with that of the fitted bike beside it.
pub(crate) fn state_loads(supply: &Supply, tried: &Fed, fitted: &Fed) -> [StateLoad; 4] {
    RidingState::ALL.map(|state| {
        let (watts, amperes) = tried.load(supply, state);
        StateLoad { state, watts, amperes, fitted_watts: fitted.load(supply, state).0 }
    })
}

impl Fed {
    /// The consumers of battery and coil that may draw current in a state, with their voltages. With the engine off the coil gives none.
    pub(crate) fn parts(&self, supply: &Supply, state: RidingState) -> Vec<(&[Slot], Volts)> {
        let mut parts: Vec<(&[Slot], Volts)> = vec![(&self.battery, Volts::of(supply))];
        if state != RidingState::Standing {
            parts.push((&self.coil, Volts::at_coil(supply)));
        }
        parts.retain(|(slots, _)| !slots.is_empty());
        parts
    }

    /// Watts and amperes in a state.
    fn load(&self, supply: &Supply, state: RidingState) -> (f64, f64) {
        self.parts(supply, state).iter().fold((0.0, 0.0), |(watts, amperes), (slots, volts)| {
            let more = load_watts(slots, state, volts);
            (watts + more, amperes + more / volts.in_state(state))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slot(id: &str, role: ConsumerRole, used: Use) -> Slot {
        let consumer = Consumer { role: Some(role), watts: 10.0, count: 1, used: Some(used), ..Consumer::default() };
        Slot { id: id.to_owned(), consumer }
    }

    fn counts(system: ElectricalSystem, ignition: IgnitionKind) -> (usize, usize) {
        let slots = [
            slot("head", ConsumerRole::Headlamp, Use::Lights),
            slot("stop", ConsumerRole::Stop, Use::Braking),
            slot("spark", ConsumerRole::Ignition, Use::Steady),
        ];
        let supply = Supply { system: Some(system), ignition: Some(ignition), ..Supply::default() };
        let fed = fed(&supply, &slots);
        (fed.battery.len(), fed.coil.len())
    }

    #[test]
    fn lamps_on_alternating_current_and_a_magneto_do_not_load_the_battery() {
        use ElectricalSystem::*;
        assert_eq!(counts(RegulatedBattery, IgnitionKind::BatteryPoints), (3, 0));
        assert_eq!(counts(HalfWaveBattery, IgnitionKind::Magneto), (2, 0));
        assert_eq!(counts(LightingCoil, IgnitionKind::Magneto), (0, 2));
        assert_eq!(counts(LightingCoilAndBattery, IgnitionKind::BatteryPoints), (2, 1));
    }

    #[test]
    fn one_diode_leaves_half_of_the_output() {
        let output = vec![OutputPoint { rpm: 5000.0, watts: 60.0 }];
        let of = |system| at_work(&Supply { system, output: output.clone(), ..Supply::default() }).output[0].watts;
        assert_eq!((of(None), of(Some(ElectricalSystem::HalfWaveBattery))), (60.0, 30.0));
        assert_eq!(of(Some(ElectricalSystem::LightingCoil)), 60.0);
    }
}
