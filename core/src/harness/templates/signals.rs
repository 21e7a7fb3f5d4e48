//! Horn and neutral lamp: both are switched on their earth side.

use super::build::{Build, ENGINE, FRAME, SWITCHED};
use crate::record::Component;

/// Horn of 30 W with its button between horn and frame.
pub(super) fn horn(build: &mut Build) {
    build.switch("horn button", &["free", "pressed"]);
    build.run("horn.feed", "BN", [SWITCHED, "horn in"], [1.0, 0.7], "horn");
    let horn = Component::Horn { watts: 30.0, rated_volts: build.scaled(12.0) };
    build.add("horn", "horn in", "horn out", horn);
    build.run("horn.back", "PK", ["horn out", "button in"], [1.0, 0.6], "horn");
    build.contact("horn.button", ["button in", "button out"], "horn button", &["pressed"]);
    build.earth("horn.earth", "button out", FRAME);
}

/// Neutral lamp of 3 W, earthed by the switch in the gearbox.
pub(super) fn neutral(build: &mut Build) {
    build.run("neutral.feed", "BN", [SWITCHED, "neutral in"], [0.75, 0.5], "instruments");
    build.lamp("neutral.lamp", "neutral in", "neutral sense", 3.0);
    switch_in_gearbox(build);
}

/// The neutral switch of the gearbox, shared by the lamp and the starter lock.
pub(super) fn switch_in_gearbox(build: &mut Build) {
    build.switch("gearbox", &["neutral", "in gear"]);
    // The starter lock brings the same wire when both circuits are on the machine.
    if build.has("neutral.wire.wire") {
        return;
    }
    let ends = ["neutral sense", "gearbox pin"];
    build.run("neutral.wire", "BU/BK", ends, [0.75, 0.9], "engine");
    build.contact("neutral.switch", ["gearbox pin", ENGINE], "gearbox", &["neutral"]);
}
