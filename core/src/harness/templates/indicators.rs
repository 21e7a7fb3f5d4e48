//! Indicators with a thermal flasher: one pilot between the circuits, or one pilot for each side.

use super::build::{Build, FRAME, SWITCH_OHMS, SWITCHED};
use crate::record::Component;

/// Four lamps of 10 W and one pilot of 3 W between the two circuits: it finds its earth through the lamps of the other side.
pub(super) fn one_pilot(build: &mut Build) {
    lamps(build);
    build.lamp("pilot", "left out", "right out", 3.0);
}

/// Four lamps of 10 W and a pilot of 1.7 W on each side.
pub(super) fn two_pilots(build: &mut Build) {
    lamps(build);
    build.lamp("pilot.left", "left out", "pilot common", 1.7);
    build.lamp("pilot.right", "right out", "pilot common", 1.7);
    build.earth("pilot.earth", "pilot common", FRAME);
}

fn lamps(build: &mut Build) {
    build.switch("indicators", &["off", "left", "right"]);
    build.switch("beat", &["lit", "dark"]);
    build.run("flasher.feed", "BN", [SWITCHED, "flasher in"], [1.0, 0.4], "flasher");
    let flasher = Component::Flasher {
        beat: "beat".to_owned(),
        lit: "lit".to_owned(),
        // Three quarters of the current of two lamps of 10 W at 12.6 V: common practice, no source.
        least_amperes: Some(1.15 * 12.0 / build.scaled(12.0)),
        ohms: SWITCH_OHMS,
    };
    build.add("flasher", "flasher in", "flasher out", flasher);
    build.run("flasher.out", "GY/WH", ["flasher out", "indicators in"], [1.0, 0.5], "flasher");
    build.contact("indicators.left", ["indicators in", "left out"], "indicators", &["left"]);
    build.contact("indicators.right", ["indicators in", "right out"], "indicators", &["right"]);
    for (side, colour) in [("left", "OG"), ("right", "BU/GN")] {
        for (place, metres) in [("front", 0.5), ("rear", 1.7)] {
            let id = format!("{side}.{place}");
            let (out, end, body) = (format!("{side} out"), format!("{id} in"), format!("{id} body"));
            build.run(&format!("{id}.feed"), colour, [&out, &end], [0.75, metres], place);
            build.lamp(&id, &end, &body, 10.0);
            build.earth(&format!("{id}.earth"), &body, FRAME);
        }
    }
}
