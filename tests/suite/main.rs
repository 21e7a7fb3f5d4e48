//! What is checked across the crates.

#![allow(missing_docs, clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod architecture;
mod bad_input;
mod cautions;
mod demos;
mod documents;
mod equipment;
mod findings;
mod finishing;
mod floors;
mod found;
mod handbook;
mod merge;
mod needs;
mod one_clock;
mod one_transaction;
mod own_bike;
mod packages;
mod paint;
mod parts_of_jobs;
mod put_away;
mod put_right;
mod ripple;
mod safety;
mod saturday;
mod season;
mod stale;
mod starting;
mod two_devices;
mod tyres;
mod vectors;
mod wiring;
mod words;

use layshaft_core::error::Refusal;
use layshaft_core::message::Message;
use layshaft_core::record::{ChainSize, Drive};
use layshaft_core::time::{Moment, Zone, ZoneShift};
use layshaft_door::command::Outcome;
use layshaft_door::{Bench, Command, fresh_id};

/// Saturday, 21 March 2026, 10:00 UTC: the day on which most of these stories begin.
pub const SATURDAY: i64 = 1_774_087_200_000;
/// An hour, milliseconds.
pub const HOUR: i64 = 3_600_000;

/// A moment on a local clock of Central Europe around the change of 29 March 2026.
pub fn at(now_ms: i64) -> Moment {
    let shifts = vec![
        ZoneShift { from_ms: 1_761_440_400_000, offset_minutes: 60 },
        ZoneShift { from_ms: 1_774_746_000_000, offset_minutes: 120 },
        ZoneShift { from_ms: 1_792_890_000_000, offset_minutes: 60 },
    ];
    Moment { now_ms, zone: Zone { name: "Europe/Vienna".into(), shifts } }
}

/// Does a command under a fresh id.
pub fn act(bench: &mut Bench, command: impl Into<Command>, now_ms: i64) -> Result<Outcome, Refusal> {
    bench.act(&fresh_id(), &command.into(), &at(now_ms))
}

/// What an English reader sees, with ordinary spaces.
pub trait English {
    fn english(&self) -> String;
}

impl English for Message {
    fn english(&self) -> String {
        layshaft_words::say(self).replace(['\u{a0}', '\u{202f}'], " ")
    }
}

/// The folder of the project.
pub fn root() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap().to_path_buf()
}

/// A drive with a chain of 428, 15 teeth on 41.
pub fn chain_drive() -> Drive {
    Drive {
        chain_size: Some(ChainSize::C428),
        chain_links: Some(118),
        front_teeth: Some(15),
        rear_teeth: Some(41),
        ..Drive::default()
    }
}
