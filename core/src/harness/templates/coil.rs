//! Circuits of a machine whose lamps hang on a lighting coil: no battery, no fuse, no key. The coil gives alternating current while
//! the engine runs, the light switch carries it straight to the lamps, and the engine is the way back.

use super::build::{Build, ENGINE, FRAME};
use super::lighting::rear_earth;
use crate::record::{CoilAt, Component};

/// Where the coil leaves the engine.
const COIL_OUT: &str = "flywheel plug";
/// Where its current is handed to what it feeds.
pub(super) const COIL_FEED: &str = "coil feed";

/// Headlamp 15/15 W behind light and dip switch, tail lamp 5 W, instrument lamp 1.7 W.
pub(super) fn lighting(build: &mut Build) {
    supply(build);
    build.switch("lights", &["off", "head"]);
    build.switch("dip", &["low", "high"]);
    build.run("lights.feed", "YE", [COIL_FEED, "lights in"], [1.0, 0.5], "handlebar");
    build.contact("lights.head", ["lights in", "dip in"], "lights", &["head"]);
    build.contact("dip.low", ["dip in", "low out"], "dip", &["low"]);
    build.contact("dip.high", ["dip in", "high out"], "dip", &["high"]);
    build.run("head.low.feed", "GN", ["low out", "head low"], [1.0, 0.4], "headlamp");
    build.run("head.high.feed", "BU", ["high out", "head high"], [1.0, 0.4], "headlamp");
    build.lamp("head.low", "head low", "head common", 15.0);
    build.lamp("head.high", "head high", "head common", 15.0);
    build.lamp("clock.lamp", "dip in", "head common", 1.7);
    build.earth("head.earth", "head common", FRAME);
    build.run("tail.feed", "GY", ["dip in", "tail in"], [0.75, 1.4], "rear");
    build.lamp("tail", "tail in", "rear common", 5.0);
    rear_earth(build);
}

/// Stop lamp of 10 W, straight from the coil.
pub(super) fn stop_lamp(build: &mut Build) {
    supply(build);
    build.switch("rear brake", &["free", "pressed"]);
    build.run("brake.feed", "YE/BK", [COIL_FEED, "brake in"], [0.75, 0.6], "brake switches");
    build.contact("brake.rear", ["brake in", "brake out"], "rear brake", &["pressed"]);
    build.run("stop.feed", "RD/YE", ["brake out", "stop in"], [0.75, 1.0], "rear");
    build.lamp("stop", "stop in", "rear common", 10.0);
    rear_earth(build);
}

/// Horn of 10 W that hums on alternating current, its button between horn and frame.
pub(super) fn horn(build: &mut Build) {
    supply(build);
    build.switch("horn button", &["free", "pressed"]);
    build.run("horn.feed", "YE/GN", [COIL_FEED, "horn in"], [0.75, 0.7], "horn");
    let horn = Component::Horn { watts: 10.0, rated_volts: build.scaled(12.0) };
    build.add("horn", "horn in", "horn out", horn);
    build.run("horn.back", "PK", ["horn out", "button in"], [0.75, 0.6], "horn");
    build.contact("horn.button", ["button in", "button out"], "horn button", &["pressed"]);
    build.earth("horn.earth", "button out", FRAME);
}

/// Everything on the lighting coil.
pub(super) fn whole(build: &mut Build) {
    lighting(build);
    stop_lamp(build);
    horn(build);
}

/// The spark of a magneto and the switch that stops the engine: it leads the coil of the spark to earth.
pub(super) fn ignition_stop(build: &mut Build) {
    build.measure_from(ENGINE);
    build.switch("engine speed", &["stopped", "idle", "fast"]);
    build.switch("stop switch", &["run", "stop"]);
    // Effective values between the sparks, invented: the peak when the points open is a hundred times as high.
    let output = vec![turning("idle", 3.0, 1.0), turning("fast", 12.0, 4.0)];
    let coil = Component::LightingCoil { engine: "engine speed".to_owned(), ohms: 0.6, output };
    build.add("spark.coil", "spark coil", ENGINE, coil);
    build.add("ignition", "spark coil", ENGINE, Component::Load { watts: 4.0, rated_volts: 2.5 });
    build.add("earth.mount", ENGINE, FRAME, Component::Strap { ohms: 0.001 });
    build.run("stop.wire", "BK/WH", ["spark coil", "stop switch in"], [0.75, 0.9], "handlebar");
    build.contact("stop.contact", ["stop switch in", "stop switch out"], "stop switch", &["stop"]);
    build.earth("stop.earth", "stop switch out", FRAME);
}

/// The coil, the plug at the flywheel, and the engine in the frame.
fn supply(build: &mut Build) {
    if build.has("lighting.coil") {
        return;
    }
    build.measure_from(ENGINE);
    build.switch("engine speed", &["stopped", "idle", "fast"]);
    // About 9 W at idle and 22 W at speed, invented; a bike that knows its output brings its own.
    let ohms = build.scaled_ohms(0.4);
    let output = vec![
        turning("idle", build.scaled(14.7), build.scaled_ohms(8.9)),
        turning("fast", build.scaled(55.0), build.scaled_ohms(32.6)),
    ];
    let coil = Component::LightingCoil { engine: "engine speed".to_owned(), ohms, output };
    build.add("lighting.coil", COIL_OUT, ENGINE, coil);
    build.add("earth.mount", ENGINE, FRAME, Component::Strap { ohms: 0.001 });
    build.run("coil.out", "YE", [COIL_OUT, COIL_FEED], [1.0, 0.5], "flywheel");
}

fn turning(position: &str, emf_volts: f64, reactance_ohms: f64) -> CoilAt {
    CoilAt { position: position.to_owned(), emf_volts, reactance_ohms }
}
