//! The hand that writes a template down: one line for each run of wire, joint or part.

use crate::harness::model::{Element, Harness, SwitchCard};
use crate::record::Component;

/// Contact resistance of a plug contact in order, ohms.
const PLUG_OHMS: f64 = 0.005;
/// Contact resistance of a handlebar switch in order, ohms.
pub(super) const SWITCH_OHMS: f64 = 0.01;
/// Temperature that a harness is taken to have, °C.
const CELSIUS: f64 = 30.0;
/// Where the key leaves its current.
pub(super) const SWITCHED: &str = "switched live";
/// The frame.
pub(super) const FRAME: &str = "frame";
/// The engine, which is earthed by its own strap.
pub(super) const ENGINE: &str = "engine";

/// A harness that is being written down.
pub(super) struct Build {
    harness: Harness,
    system_volts: f64,
}

impl Build {
    pub(super) fn new(name: &str, system_volts: f64) -> Self {
        let harness = Harness {
            name: name.to_owned(),
            earth: "battery -".to_owned(),
            frame: FRAME.to_owned(),
            switches: Vec::new(),
            elements: Vec::new(),
        };
        Self { harness, system_volts }
    }

    pub(super) fn done(self) -> Harness {
        self.harness
    }

    /// Measures voltages from another point than the battery's negative terminal.
    pub(super) fn measure_from(&mut self, point: &str) {
        point.clone_into(&mut self.harness.earth);
    }

    /// Whether an element is there already.
    pub(super) fn has(&self, id: &str) -> bool {
        self.harness.element(id).is_some()
    }

    /// A voltage of a 12 V machine, scaled to this one.
    pub(super) fn scaled(&self, volts: f64) -> f64 {
        volts * self.system_volts / 12.0
    }

    /// A resistance of a 12 V machine that takes the same power here.
    pub(super) fn scaled_ohms(&self, ohms: f64) -> f64 {
        ohms * (self.system_volts / 12.0).powi(2)
    }

    /// Adds a switch unless it is there already.
    pub(super) fn switch(&mut self, id: &str, positions: &[&str]) {
        if self.harness.switches.iter().any(|card| card.id == id) {
            return;
        }
        self.harness.switches.push(SwitchCard::named(id, positions));
    }

    pub(super) fn add(&mut self, id: &str, from: &str, to: &str, component: Component) {
        self.harness.elements.push(Element::named(id, from, to, component));
    }

    /// A wire that ends in a contact of a plug: marks `<id>.wire` and `<id>.plug`.
    pub(super) fn run(&mut self, id: &str, colour: &str, ends: [&str; 2], size: [f64; 2], plug: &str) {
        let [from, to] = ends;
        let [section_mm2, length_metres] = size;
        let before = format!("{id} plug");
        self.wire(&format!("{id}.wire"), colour, [from, &before], section_mm2, length_metres);
        let plug = Some(plug.to_owned());
        let joint = Component::Joint { ohms: PLUG_OHMS, plug };
        self.add(&format!("{id}.plug"), &before, to, joint);
    }

    pub(super) fn wire(&mut self, id: &str, colour: &str, [from, to]: [&str; 2], section_mm2: f64, length_metres: f64) {
        self.add(id, from, to, Component::Wire { section_mm2, length_metres, celsius: CELSIUS });
        if let Some(wire) = self.harness.elements.last_mut() {
            wire.colour = Some(colour.to_owned());
        }
    }

    /// An earth point: a wire or eyelet to the frame or engine.
    pub(super) fn earth(&mut self, id: &str, from: &str, to: &str) {
        self.add(id, from, to, Component::Joint { ohms: PLUG_OHMS, plug: None });
    }

    pub(super) fn contact(&mut self, id: &str, ends: [&str; 2], switch: &str, closed_in: &[&str]) {
        let [from, to] = ends;
        let closed_in = closed_in.iter().map(|position| (*position).to_owned()).collect();
        let contact = Component::Contact { switch: switch.to_owned(), closed_in, ohms: SWITCH_OHMS };
        self.add(id, from, to, contact);
    }

    /// A filament lamp with its watts at the test voltage, 13.5 V of a 12 V machine.
    pub(super) fn lamp(&mut self, id: &str, from: &str, to: &str, watts: f64) {
        let test_volts = self.scaled(13.5);
        self.add(id, from, to, Component::Filament { watts, test_volts });
    }

    /// Battery, main fuse, key, and the straps of frame and engine.
    pub(super) fn supply(&mut self) {
        self.switch("key", &["off", "on"]);
        let battery = Component::Battery { emf_volts: self.scaled(12.6), internal_ohms: self.scaled_ohms(0.02) };
        self.add("battery", "battery +", "battery -", battery);
        self.add("earth.frame", "battery -", FRAME, Component::Strap { ohms: 0.002 });
        self.add("earth.engine", "battery -", ENGINE, Component::Strap { ohms: 0.001 });
        self.wire("main.wire", "RD", ["battery +", "fuse in"], 2.5, 0.25);
        let rated_amperes = if self.system_volts < 9.0 { 25.0 } else { 15.0 };
        self.add("main.fuse", "fuse in", "fuse out", Component::Fuse { rated_amperes, ohms: 0.004 });
        self.run("key.feed", "RD", ["fuse out", "key in"], [2.5, 0.8], "key");
        self.contact("key.contact", ["key in", "key out"], "key", &["on"]);
        self.run("key.out", "BN", ["key out", SWITCHED], [2.5, 0.4], "key");
    }
}
