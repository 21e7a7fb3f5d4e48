//! A ready-made job brings the parts that it asks for onto the list, with the size that the bike knows, and Undo takes both back.

use layshaft_core::record::{Brake, BrakeKind, End, FluidGrade, Identity, Part, PartState, Side, Wheel};
use layshaft_door::Bench;
use layshaft_door::command::{
    AddPackages, AddReadyMade, Outcome, RecordBrake, RecordDrive, RecordPart, RecordWheel, StartBike, Undo,
};
use layshaft_door::query::{BareAsk, IdAsk};

use crate::{English, SATURDAY, act, at, chain_drive};

fn own_bike() -> Bench {
    let mut bench = Bench::in_memory().unwrap();
    let identity = Identity { name: "Barn find".into(), ..Identity::default() };
    act(&mut bench, StartBike { identity }, SATURDAY).unwrap();
    bench
}

fn add(bench: &mut Bench, ready_made: &str) -> Outcome {
    act(bench, AddReadyMade { ready_made: ready_made.into() }, SATURDAY).unwrap()
}

/// The parts of the bike by title, with where they are and their size.
fn parts(bench: &Bench) -> Vec<(String, PartState, Option<String>)> {
    let parts = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().parts;
    let mut told: Vec<_> = parts.into_iter().map(|card| (card.part.title, card.part.state, card.part.size)).collect();
    told.sort_by(|one, other| one.0.cmp(&other.0));
    told
}

#[test]
fn the_parts_of_a_job_come_with_it_in_the_size_of_the_bike_and_go_with_it() {
    let mut bench = own_bike();
    act(&mut bench, RecordDrive { side: Side::Standard, drive: chain_drive() }, SATURDAY).unwrap();
    let added = add(&mut bench, "chain-sprockets");
    let wanted = |title: &str, size: &str| (title.to_owned(), PartState::Wanted, Some(size.to_owned()));
    assert_eq!(
        parts(&bench),
        [wanted("Chain", "428 × 118"), wanted("Gearbox sprocket", "428, 15T"), wanted("Wheel sprocket", "428, 41T")]
    );
    let note = added.notes[0].english();
    assert_eq!(
        note,
        "On the list of parts: Chain (428 × 118), Gearbox sprocket (428, 15T) and Wheel sprocket (428, 41T)."
    );
    let job = bench.job(&IdAsk { id: added.made.unwrap() }, &at(SATURDAY)).unwrap();
    assert_eq!(job.job.parts.len(), 3);
    assert!(job.row.unwrap().blocked_by.len() == 3, "it waits for them");
    act(&mut bench, Undo { batch: added.batch }, SATURDAY).unwrap();
    assert_eq!(parts(&bench), []);
}

#[test]
fn what_the_bike_does_not_know_or_need_is_not_made_up() {
    let mut bench = own_bike();
    let wheel = Wheel { tube: Some(false), ..Wheel::default() };
    act(&mut bench, RecordWheel { side: Side::Standard, end: End::Rear, wheel }, SATURDAY).unwrap();
    add(&mut bench, "rear-tyre-tube");
    assert_eq!(parts(&bench), [("Rear tyre".to_owned(), PartState::Wanted, None)], "no size, and no tube");
}

#[test]
fn a_part_that_is_there_is_taken_and_not_ordered_twice() {
    let mut bench = own_bike();
    let chain = Part { title: "Chain".into(), state: PartState::Here, ..Part::default() };
    let there = act(&mut bench, RecordPart { id: None, part: chain }, SATURDAY).unwrap().made.unwrap();
    act(&mut bench, AddPackages { packages: vec!["tyres-and-chain".into()], leave_out: None }, SATURDAY).unwrap();
    let titles: Vec<String> = parts(&bench).into_iter().map(|(title, ..)| title).collect();
    let all = ["Chain", "Front tyre", "Gearbox sprocket", "Rear tyre", "Tube, front", "Tube, rear", "Wheel sprocket"];
    assert_eq!(titles, all);
    let added = add(&mut bench, "chain-sprockets");
    let job = bench.job(&IdAsk { id: added.made.unwrap() }, &at(SATURDAY)).unwrap().job;
    assert!(job.parts.contains(&there) && added.notes.len() <= 1, "{:?}", added.notes);
}

#[test]
fn a_part_without_a_size_says_what_to_read_off_and_one_can_of_fluid_serves_every_job_of_a_package() {
    let mut bench = own_bike();
    act(&mut bench, AddPackages { packages: vec!["brakes-all-round".into()], leave_out: None }, SATURDAY).unwrap();
    let cards = bench.bike(&BareAsk {}, &at(SATURDAY)).unwrap().parts;
    let fluid: Vec<&Part> = cards.iter().map(|card| &card.part).filter(|part| part.title.contains("fluid")).collect();
    assert_eq!(fluid.len(), 1);
    for part in cards.iter().map(|card| &card.part) {
        assert!(part.size.is_some() || part.note.is_some(), "{}", part.title);
    }
    assert!(cards.iter().all(|card| card.arrival.as_ref().is_some_and(|comes| comes.if_ordered_today)));
}

#[test]
fn brakes_tell_the_size_of_what_goes_into_them_and_two_unlike_ones_do_not() {
    let mut bench = own_bike();
    let disc = |master_mm| Brake {
        brake: Some(BrakeKind::Disc),
        master_mm: Some(master_mm),
        fluid: Some(FluidGrade::Dot4),
        ..Brake::default()
    };
    let mut record = |end, brake| {
        act(&mut bench, RecordBrake { side: Side::Standard, end, brake }, SATURDAY).unwrap();
        let made = add(&mut bench, "master-cylinder-swap");
        let told = parts(&bench);
        act(&mut bench, Undo { batch: made.batch }, SATURDAY).unwrap();
        told.into_iter().map(|(_, _, size)| size).collect::<Vec<_>>()
    };
    let dot = || Some("DOT 4".to_owned());
    assert_eq!(record(End::Front, disc(14.0)), [dot(), Some("14 mm".to_owned())]);
    assert_eq!(record(End::Rear, disc(12.7)), [dot(), None]);
}
