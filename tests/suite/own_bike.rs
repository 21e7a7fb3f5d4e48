//! A bike entered by hand: what is said once is known wherever it matters, whatever ids its records have.

use layshaft_core::error::Refusal;
use layshaft_core::harness::{HarnessAsk, LampsAsk, Setting};
use layshaft_core::record::{
    Component, Consumer, ConsumerRole, FlasherKind, Identity, Indication, LightSource, PilotFitting, Side, Supply, Use,
};
use layshaft_door::Bench;
use layshaft_door::command::{
    DemoBike, FitConsumer, LoadDemo, RecordConsumer, RecordIndication, RecordSupply, StartBike,
};
use layshaft_door::query::{BareAsk, LoadAsk};

use crate::{English, SATURDAY, act, at};

/// A bike of 1978 with 6 V, of which nothing else is known.
fn six_volts() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    let identity = Identity { name: "Barn find".to_owned(), model_year: Some(1978), ..Identity::default() };
    act(&mut bench, StartBike { identity }, SATURDAY).unwrap();
    let supply = Supply { system_volts: Some(6.0), ..Supply::default() };
    act(&mut bench, RecordSupply { side: Side::Standard, supply }, SATURDAY).unwrap();
    bench
}

/// Enters what is usual for a role, under an id of its own.
fn usual(bench: &mut Bench, role: ConsumerRole) -> Result<String, Refusal> {
    let usual = bench.usual_consumers(&BareAsk {}, &at(SATURDAY)).unwrap().consumers;
    let consumer = usual.into_iter().find(|each| each.role == role).unwrap().consumer;
    let consumer = Consumer { name: format!("{role:?}"), ..consumer };
    act(bench, RecordConsumer { side: Side::Standard, id: None, consumer }, SATURDAY).map(|done| done.made.unwrap())
}

#[test]
fn lamps_entered_by_hand_stand_in_the_circuits_with_their_own_watts_and_volts() {
    let mut bench = six_volts();
    for role in [ConsumerRole::Headlamp, ConsumerRole::Tail, ConsumerRole::Horn, ConsumerRole::Ignition] {
        usual(&mut bench, role).unwrap();
    }
    let setting = Setting::of(&[("key", "on"), ("lights", "head")]);
    let circuit = HarnessAsk { circuit: Some("lighting".to_owned()), setting, ..HarnessAsk::default() };
    let harness = bench.harness(&circuit, &at(SATURDAY)).unwrap().harness;
    let low = &harness.element("head.low").unwrap().component;
    assert_eq!(low, &Component::Filament { watts: 25.0, test_volts: 6.75 });
}

#[test]
fn indicators_entered_by_hand_are_what_the_lamp_page_is_about() {
    let mut bench = six_volts();
    let headlamp = usual(&mut bench, ConsumerRole::Headlamp).unwrap();
    let lamps = |bench: &Bench| bench.lamps(&LampsAsk::default(), &at(SATURDAY)).unwrap();
    assert_eq!((lamps(&bench).place, lamps(&bench).flashing.len()), (headlamp, 0));

    let indicators = usual(&mut bench, ConsumerRole::Indicators).unwrap();
    usual(&mut bench, ConsumerRole::IndicatorPilot).unwrap();
    let indication = Indication {
        flasher: Some(FlasherKind::Thermal),
        pilot: Some(PilotFitting::BetweenSides),
        ..Indication::default()
    };
    act(&mut bench, RecordIndication { side: Side::Standard, indication }, SATURDAY).unwrap();
    assert_eq!(lamps(&bench).place, indicators);

    let led = Consumer { watts: 1.0, source: Some(LightSource::Led), ..lamps(&bench).lamps[0].consumer.clone() };
    let tried = LampsAsk { proposed: Some(led.clone()), ..LampsAsk::default() };
    let both = bench.lamps(&tried, &at(SATURDAY)).unwrap();
    let says: Vec<String> = both.findings.iter().map(|finding| finding.text.english()).collect();
    assert!(both.flashing.iter().any(|column| column.indicators.both_sides()), "{says:?}");

    // What is fitted in a place stays what the place is, though the lamp itself does not say.
    let unsaid = Consumer { role: None, ..led };
    act(&mut bench, FitConsumer { id: indicators.clone(), consumer: unsaid }, SATURDAY).unwrap();
    assert_eq!(lamps(&bench).place, indicators);
    assert_eq!(bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().fitted.consumers.len(), 3);
}

