//! A template with the lamps, flasher, pilots and resistors of a bike in it.

use super::coil_of_bike::of_coil;
use super::template;
use crate::electrical::{Volts, indicating_watts};
use crate::harness::model::{Element, Harness};
use crate::record::{Component, Consumer, ConsumerRole, FlasherKind, LightSource, PilotFitting, Spec};

/// Which elements of the templates stand for a consumer of the bike, by its role.
fn elements(role: ConsumerRole) -> &'static [&'static str] {
    match role {
        ConsumerRole::Headlamp => &["head.low", "head.high"],
        ConsumerRole::DippedBeam => &["head.low"],
        ConsumerRole::MainBeam => &["head.high"],
        ConsumerRole::Tail => &["tail"],
        ConsumerRole::Stop => &["stop"],
        ConsumerRole::Indicators => &["left.front", "left.rear", "right.front", "right.rear"],
        ConsumerRole::IndicatorsFront => &["left.front", "right.front"],
        ConsumerRole::IndicatorsRear => &["left.rear", "right.rear"],
        ConsumerRole::IndicatorPilot => &["pilot", "pilot.left", "pilot.right"],
        ConsumerRole::MainBeamPilot => &["beam.pilot"],
        ConsumerRole::NeutralPilot => &["neutral.lamp"],
        ConsumerRole::Instrument => &["clock.lamp"],
        ConsumerRole::Horn => &["horn"],
        ConsumerRole::Ignition => &["ignition"],
        ConsumerRole::Position | ConsumerRole::NumberPlate => &[],
    }
}

/// Share of its load below which a thermal flasher does not flash. Common practice, no source.
const LEAST_SHARE: f64 = 0.75;
/// A common silicon rectifier diode, from its maker's circuit model (from memory): saturation current, emission, ohms.
const RECTIFIER: (f64, f64, f64) = (2.52e-9, 1.752, 0.05);

/// A template as it is on this bike; none when there is no such template. What the bike does not say stays as in the template.
///
/// ```
/// use layshaft_core::record::Spec;
/// use layshaft_core::harness::{bike_circuit, template};
/// assert_eq!(bike_circuit(&Spec::default(), &Spec::default(), "horn"), template("horn", 12.0));
/// ```
pub fn bike_circuit(standard: &Spec, spec: &Spec, mark: &str) -> Option<Harness> {
    let volts = Volts::of(&spec.supply);
    let mut harness = template(mark, volts.system)?;
    pilots(&mut harness, spec);
    for slot in &spec.consumers {
        let ids = slot.consumer.role.map(elements).unwrap_or_default();
        for element in harness.elements.iter_mut().filter(|element| ids.contains(&element.id.as_str())) {
            if let Some(component) = component(&slot.consumer, &element.component, &volts) {
                element.component = component;
            }
        }
    }
    flasher(&mut harness, standard, spec, &volts);
    of_coil(&mut harness, &spec.supply);
    left_out(&mut harness, spec, mark);
    resistors(&mut harness, spec);
    Some(harness)
}

/// What a consumer of the bike is in a circuit; none where it says too little.
fn component(consumer: &Consumer, now: &Component, volts: &Volts) -> Option<Component> {
    if consumer.watts < 0.01 {
        return None;
    }
    let (watts, at) = (consumer.watts, consumer.test_volts.unwrap_or(volts.test));
    match (consumer.source?, now) {
        (LightSource::Filament, _) => Some(Component::Filament { watts, test_volts: at }),
        (LightSource::Led, _) => Some(Component::LedDriven { watts, rated_volts: at }),
        (LightSource::Motor, Component::Horn { rated_volts, .. }) => {
            Some(Component::Horn { watts, rated_volts: consumer.test_volts.unwrap_or(*rated_volts) })
        }
        (LightSource::Electronics, Component::Load { rated_volts, .. }) => {
            Some(Component::Load { watts, rated_volts: consumer.test_volts.unwrap_or(*rated_volts) })
        }
        _ => None,
    }
}

/// Leaves out what the bike has not: on a coil without a stop lamp or horn, and the tail lamp where it hangs on the coil beside the battery.
fn left_out(harness: &mut Harness, spec: &Spec, mark: &str) {
    let has = |role| spec.consumers.is_empty() || spec.consumer_as(|of| of == role).is_some();
    let mut gone: Vec<&str> = Vec::new();
    if mark == "coil-whole" && !has(ConsumerRole::Stop) {
        gone.extend(["stop", "brake."]);
    }
    if mark == "coil-whole" && !has(ConsumerRole::Horn) {
        gone.push("horn");
    }
    if mark == "stop-lamp" && spec.supply.kind().has_lighting_coil() {
        gone.push("tail");
    }
    harness.elements.retain(|element| !gone.iter().any(|part| element.id.starts_with(part)));
    let Harness { switches, elements, .. } = harness;
    switches
        .retain(|card| gone.is_empty() || elements.iter().any(|element| element.component.switch() == Some(&card.id)));
}

/// A thermal flasher needs its current; an electronic one does not stop for want of it.
fn flasher(harness: &mut Harness, standard: &Spec, spec: &Spec, volts: &Volts) {
    let made_for = spec.indication.flasher_watts.or_else(|| indicating_watts(&standard.consumers, volts));
    for element in &mut harness.elements {
        let Component::Flasher { least_amperes, .. } = &mut element.component else { continue };
        match spec.indication.flasher {
            Some(FlasherKind::ElectronicTwo | FlasherKind::ElectronicThree) => *least_amperes = None,
            Some(FlasherKind::Thermal) => {
                *least_amperes = made_for.map(|watts| LEAST_SHARE * watts / volts.charging).or(*least_amperes);
            }
            None => {}
        }
    }
}

/// Puts the pilots in place of the single one between the circuits.
fn pilots(harness: &mut Harness, spec: &Spec) {
    let Some(at) = harness.elements.iter().position(|element| element.id == "pilot") else { return };
    let Some(pilot) = harness.elements.get(at).cloned() else { return };
    let frame = harness.frame.clone();
    let mut instead = match spec.indication.pilot {
        Some(PilotFitting::OneWithDiodes) => {
            let (saturation_amperes, emission, ohms) = RECTIFIER;
            let diode = || Component::Diode { saturation_amperes, emission, ohms };
            vec![
                Element::named("pilot.diode.left", "left out", "pilot in", diode()),
                Element::named("pilot.diode.right", "right out", "pilot in", diode()),
                Element::named("pilot", "pilot in", "pilot out", pilot.component),
            ]
        }
        Some(PilotFitting::OneEachSide) => vec![
            Element::named("pilot.left", "left out", "pilot out", pilot.component.clone()),
            Element::named("pilot.right", "right out", "pilot out", pilot.component),
        ],
        Some(PilotFitting::BetweenSides) | None => return,
    };
    instead.push(Element::named("pilot.earth", "pilot out", &frame, Component::Joint { ohms: 0.005, plug: None }));
    harness.elements.splice(at..=at, instead);
}

/// Load resistors of a side, side by side to the frame.
fn resistors(harness: &mut Harness, spec: &Spec) {
    let Some(ohms) = spec.indication.resistor_ohms else { return };
    let count = spec.indication.resistors_per_side.unwrap_or(1);
    if count == 0 {
        return;
    }
    for side in ["left", "right"] {
        let from = format!("{side} out");
        if harness.nodes().contains(&from.as_str()) {
            let component = Component::Resistor { ohms: ohms / f64::from(count) };
            harness.elements.push(Element::named(&format!("{side}.resistor"), &from, &harness.frame, component));
        }
    }
}
