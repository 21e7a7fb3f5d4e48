//! What alternating current means for lamps, flashers and the circuits as they are drawn.

use super::message::{CircuitMessage, LampsMessage};
use crate::electrical::on_coil;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Consumer, FlasherKind, Indication, LightSource, Supply};

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

/// The circuits are drawn with a battery; a bike without one, or with its lights on a coil, is told so.
pub(super) fn of_circuit(supply: &Supply) -> Option<Finding> {
    let coil = supply.kind().has_lighting_coil();
    coil.then(|| Finding::new(FindingCode::CircuitDirectCurrent, Weight::Care, CircuitMessage::DirectCurrent))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::{ConsumerRole, ElectricalSystem, Use};

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
        assert!(of_circuit(&coil).is_some() && of_circuit(&Supply::default()).is_none());
    }
}
