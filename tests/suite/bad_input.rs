//! Bad input: each gets a refusal that names the field and the range, and nothing is stored.

use layshaft_core::error::Code;
use layshaft_core::record::{Consumer, Drive, Identity, Product, Reading, Side, StayPlace, Tightening};
use layshaft_door::command::{
    AddJob, BringBack, FitSprockets, LoadDemo, MoveCoat, NewJob, NoteClimate, PutJobAway, ReceiveBundle,
    RecordConsumer, RecordDrive, RecordTightening, RemoveConsumer, StartBike, StartCure, TakeReading,
};
use layshaft_door::query::{BareAsk, IdAsk};
use layshaft_door::{Bench, Command};

use crate::{English, SATURDAY, act, at};

/// The command is refused with this code and field, the message names the range, and no fact is written.
fn refused(command: impl Into<Command>, code: Code, field: Option<&str>, says: &str) {
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let before: Vec<_> = bench.facts().collect();
    let refusal = act(&mut bench, command, SATURDAY).unwrap_err();
    assert_eq!((refusal.code, refusal.field.as_deref()), (code, field), "{}", refusal.message);
    assert!(refusal.message.english().contains(says), "“{}” does not say “{says}”", refusal.message);
    assert_eq!(bench.facts().collect::<Vec<_>>(), before, "something was stored");
}

fn drive(front_teeth: u32) -> RecordDrive {
    RecordDrive { side: Side::Fitted, drive: Drive { front_teeth: Some(front_teeth), ..Drive::default() } }
}

fn lamp(watts: f64) -> RecordConsumer {
    let consumer = Consumer { name: "Headlamp".into(), watts, count: 1, ..Consumer::default() };
    RecordConsumer { side: Side::Standard, id: None, consumer }
}

#[test]
fn no_teeth_and_two_hundred_teeth_are_refused_with_the_range() {
    refused(drive(0), Code::OutOfRange, Some("frontTeeth"), "0 teeth is outside 9 to 30 teeth");
    refused(drive(200), Code::OutOfRange, Some("frontTeeth"), "9 to 30 teeth");
    let fit = FitSprockets { front_teeth: 15, rear_teeth: 200, chain_links: None };
    refused(fit, Code::OutOfRange, Some("rearTeeth"), "20 to 80 teeth");
}

#[test]
fn negative_watts_and_what_is_no_number_are_refused() {
    refused(lamp(-5.0), Code::OutOfRange, Some("watts"), "0 to 500 W");
    refused(lamp(f64::NAN), Code::NotANumber, Some("watts"), "0 to 500 W");
    refused(lamp(f64::INFINITY), Code::NotANumber, Some("watts"), "0 to 500 W");
}

#[test]
fn an_empty_title_is_refused() {
    let job = NewJob { title: "   ".into(), hands_on_minutes: 30.0, ..NewJob::default() };
    refused(AddJob { job }, Code::BadText, Some("title"), "1 to 120 characters");
    refused(StartBike { identity: Identity::default() }, Code::BadText, Some("name"), "1 to 120 characters");
}

#[test]
fn what_is_said_without_a_moment_holds_from_now_and_zero_is_no_moment() {
    let note = |from_ms| NoteClimate { celsius: 19.0, humidity: None, from_ms };
    let read = |taken_ms| TakeReading {
        reading: Reading { what: "tyre.rear.tread".into(), value: 3.0, taken_ms, ..Reading::default() },
    };
    refused(note(Some(0)), Code::Unreadable, Some("fromMs"), "2000 to 2099");
    refused(read(Some(0)), Code::Unreadable, Some("takenMs"), "2000 to 2099");
    let to_the_house =
        |coat: &str, from_ms| MoveCoat { id: coat.to_owned(), place: StayPlace::House, celsius: None, from_ms };
    refused(to_the_house("tank-liner", Some(0)), Code::Unreadable, Some("fromMs"), "2000 to 2099");

    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    act(&mut bench, note(None), SATURDAY).unwrap();
    let made = act(&mut bench, read(None), SATURDAY).unwrap().made.unwrap();
    act(&mut bench, to_the_house("tank-liner", None), SATURDAY).unwrap();
    let bike = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap();
    assert_eq!(bike.climate.unwrap().from_ms, SATURDAY);
    assert_eq!(bike.readings.iter().find(|card| card.id == made).unwrap().reading.taken_ms, Some(SATURDAY));
    let coat = &bike.coats.iter().find(|card| card.id == "tank-liner").unwrap().coat;
    assert_eq!(coat.stays.last().unwrap().from_ms, SATURDAY);
}

