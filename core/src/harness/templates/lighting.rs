//! Headlamp with dip switch, tail lamp, instrument lamp, and the stop lamp with both brake switches.

use super::build::{Build, FRAME, SWITCHED};

/// Headlamp 35/35 W with dip switch, tail 5 W, instrument lamp 1.7 W, main-beam tell-tale 1.7 W.
pub(super) fn lighting(build: &mut Build) {
    build.switch("lights", &["off", "position", "head"]);
    build.switch("dip", &["low", "high"]);
    build.run("lights.feed", "BN/WH", [SWITCHED, "lights in"], [1.5, 0.5], "left bar");
    let ends = ["lights in", "position out"];
    build.contact("lights.position", ends, "lights", &["position", "head"]);
    build.contact("lights.head", ["lights in", "dip in"], "lights", &["head"]);
    build.contact("dip.low", ["dip in", "low out"], "dip", &["low"]);
    build.contact("dip.high", ["dip in", "high out"], "dip", &["high"]);
    build.run("head.low.feed", "GN", ["low out", "head low"], [1.5, 0.5], "headlamp");
    build.run("head.high.feed", "BU", ["high out", "head high"], [1.5, 0.5], "headlamp");
    build.run("head.earth.feed", "BK", ["head common", "headlamp earth"], [1.5, 0.3], "headlamp");
    build.lamp("head.low", "head low", "head common", 35.0);
    build.lamp("head.high", "head high", "head common", 35.0);
    build.earth("head.earth", "headlamp earth", FRAME);
    build.lamp("beam.pilot", "head high", "clock common", 1.7);
    build.lamp("clock.lamp", "position out", "clock common", 1.7);
    build.earth("clock.earth", "clock common", FRAME);
    build.run("tail.feed", "GY", ["position out", "tail in"], [0.75, 1.6], "rear");
    build.lamp("tail", "tail in", "rear common", 5.0);
    rear_earth(build);
}

/// The stop lamp alone, with a tail lamp fed from the key.
pub(super) fn tail_and_stop(build: &mut Build) {
    build.run("tail.feed", "GY", [SWITCHED, "tail in"], [0.75, 1.6], "rear");
    build.lamp("tail", "tail in", "rear common", 5.0);
    rear_earth(build);
    stop(build);
}

/// Stop lamp 21 W behind two switches side by side; shares the earth of the tail lamp.
pub(super) fn stop(build: &mut Build) {
    build.switch("front brake", &["free", "pulled"]);
    build.switch("rear brake", &["free", "pressed"]);
    build.run("brake.feed", "BN", [SWITCHED, "brake in"], [1.0, 0.6], "brake switches");
    build.contact("brake.front", ["brake in", "brake out"], "front brake", &["pulled"]);
    build.contact("brake.rear", ["brake in", "brake out"], "rear brake", &["pressed"]);
    build.run("stop.feed", "RD/YE", ["brake out", "stop in"], [1.0, 1.4], "rear");
    build.lamp("stop", "stop in", "rear common", 21.0);
}

pub(super) fn rear_earth(build: &mut Build) {
    // Tail and stop lamp share it where both are on the machine.
    if build.has("rear.earth") {
        return;
    }
    build.run("rear.earth.feed", "BK", ["rear common", "rear earth"], [1.0, 0.4], "rear");
    build.earth("rear.earth", "rear earth", FRAME);
}