#[test]
fn a_role_is_taken_once_and_a_whole_is_not_taken_beside_its_part() {
    let mut bench = six_volts();
    let rear = usual(&mut bench, ConsumerRole::IndicatorsRear).unwrap();
    for role in [ConsumerRole::IndicatorsRear, ConsumerRole::Indicators] {
        let refusal = usual(&mut bench, role).unwrap_err();
        assert_eq!(refusal.field.as_deref(), Some("role"));
        assert!(refusal.message.english().contains("“IndicatorsRear”"), "{}", refusal.message.english());
    }
    usual(&mut bench, ConsumerRole::IndicatorsFront).unwrap();
    let four = Consumer {
        name: "Rear indicators".to_owned(),
        role: Some(ConsumerRole::IndicatorsRear),
        watts: 10.0,
        count: 4,
        ..Consumer::default()
    };
    let refusal = act(&mut bench, RecordConsumer { side: Side::Standard, id: Some(rear), consumer: four }, SATURDAY);
    let refusal = refusal.unwrap_err();
    assert_eq!(refusal.field.as_deref(), Some("count"));
    assert!(refusal.message.english().contains("on one side"), "{}", refusal.message.english());
}

#[test]
fn four_a_side_stored_before_roles_were_still_draw_what_they_drew() {
    let mut bench = six_volts();
    // Under the id that a place had then, and without a role.
    let four = Consumer {
        name: "Indicators".to_owned(),
        watts: 10.0,
        count: 4,
        used: Some(Use::Indicating),
        source: Some(LightSource::Led),
        ..Consumer::default()
    };
    let id = Some("indicators".to_owned());
    act(&mut bench, RecordConsumer { side: Side::Standard, id, consumer: four.clone() }, SATURDAY).unwrap();
    let load = bench.load(&LoadAsk::default(), &at(SATURDAY)).unwrap();
    assert!(load.loads.iter().any(|load| load.watts >= 20.0), "half of the time, four of 10 W");
    assert_eq!(bench.lamps(&LampsAsk::default(), &at(SATURDAY)).unwrap().place, "indicators");
    // The next entry says what it is, and is held to what a side can have.
    let said = Consumer { role: Some(ConsumerRole::Indicators), ..four };
    let id = Some("indicators".to_owned());
    let refusal = act(&mut bench, RecordConsumer { side: Side::Standard, id, consumer: said }, SATURDAY).unwrap_err();
    assert_eq!(refusal.field.as_deref(), Some("count"));
}

#[test]
fn a_standard_role_is_refused_where_the_fitted_bike_has_it() {
    let mut bench = six_volts();
    let usual = bench.usual_consumers(&BareAsk {}, &at(SATURDAY)).unwrap().consumers;
    let horn = usual.into_iter().find(|each| each.role == ConsumerRole::Horn).unwrap().consumer;
    let named = |name: &str| Consumer { name: name.to_owned(), ..horn.clone() };
    act(&mut bench, RecordConsumer { side: Side::Fitted, id: None, consumer: named("New horn") }, SATURDAY).unwrap();
    let standard = RecordConsumer { side: Side::Standard, id: None, consumer: named("Old horn") };
    let refusal = act(&mut bench, standard, SATURDAY).unwrap_err();
    assert_eq!(refusal.field.as_deref(), Some("role"));
    assert!(refusal.message.english().contains("“New horn”"), "{}", refusal.message.english());
}

#[test]
fn a_lamp_of_another_voltage_is_refused_at_its_field_in_words() {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo { demo: Some(DemoBike::OrrinWren50) }, SATURDAY).unwrap();
    let usual = bench.usual_consumers(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert!(usual.types.iter().all(|card| card.system_volts == 6.0) && usual.types.len() > 12);
    let lamp = |test_volts| Consumer {
        name: "Tail lamp".to_owned(),
        role: Some(ConsumerRole::Tail),
        watts: 5.0,
        count: 1,
        used: Some(Use::Lights),
        source: Some(LightSource::Filament),
        test_volts: Some(test_volts),
        ..Consumer::default()
    };
    let record =
        |test_volts| RecordConsumer { side: Side::Standard, id: Some("tail".to_owned()), consumer: lamp(test_volts) };
    let refusal = act(&mut bench, record(13.5), SATURDAY).unwrap_err();
    assert_eq!(refusal.field.as_deref(), Some("testVolts"));
    let said = refusal.message.english();
    assert!(said.contains("13.5 V") && said.contains("bike of 6 V"), "{said}");
    act(&mut bench, record(6.75), SATURDAY).unwrap();
}