#[test]
fn a_makers_torque_without_its_source_or_beyond_the_range_is_refused() {
    let record = |torque_nm, source: &str| RecordTightening {
        id: None,
        tightening: Tightening {
            joint: "Drain plug".into(),
            torque_nm,
            source: source.into(),
            ..Tightening::default()
        },
    };
    refused(record(20.0, " "), Code::BadText, Some("source"), "1 to 120 characters");
    refused(record(0.0, "manual, page 9"), Code::OutOfRange, Some("torqueNm"), "0.1 to 500");
}

#[test]
fn a_product_without_data_and_a_window_that_closes_before_it_opens_are_refused() {
    let start = |product| StartCure { title: "Tank".into(), product, job: None, applied_ms: None };
    let empty = Product { name: "Tin without a label".into(), ..Product::default() };
    refused(start(empty), Code::Missing, Some("fullCureHours"), "not known");
    let backward = Product {
        name: "Odd paint".into(),
        recoat_from_hours: Some(10.0),
        recoat_to_hours: Some(2.0),
        full_cure_hours: Some(48.0),
        at_celsius: Some(20.0),
        ..Product::default()
    };
    refused(start(backward), Code::Conflict, Some("recoatToHours"), "before it opens");
    let paint = Product { name: "Any paint".into(), full_cure_hours: Some(48.0), ..Product::default() };
    let ahead = StartCure { applied_ms: Some(4_000_000_000_000), ..start(paint) };
    refused(ahead, Code::Unreadable, Some("appliedMs"), "lies ahead");
}

#[test]
fn what_never_was_there_can_neither_be_brought_back_nor_taken_off() {
    let unknown = || "no-such-mark".to_owned();
    let back = |kind: &str| BringBack { record_kind: kind.into(), id: unknown() };
    refused(back("job"), Code::Unknown, None, "no job with the id no-such-mark");
    refused(back("bike"), Code::Unknown, None, "no kind of record that can be put away with the id bike");
    let off = |side| RemoveConsumer { side, id: unknown() };
    refused(off(Side::Standard), Code::Unknown, None, "no consumer with the id no-such-mark");
    refused(off(Side::Fitted), Code::Unknown, None, "no consumer with the id no-such-mark");

    // A job that is there is left as it is; one that was put away comes back.
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let back = || BringBack { record_kind: "job".into(), id: "wiring".into() };
    assert_eq!(act(&mut bench, back(), SATURDAY).unwrap().changes, 0);
    act(&mut bench, PutJobAway { id: "wiring".into() }, SATURDAY).unwrap();
    assert_eq!(act(&mut bench, back(), SATURDAY).unwrap().changes, 1);
    assert!(bench.job(&IdAsk { id: "wiring".into() }, &at(SATURDAY)).is_ok());
}

#[test]
fn what_is_no_bundle_or_is_cut_short_is_refused() {
    let receive = |bundle: Vec<u8>| ReceiveBundle { bundle, as_second_bike: false };
    refused(receive(b"this is a shopping list".to_vec()), Code::NotABundle, None, "");
    refused(receive(Vec::new()), Code::NotABundle, None, "");
    let mut bench = Bench::in_memory().unwrap();
    act(&mut bench, LoadDemo::default(), SATURDAY).unwrap();
    let whole = bench.bundle(&BareAsk {}, &at(SATURDAY)).unwrap().bundle;
    refused(receive(whole[..whole.len() / 2].to_vec()), Code::DamagedBundle, None, "");
}

#[test]
fn what_is_not_json_or_not_a_command_is_a_bad_request() {
    let mut bench = Bench::in_memory().unwrap();
    for text in ["", "{", "{\"id\":\"a\",\"moment\":{},\"command\":{\"kind\":\"flyAway\"}}"] {
        let refusal: layshaft_core::error::Refusal = serde_json::from_str(&bench.act_json(text).unwrap_err()).unwrap();
        assert_eq!(refusal.code, Code::BadRequest);
    }
}

#[test]
fn without_a_bike_every_question_about_it_says_so() {
    let bench = Bench::in_memory().unwrap();
    let refusal = bench.today(&Default::default(), &at(SATURDAY)).unwrap_err();
    assert_eq!(refusal.code, Code::Unknown);
    assert!(refusal.message.english().contains("no bike is open"));
}
