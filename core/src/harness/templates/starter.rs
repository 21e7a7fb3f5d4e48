//! Electric starter: button, solenoid, motor, and the lock that wants neutral or a pulled clutch.

use super::build::{Build, ENGINE, FRAME, SWITCHED};
use super::signals::switch_in_gearbox;
use crate::record::Component;

/// A small starter: about 60 A turning, 150 A stalled on a 12 V machine; typical values, no source.
pub(super) fn starter(build: &mut Build) {
    build.switch("start button", &["free", "pressed"]);
    build.switch("clutch lever", &["free", "pulled"]);
    build.switch("crankshaft", &["turns", "stuck"]);
    build.run("start.feed", "BN", [SWITCHED, "start in"], [1.0, 0.6], "right bar");
    build.contact("start.button", ["start in", "start out"], "start button", &["pressed"]);
    build.run("coil.feed", "YE/RD", ["start out", "coil in"], [1.0, 0.9], "solenoid");
    let coil = Component::Coil {
        ohms: build.scaled_ohms(4.0),
        pull_in_volts: build.scaled(7.0),
        let_go_volts: build.scaled(3.5),
    };
    build.add("solenoid.coil", "coil in", "coil out", coil);
    build.run("lock.wire", "GN/RD", ["coil out", "lock"], [1.0, 0.6], "solenoid");
    build.contact("clutch.switch", ["lock", "clutch earth"], "clutch lever", &["pulled"]);
    build.earth("clutch.earth", "clutch earth", FRAME);
    // Keeps the clutch switch from lighting the neutral lamp.
    let diode = Component::Diode { saturation_amperes: 2.52e-9, emission: 1.752, ohms: 0.05 };
    build.add("lock.diode", "lock", "neutral sense", diode);
    switch_in_gearbox(build);
    build.wire("cable.battery", "RD", ["battery +", "solenoid in"], 10.0, 0.3);
    let contact = Component::RelayContact { coil: "solenoid.coil".to_owned(), made_when_pulled: true, ohms: 0.001 };
    build.add("solenoid.contact", "solenoid in", "solenoid out", contact);
    build.wire("cable.starter", "BK", ["solenoid out", "starter in"], 10.0, 0.5);
    let motor = Component::Starter {
        rated_volts: build.scaled(10.0),
        stalled_ohms: build.scaled_ohms(0.06),
        turning_ohms: build.scaled_ohms(0.17),
        crank: "crankshaft".to_owned(),
        turns: "turns".to_owned(),
    };
    build.add("starter", "starter in", ENGINE, motor);
}
