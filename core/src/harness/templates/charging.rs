//! Charging: regulator with rectifier, its plug, and the loads of ignition by the state of the engine.

use super::build::{Build, ENGINE, SWITCHED};
use crate::record::{Component, OutputAt};

/// A single-phase flywheel alternator of about 126 W: 2 A at idle and 9 A at speed on a 12 V machine.
pub(super) fn single_phase(build: &mut Build) {
    regulator(build, [2.0, 9.0], 1.5);
}

/// A three-phase alternator of about 200 W: 5 A at idle and 14 A at speed on a 12 V machine.
pub(super) fn three_phase(build: &mut Build) {
    regulator(build, [5.0, 14.0], 2.5);
}

fn regulator(build: &mut Build, [idle, fast]: [f64; 2], section_mm2: f64) {
    build.switch("engine speed", &["stopped", "idle", "fast"]);
    let amperes = 12.0 / build.scaled(12.0);
    let regulator = Component::Regulator {
        regulated_volts: build.scaled(14.4),
        engine: "engine speed".to_owned(),
        output: vec![
            OutputAt { position: "idle".to_owned(), amperes: idle * amperes },
            OutputAt { position: "fast".to_owned(), amperes: fast * amperes },
        ],
    };
    build.add("regulator", "regulator +", "regulator -", regulator);
    let size = [section_mm2, 0.6];
    build.run("charge.live", "RD/WH", ["regulator +", "fuse out"], size, "regulator");
    build.run("charge.earth", "BK", ["regulator -", "regulator earth"], size, "regulator");
    build.earth("regulator.earth", "regulator earth", ENGINE);
    build.run("ignition.feed", "BN", [SWITCHED, "ignition in"], [1.0, 0.4], "ignition");
    let ignition = Component::Load { watts: 18.0, rated_volts: build.scaled(12.0) };
    build.add("ignition", "ignition in", "ignition out", ignition);
    build.earth("ignition.earth", "ignition out", ENGINE);
}
