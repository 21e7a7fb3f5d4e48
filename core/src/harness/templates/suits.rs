//! Which circuits a bike has: fed by its battery or by its lighting coil, and only with what hangs in them.

use crate::record::{Bike, ConsumerRole, ElectricalSystem, IgnitionKind, Starter};

/// What feeds a circuit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Feeds {
    /// The battery.
    Battery,
    /// The lighting coil.
    Coil,
    /// A magneto that makes nothing but the spark.
    Magneto,
}

/// Whether a bike has the circuit with this id that is fed so. What nobody has told counts as there.
pub(super) fn suits(id: &str, feeds: Feeds, bike: &Bike) -> bool {
    let supply = &bike.fitted.supply;
    let system = supply.kind();
    let lamps_known = !bike.fitted.consumers.is_empty();
    let has = |of: fn(ConsumerRole) -> bool| !lamps_known || bike.fitted.consumer_as(of).is_some();
    let beside = system == ElectricalSystem::LightingCoilAndBattery;
    let fed = match feeds {
        // The lights of a coil beside a battery hang on the coil alone, and a machine with both has two nets.
        Feeds::Battery => system.has_battery() && !(beside && matches!(id, "lighting" | "whole")),
        Feeds::Coil => system.has_lighting_coil() && (!beside || id == "coil-lighting"),
        Feeds::Magneto => supply.ignition == Some(IgnitionKind::Magneto),
    };
    fed && match id {
        "starter" => bike.identity.starter != Some(Starter::Kick),
        "indicators-one-pilot" | "indicators-two-pilots" => has(ConsumerRole::is_indicator),
        "stop-lamp" | "coil-stop-lamp" => has(|role| role == ConsumerRole::Stop),
        "horn" | "coil-horn" => has(|role| role == ConsumerRole::Horn),
        _ => true,
    }
}

#[cfg(test)]
mod tests {
    use super::super::TEMPLATES;
    use super::*;
    use crate::record::{Consumer, Slot};

    fn suited(system: Option<ElectricalSystem>, roles: &[ConsumerRole]) -> Vec<&'static str> {
        let mut bike = Bike::default();
        bike.fitted.supply.system = system;
        bike.fitted.supply.ignition = Some(IgnitionKind::Magneto);
        bike.identity.starter = Some(Starter::Kick);
        let slot = |role: &ConsumerRole| Slot {
            id: format!("{role:?}"),
            consumer: Consumer { role: Some(*role), ..Consumer::default() },
        };
        bike.fitted.consumers = roles.iter().map(slot).collect();
        TEMPLATES.iter().filter(|template| template.suits(&bike)).map(|template| template.id).collect()
    }

    #[test]
    fn a_bike_without_a_battery_has_circuits_of_its_coil_and_nothing_of_a_battery() {
        let roles = [ConsumerRole::Headlamp, ConsumerRole::Horn];
        let coil = suited(Some(ElectricalSystem::LightingCoil), &roles);
        assert_eq!(coil, ["coil-lighting", "coil-horn", "coil-whole", "ignition-stop"]);
    }

    #[test]
    fn beside_a_battery_only_the_lights_hang_on_the_coil() {
        let both = suited(Some(ElectricalSystem::LightingCoilAndBattery), &[ConsumerRole::Stop, ConsumerRole::Horn]);
        let wanted =
            ["coil-lighting", "stop-lamp", "horn", "neutral", "charging", "charging-three-phase", "ignition-stop"];
        assert_eq!(both, wanted);
        assert_eq!(suited(None, &[])[0], "lighting");
    }
}
