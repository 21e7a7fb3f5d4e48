//! Headlamp with dip switch, tail lamp, instrument lamp, and the stop lamp with both brake switches.

use super::build::{Build, FRAME, SWITCHED};

/// Headlamp 35/35 W with dip switch, tail 5 W, instrument lamp 1.7 W, main-beam tell-tale 1.7 W.
pub(super) fn lighting(build: &mut Build) {
    build.switch("lights", "Light switch", &["off", "position", "head"]);
    build.switch("dip", "Dip switch", &["low", "high"]);
    build.run("lights.feed", "Live to light switch", "BN/WH", [SWITCHED, "lights in"], [1.5, 0.5], "left bar");
    let ends = ["lights in", "position out"];
    build.contact("lights.position", "Light switch, tail contact", ends, "lights", &["position", "head"]);
    build.contact("lights.head", "Light switch, headlamp contact", ["lights in", "dip in"], "lights", &["head"]);
    build.contact("dip.low", "Dip switch, low contact", ["dip in", "low out"], "dip", &["low"]);
    build.contact("dip.high", "Dip switch, high contact", ["dip in", "high out"], "dip", &["high"]);
    build.run("head.low.feed", "Dipped beam", "GN", ["low out", "head low"], [1.5, 0.5], "headlamp");
    build.run("head.high.feed", "Main beam", "BU", ["high out", "head high"], [1.5, 0.5], "headlamp");
    build.run("head.earth.feed", "Headlamp earth", "BK", ["head common", "headlamp earth"], [1.5, 0.3], "headlamp");
    build.lamp("head.low", "Headlamp, dipped", "head low", "head common", 35.0);
    build.lamp("head.high", "Headlamp, main beam", "head high", "head common", 35.0);
    build.earth("head.earth", "Headlamp earth point", "headlamp earth", FRAME);
    build.lamp("beam.pilot", "Main-beam tell-tale", "head high", "clock common", 1.7);
    build.lamp("clock.lamp", "Instrument lamp", "position out", "clock common", 1.7);
    build.earth("clock.earth", "Instrument earth point", "clock common", FRAME);
    build.run("tail.feed", "Tail lamp feed", "GY", ["position out", "tail in"], [0.75, 1.6], "rear");
    build.lamp("tail", "Tail lamp", "tail in", "rear common", 5.0);
    rear_earth(build);
}

/// The stop lamp alone, with a tail lamp fed from the key.
pub(super) fn tail_and_stop(build: &mut Build) {
    build.run("tail.feed", "Tail lamp feed", "GY", [SWITCHED, "tail in"], [0.75, 1.6], "rear");
    build.lamp("tail", "Tail lamp", "tail in", "rear common", 5.0);
    rear_earth(build);
    stop(build);
}

/// Stop lamp 21 W behind two switches side by side; shares the earth of the tail lamp.
pub(super) fn stop(build: &mut Build) {
    build.switch("front brake", "Front brake", &["free", "pulled"]);
    build.switch("rear brake", "Rear brake", &["free", "pressed"]);
    build.run("brake.feed", "Live to brake switches", "BN", [SWITCHED, "brake in"], [1.0, 0.6], "brake switches");
    build.contact("brake.front", "Front brake switch", ["brake in", "brake out"], "front brake", &["pulled"]);
    build.contact("brake.rear", "Rear brake switch", ["brake in", "brake out"], "rear brake", &["pressed"]);
    build.run("stop.feed", "Stop lamp feed", "RD/YE", ["brake out", "stop in"], [1.0, 1.4], "rear");
    build.lamp("stop", "Stop lamp", "stop in", "rear common", 21.0);
}

fn rear_earth(build: &mut Build) {
    build.run("rear.earth.feed", "Rear lamp earth wire", "BK", ["rear common", "rear earth"], [1.0, 0.4], "rear");
    build.earth("rear.earth", "Rear lamp earth point", "rear earth", FRAME);
}
