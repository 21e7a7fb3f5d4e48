//! The lighting coil of a bike, from what it gives at two engine speeds, and its shunt regulator.

use super::coil::COIL_FEED;
use crate::electrical::{CoilEmf, Volts};
use crate::harness::model::{Element, Harness};
use crate::record::{CoilAt, Component, OutputPoint, Supply};

/// Volts that a coil loses in its own winding at its greatest current, as a share of the rated ones. Our assumption.
const LOST_IN_WINDING: f64 = 0.05;
/// Resistance of a shunt regulator above its voltage on a 12 V machine, ohms: low enough to hold it. Our assumption.
const SHUNT_OHMS: f64 = 0.1;

/// Whether the output is known at two speeds that make a coil; else the circuit has a typical one.
pub(crate) fn is_known(supply: &Supply) -> bool {
    coil(supply).is_some()
}

/// Puts the bike's coil and regulator into a circuit that hangs on a lighting coil.
pub(super) fn of_coil(harness: &mut Harness, supply: &Supply) {
    let Some(at) = harness.elements.iter().position(|element| element.id == "lighting.coil") else { return };
    if let Some((element, own)) = harness.elements.get_mut(at).zip(coil(supply)) {
        element.component = own;
    }
    if supply.kind().is_regulated() {
        let volts = Volts::at_coil(supply);
        let component = Component::ShuntRegulator {
            regulated_volts: volts.charging,
            ohms: SHUNT_OHMS * (volts.system / 12.0).powi(2),
        };
        harness.elements.push(Element::named("coil.regulator", COIL_FEED, &harness.earth, component));
    }
}

/// The coil at idle and at the speed of its greatest output; none where too little is known of it.
fn coil(supply: &Supply) -> Option<Component> {
    let mut points: Vec<&OutputPoint> = supply.output.iter().collect();
    points.sort_by(|one, other| one.rpm.total_cmp(&other.rpm));
    let slow = *points.first()?;
    let fast = points.iter().copied().max_by(|one, other| one.watts.total_cmp(&other.watts))?;
    let rated = Volts::at_coil(supply).test;
    let (slow_amperes, fast_amperes) = (slow.watts / rated, fast.watts / rated);
    let ohms = LOST_IN_WINDING * rated / fast_amperes;
    let at = |position: &str, rpm| {
        let known = CoilEmf {
            rpm,
            test_volts: rated,
            ohms,
            slow_rpm: slow.rpm,
            slow_amperes,
            fast_rpm: fast.rpm,
            fast_amperes,
        };
        let [emf_volts, reactance_ohms] = known.emf_and_reactance()?;
        Some(CoilAt { position: position.to_owned(), emf_volts, reactance_ohms })
    };
    let output = vec![at("idle", supply.idle_rpm.unwrap_or(slow.rpm))?, at("fast", fast.rpm)?];
    Some(Component::LightingCoil { engine: "engine speed".to_owned(), ohms, output })
}

#[cfg(test)]
mod tests {
    use super::super::bike_circuit;
    use super::*;
    use crate::harness::model::Setting;
    use crate::harness::solver::{LampLook, OperatingPoint, solve};
    use crate::record::{Consumer, ConsumerRole, ElectricalSystem, LightSource, Slot, Spec};

    /// A moped of 6 V: 15 W and 5 W on a coil of 9 W at idle and 22 W at speed.
    fn moped(system: ElectricalSystem) -> Spec {
        let lamp = |id: &str, role, watts| Slot {
            id: id.to_owned(),
            consumer: Consumer {
                role: Some(role),
                watts,
                count: 1,
                source: Some(LightSource::Filament),
                ..Consumer::default()
            },
        };
        let supply = Supply {
            system: Some(system),
            system_volts: Some(6.0),
            idle_rpm: Some(1500.0),
            output: vec![OutputPoint { rpm: 1500.0, watts: 9.0 }, OutputPoint { rpm: 5500.0, watts: 22.0 }],
            ..Supply::default()
        };
        let consumers = vec![lamp("h", ConsumerRole::Headlamp, 15.0), lamp("t", ConsumerRole::Tail, 5.0)];
        Spec { supply, consumers, ..Spec::default() }
    }

    fn at(spec: &Spec, engine: &str, without: &str) -> OperatingPoint {
        let mut harness = bike_circuit(&Spec::default(), spec, "coil-lighting").unwrap();
        harness.elements.retain(|element| element.id != "clock.lamp" && element.id != without);
        solve(&harness, &Setting::of(&[("engine speed", engine), ("lights", "head")])).unwrap()
    }

    fn head(point: &OperatingPoint) -> f64 {
        point.flow("head.low").unwrap().volts
    }

    #[test]
    fn the_lamps_are_dark_with_the_engine_stopped_dim_at_idle_and_full_at_speed() {
        let spec = moped(ElectricalSystem::LightingCoil);
        let looks = ["stopped", "idle", "fast"].map(|engine| at(&spec, engine, "").look("head.low").unwrap());
        assert_eq!(looks, [LampLook::Off, LampLook::Dim, LampLook::Full]);
        let volts = head(&at(&spec, "fast", ""));
        // 22 W on 20 W of lamps: below the 8.03 V of a coil that drives its current whatever hangs on it.
        assert!((7.5..8.03).contains(&volts), "{volts}");
    }

    #[test]
    fn without_the_tail_lamp_the_headlamp_burns_too_bright_unless_a_regulator_holds_it() {
        let spec = moped(ElectricalSystem::LightingCoil);
        let out = at(&spec, "fast", "tail");
        assert_eq!(out.look("head.low"), Some(LampLook::TooBright), "{}", head(&out));
        let held = at(&moped(ElectricalSystem::LightingCoilRegulated), "fast", "tail");
        assert!((6.3..7.1).contains(&head(&held)), "{}", head(&held));
    }
}
