//! Measures the door natively: every query on the demo bike, and the fold of 10,000 changes. Prints medians.
//!
//! Run with `cargo xtask bench`; a measurement is printed, never asserted.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::indexing_slicing)]

use std::time::{Duration, Instant};

use layshaft_core::changes::{Change, Device, Key, Ledger, Stamp};
use layshaft_core::gearing::SprocketGoal;
use layshaft_core::harness::Setting;
use layshaft_core::record::{Consumer, LightSource, Use, Wheel};
use layshaft_core::ripple::Proposal;
use layshaft_core::time::{Moment, Zone};
use layshaft_door::command::{FitSprockets, LoadDemo, Undo};
use layshaft_door::{Bench, Command, fresh_id};

/// A spring Saturday; the figures do not depend on it.
const NOW: i64 = 1_774_087_200_000;

mod electrical;

fn main() {
    let mut bench = Bench::in_memory().unwrap();
    let moment = Moment { now_ms: NOW, zone: Zone::default() };
    bench.act(&fresh_id(), &Command::from(LoadDemo::default()), &moment).unwrap();

    println!("Door calls on the demo bike, native, median of 101 (goal 5 ms or less)");
    macro_rules! ask {
        ($($method:ident: $ask:expr),* $(,)?) => {$(
            let ask = $ask;
            print(stringify!($method), median(101, || { bench.$method(&ask, &moment).unwrap(); }));
        )*};
    }
    ask! {
        shelf: layshaft_door::query::BareAsk {},
        today: layshaft_door::query::TodayAsk::default(),
        plan: layshaft_door::query::PlanAsk::default(),
        gearing: layshaft_door::query::GearingAsk { front_teeth: Some(16), rear_teeth: Some(38), ..Default::default() },
        sprocket_choice: layshaft_door::query::SprocketChoiceAsk {
            goal: Some(SprocketGoal::Taller { taller_percent: 15.0 }),
            ..Default::default()
        },
        chain_wear: layshaft_door::query::ChainWearAsk {
            measured_mm: Some(257.0),
            slack_mm: vec![18.0, 22.0, 16.0],
            ..Default::default()
        },
        thrust: layshaft_door::query::ThrustAsk { front_teeth: Some(16), rear_teeth: Some(38), ..Default::default() },
        load: layshaft_door::query::LoadAsk::default(),
        brakes: layshaft_door::query::BrakeAsk::default(),
        tyres: layshaft_door::query::TyreAsk {
            wheel: Some(Wheel { tyre: Some("3.25-18 59P".into()), ..Default::default() }), ..Default::default()
        },
        fasteners: layshaft_door::query::FastenerAsk {
            diameter_mm: Some(7.9), pitch_mm: Some(1.25), property_class: Some("8.8".into()), ..Default::default()
        },
        filling: layshaft_door::query::FillAsk { litres: Some(1.1), cups_ml: vec![1000, 250], ..Default::default() },
        wire: layshaft_door::query::WireAsk { watts: Some(55.0), ..Default::default() },
        inspection: layshaft_door::query::InspectionAsk::default(),
        ripple: layshaft_door::query::RippleAsk {
            proposals: vec![Proposal::Sprockets { front_teeth: 16, rear_teeth: 38, chain_links: None }],
        },
        bike: layshaft_door::query::BareAsk {},
        bundle: layshaft_door::query::BareAsk {},
        lamps: led_indicators(),
        charging: layshaft_door::query::ChargingAsk { fast_volts: Some(14.2), ..Default::default() },
        harness: layshaft_door::query::HarnessAsk {
            setting: Setting::of(&[("key", "on"), ("lights", "head")]),
            ..Default::default()
        },
    }
    // A plan is kept for the minute: the first of another minute, and so the first after a new fact, is worked out.
    let mut minute = 0;
    let mut next_minute = || {
        minute += 1;
        Moment { now_ms: NOW + minute * 60_000, zone: Zone::default() }
    };
    let plain = layshaft_door::query::PlanAsk::default();
    print("plan worked out anew (goal 50 ms)", median(31, || drop(bench.plan(&plain, &next_minute()).unwrap())));
    let sure = layshaft_door::query::PlanAsk { how_sure: Some(true), ..Default::default() };
    print("with the odds and every what-if", median(11, || drop(bench.plan(&sure, &next_minute()).unwrap())));
    let coat =
        bench.bike(&layshaft_door::query::BareAsk {}, &moment).unwrap().coats.first().map(|card| card.id.clone());
    ask! { cure: layshaft_door::query::CureAsk { coat: coat.clone(), ..Default::default() } }
    let mut fit = || {
        let command = Command::from(FitSprockets { front_teeth: 16, rear_teeth: 38, chain_links: None });
        let outcome = bench.act(&fresh_id(), &command, &moment).unwrap();
        bench.act(&fresh_id(), &Command::from(Undo { batch: outcome.batch }), &moment).unwrap();
    };
    print("fit sprockets and undo (two commands)", median(31, &mut fit));

    electrical::searches(&mut bench, &moment);
    electrical::solver();

    println!("\nFacts (goal for 10,000: 100 ms or less)");
    let changes = history(10_000);
    print(
        "fold 10,000 changes",
        median(11, || {
            std::hint::black_box(Ledger::fold(changes.clone()));
        }),
    );
    let ledger = Ledger::fold(changes);
    print(
        "assemble a bike of 10,000 changes",
        median(11, || {
            std::hint::black_box(layshaft_core::record::assemble(&ledger, "bike"));
        }),
    );
}

/// LED indicators tried on the lamp page.
fn led_indicators() -> layshaft_door::query::LampsAsk {
    let consumer = Consumer {
        name: "LED indicators, one side".into(),
        watts: 2.0,
        count: 2,
        used: Some(Use::Indicating),
        source: Some(LightSource::Led),
        ..Consumer::default()
    };
    layshaft_door::query::LampsAsk { proposed: Some(consumer), ..Default::default() }
}

/// A history of edits to jobs, as months of work leave behind.
fn history(count: u64) -> Vec<Change> {
    (0..count)
        .map(|number| {
            let stamp = Stamp { millis: number, count: 0, device: Device(number % 3) };
            Change {
                key: Key { project: "bike".into(), kind: "job".into(), record: format!("job-{}", number % 400) },
                field: ["title", "state", "stepsDone", "handsOnMinutes"][usize::try_from(number % 4).unwrap()].into(),
                value: if number % 4 == 0 {
                    format!("title {number}").into()
                } else {
                    serde_json::Value::from(number % 50)
                },
                stamp,
                seen: None,
                batch: stamp.to_string(),
            }
        })
        .collect()
}

fn median(times: usize, mut work: impl FnMut()) -> Duration {
    work();
    let mut taken: Vec<Duration> = (0..times)
        .map(|_| {
            let from = Instant::now();
            work();
            from.elapsed()
        })
        .collect();
    taken.sort();
    taken[times / 2]
}

fn print(name: &str, taken: Duration) {
    println!("  {name:<44} {:>9.3} ms", taken.as_secs_f64() * 1000.0);
}
