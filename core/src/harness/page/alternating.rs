//! What alternating current means for lamps, flashers and the circuits as they are drawn.

use super::message::{CircuitMessage, LampsMessage};
use crate::electrical::on_coil;
use crate::harness::model::Harness;
use crate::harness::templates::is_known;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Component, Consumer, FlasherKind, Indication, LightSource, Supply};

/// Whether a lamp and its flasher work on what feeds them.
pub(super) fn of_lamp(supply: &Supply, lamp: &Consumer, indication: &Indication) -> Vec<Finding> {
    if !on_coil(supply.kind(), lamp) {
        return Vec::new();
    }
    let electronic = matches!(indication.flasher, Some(FlasherKind::ElectronicTwo | FlasherKind::ElectronicThree));
    let flasher = electronic && lamp.role.is_some_and(crate::record::ConsumerRole::is_indicator);
    let led = lamp.source == Some(LightSource::Led);
    let said = [(flasher, LampsMessage::FlasherAlternating), (led, LampsMessage::LedAlternating)];
    let said = said.into_iter().filter(|(holds, _)| *holds);
    said.map(|(_, text)| Finding::new(FindingCode::LampAlternating, Weight::Care, text)).collect()
}

/// What is worth saying of what feeds a circuit: a meter on alternating current, a coil of which too little is known, parts that its
/// effective values do not hold for, and a circuit of a battery on a bike that has none.
pub(super) fn of_circuit(supply: &Supply, harness: &Harness) -> Vec<Finding> {
    let care = |code, text: CircuitMessage| Finding::new(code, Weight::Care, text);
    if !harness.is_alternating() {
        let without = !supply.kind().has_battery();
        return without
            .then(|| care(FindingCode::CircuitDirectCurrent, CircuitMessage::DirectCurrent))
            .into_iter()
            .collect();
    }
    if harness.element("spark.coil").is_some() {
        return vec![care(FindingCode::CircuitIgnition, CircuitMessage::Ignition)];
    }
    let has = |of: fn(&Component) -> bool| harness.elements.iter().any(|element| of(&element.component));
    let mut findings = vec![care(FindingCode::CircuitAlternating, CircuitMessage::Alternating)];
    if !is_known(supply) {
        findings.push(care(FindingCode::CircuitCoilUnknown, CircuitMessage::CoilUnknown));
    }
    if has(|of| matches!(of, Component::ShuntRegulator { .. })) {
        findings.push(Finding::new(FindingCode::CircuitAlternating, Weight::Note, CircuitMessage::CutWave));
    }
    if has(|of| matches!(of, Component::LedDriven { .. } | Component::LedSeries { .. } | Component::Diode { .. })) {
        findings.push(care(FindingCode::LampAlternating, CircuitMessage::FollowsTheWave));
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::harness::templates::template;
    use crate::record::{ConsumerRole, ElectricalSystem, OutputPoint, Use};

    #[test]
    fn a_coil_lights_filaments_and_neither_led_lamps_nor_electronic_flashers() {
        let coil = Supply { system: Some(ElectricalSystem::LightingCoil), ..Supply::default() };
        let lamp = |source| Consumer {
            role: Some(ConsumerRole::Indicators),
            source: Some(source),
            used: Some(Use::Indicating),
            ..Consumer::default()
        };
        let thermal = Indication { flasher: Some(FlasherKind::Thermal), ..Indication::default() };
        let electronic = Indication { flasher: Some(FlasherKind::ElectronicThree), ..Indication::default() };
        let count = |supply: &Supply, source, flasher| of_lamp(supply, &lamp(source), flasher).len();
        assert_eq!(count(&coil, LightSource::Filament, &thermal), 0);
        assert_eq!(count(&coil, LightSource::Led, &electronic), 2);
        assert_eq!(count(&Supply::default(), LightSource::Led, &electronic), 0);
        let mixed = Supply { system: Some(ElectricalSystem::LightingCoilAndBattery), ..coil.clone() };
        assert_eq!(count(&mixed, LightSource::Led, &electronic), 0);
    }

    #[test]
    fn a_circuit_on_a_coil_asks_for_alternating_volts_and_one_on_a_battery_that_is_not_there_says_so() {
        let codes = |supply: &Supply, id: &str| -> Vec<FindingCode> {
            of_circuit(supply, &template(id, 6.0).unwrap()).into_iter().map(|finding| finding.code).collect()
        };
        let coil = Supply { system: Some(ElectricalSystem::LightingCoil), ..Supply::default() };
        assert_eq!(codes(&coil, "lighting"), [FindingCode::CircuitDirectCurrent]);
        assert_eq!(codes(&coil, "coil-lighting"), [FindingCode::CircuitAlternating, FindingCode::CircuitCoilUnknown]);
        let output = [(1500.0, 9.0), (5500.0, 22.0)].map(|(rpm, watts)| OutputPoint { rpm, watts }).to_vec();
        assert_eq!(codes(&Supply { output, ..coil.clone() }, "coil-lighting"), [FindingCode::CircuitAlternating]);
        assert_eq!(codes(&coil, "ignition-stop"), [FindingCode::CircuitIgnition]);
        assert_eq!(codes(&Supply::default(), "lighting"), []);
    }
}
