//! A bike started by its kind: what was tapped is known to jobs, circuits, lamps and Today, and nothing is lost by tapping.

use layshaft_core::electrical::ChargingAsk;
use layshaft_core::harness::HarnessAsk;
use layshaft_core::ready_made::{BikeKind, OfferState};
use layshaft_core::record::{
    Brake, BrakeKind, ConsumerRole, Cooling, ElectricalSystem, End, Identity, Side, Starter, Strokes,
};
use layshaft_core::today::{NotSaid, TodayAsk};
use layshaft_door::Bench;
use layshaft_door::command::{AddPackages, DescribeKind, RecordBrake, RoleName, SetBenchTime, StartBike, Undo};
use layshaft_door::query::{BareAsk, LoadAsk};

use crate::{English, SATURDAY, act, at};

fn named() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    let identity = Identity { name: "Shed find".to_owned(), ..Identity::default() };
    act(&mut bench, StartBike { identity }, SATURDAY).unwrap();
    bench
}

/// What a user does who taps a kind: the page gives each role its name.
fn kind(bench: &Bench, id: &str) -> DescribeKind {
    let starting = bench.starting(&BareAsk {}, &at(SATURDAY)).unwrap();
    let bike_kind = starting.kinds.into_iter().find(|offer| offer.id == id).unwrap().bike_kind;
    let names = bike_kind.roles().map(|role| RoleName { role, name: format!("{role:?}") }).collect();
    DescribeKind { bike_kind, names }
}

fn not_said(bench: &mut Bench) -> Vec<NotSaid> {
    bench.today(&TodayAsk::default(), &at(SATURDAY)).unwrap().not_said
}

#[test]
fn a_kind_that_is_tapped_is_known_to_jobs_lamps_and_today() {
    let mut bench = named();
    assert_eq!(not_said(&mut bench), [NotSaid::Kind, NotSaid::Work, NotSaid::Hours, NotSaid::Inspection]);
    let tapped = kind(&bench, "four-6-drums");
    act(&mut bench, tapped.clone(), SATURDAY).unwrap();
    let starting = bench.starting(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!(starting.bike_kind, tapped.bike_kind);
    assert!(starting.lamps_known);

    let offers = bench.ready_made(&BareAsk {}, &at(SATURDAY)).unwrap().jobs;
    let state = |id: &str| offers.iter().find(|offer| offer.ready_made.id == id).map(|offer| offer.state).unwrap();
    for unsuited in ["caliper-rebuild", "cooling", "starter-circuit"] {
        assert_eq!(state(unsuited), OfferState::Unsuited, "{unsuited}");
    }
    assert_eq!(state("valve-clearance"), OfferState::Offered);
    let load = bench.load(&LoadAsk::default(), &at(SATURDAY)).unwrap();
    assert!(!load.loads.is_empty(), "the lamps that are usual draw current");
    let bike = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    let headlamp =
        bike.standard.consumers.iter().find(|slot| slot.consumer.role == Some(ConsumerRole::Headlamp)).unwrap();
    assert_eq!(headlamp.consumer.watts, 25.0, "the lamp of a 6 V system");

    act(&mut bench, AddPackages { packages: vec!["tyres-and-chain".to_owned()], leave_out: None }, SATURDAY).unwrap();
    let week = starting.weeks.first().unwrap().spans.clone();
    let bench_time = layshaft_core::record::BenchTime { spans: week, ..Default::default() };
    act(&mut bench, SetBenchTime { bench_time }, SATURDAY).unwrap();
    assert_eq!(not_said(&mut bench), [NotSaid::Inspection]);
    assert!(bench.today(&TodayAsk::default(), &at(SATURDAY)).unwrap().ready_ms.is_some());
}

#[test]
fn what_is_entered_already_stays_and_one_undo_takes_the_whole_kind_back() {
    let mut bench = named();
    let brake = Brake { brake: Some(BrakeKind::Drum), rotor_mm: Some(120.0), ..Brake::default() };
    act(&mut bench, RecordBrake { side: Side::Standard, end: End::Front, brake: brake.clone() }, SATURDAY).unwrap();
    let before = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    let tapped = kind(&bench, "two-6-drums");
    let outcome = act(&mut bench, tapped.clone(), SATURDAY).unwrap();
    let bike = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!(bike.standard.front_brake, brake, "the same kind of brake keeps what was measured");
    assert_eq!(bike.identity.strokes, Some(Strokes::Two));

    // Tapped again with one thing changed: the lamps are not entered twice.
    let lamps = bike.standard.consumers.len();
    let part = BikeKind { starter: Some(Starter::Electric), ..BikeKind::default() };
    act(&mut bench, DescribeKind { bike_kind: part, names: tapped.names }, SATURDAY).unwrap();
    let again = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!((again.standard.consumers.len(), again.identity.cooling), (lamps, Some(Cooling::Air)));
    act(&mut bench, Undo { batch: outcome.batch }, SATURDAY).unwrap();
    let back = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!((back.standard, back.identity.strokes), (before.standard, None));
}

#[test]
fn a_voltage_that_cannot_be_is_refused_at_its_field_and_nothing_is_stored() {
    let mut bench = named();
    let mut wrong = kind(&bench, "two-6-drums");
    wrong.bike_kind.system_volts = Some(600.0);
    let refusal = act(&mut bench, wrong, SATURDAY).unwrap_err();
    assert_eq!(refusal.field.as_deref(), Some("systemVolts"));
    assert!(refusal.message.english().contains("600"), "{}", refusal.message.english());
    assert_eq!(bench.starting(&BareAsk {}, &at(SATURDAY)).unwrap().bike_kind, BikeKind::default());
    let mut none = Bench::in_memory().unwrap();
    assert!(act(&mut none, kind(&bench, "two-6-drums"), SATURDAY).is_err(), "no bike is open");
}

#[test]
fn a_kind_without_a_battery_says_so_to_circuits_and_charging() {
    let mut bench = named();
    let tapped = kind(&bench, "two-6-coil");
    act(&mut bench, tapped.clone(), SATURDAY).unwrap();
    assert_eq!(bench.starting(&BareAsk {}, &at(SATURDAY)).unwrap().bike_kind, tapped.bike_kind);
    assert_eq!(bench.charging(&ChargingAsk::default(), &at(SATURDAY)).unwrap().cells, None);
    let circuits = bench.harness(&HarnessAsk::default(), &at(SATURDAY)).unwrap();
    assert_eq!(circuits.circuit, "coil-lighting");
    // Said again without the system, it stays.
    let part = BikeKind { system_volts: Some(6.0), ..BikeKind::default() };
    act(&mut bench, DescribeKind { bike_kind: part, names: tapped.names }, SATURDAY).unwrap();
    let supply = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().standard.supply;
    assert_eq!(supply.system, Some(ElectricalSystem::LightingCoil));
}
