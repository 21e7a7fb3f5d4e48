//! A command is kept whole or not at all: facts, attachment and setting, in the file and in memory alike.

use layshaft_core::changes::Change;
use layshaft_core::error::{Code, Refusal};
use layshaft_core::record::Identity;
use layshaft_door::command::{AttachPhoto, LoadDemo, ReceiveBundle, StartBike, Undo};
use layshaft_door::query::{BareAsk, ShelfAnswer};
use layshaft_door::{Bench, Command, fresh_id};
use rusqlite::Connection;
use tempfile::TempDir;

use crate::{English, SATURDAY, act, at};

/// A bench over a file, and a second program on the same file that can make it refuse rows of one table.
struct Place {
    bench: Bench,
    other: Connection,
    folder: TempDir,
}

/// Everything in the file, by table, and all that the bench shows of it.
type Kept = ([u32; 3], Vec<Change>, ShelfAnswer);

impl Place {
    fn new() -> Place {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("bench.sqlite");
        let bench = Bench::open_native(&path).unwrap();
        Place { bench, other: Connection::open(path).unwrap(), folder }
    }

    fn refuse(&self, table: &str) {
        let trigger = format!(
            "CREATE TRIGGER no_room BEFORE INSERT ON {table} BEGIN SELECT RAISE(ABORT, 'no room for this row'); END"
        );
        self.other.execute_batch(&trigger).unwrap();
    }

    fn accept_again(&self) {
        self.other.execute_batch("DROP TRIGGER no_room").unwrap();
    }

    fn kept(&self) -> Kept {
        let rows = ["change", "attachment", "setting"]
            .map(|table| self.other.query_row(&format!("SELECT count(*) FROM {table}"), [], |row| row.get(0)).unwrap());
        let shelf = self.bench.shelf(&BareAsk {}, &at(SATURDAY)).unwrap();
        (rows, self.bench.facts().collect(), shelf)
    }

    fn try_once(&mut self, id: &str, command: &Command) -> Result<layshaft_door::command::Outcome, Refusal> {
        self.bench.act(id, command, &at(SATURDAY))
    }

    /// The command fails while `table` takes no rows, and then nothing of it is there; afterwards it goes through under
    /// the same id, once.
    fn fails_whole_then_passes(&mut self, table: &str, command: impl Into<Command>) {
        let (id, command, before) = (fresh_id(), command.into(), self.kept());
        self.refuse(table);
        let refused = self.try_once(&id, &command).unwrap_err();
        assert_eq!(refused.code, Code::Storage);
        assert!(refused.message.english().contains("no room"), "{}", refused.message);
        self.accept_again();
        assert_eq!(self.kept(), before, "something of a refused command is there");
        let undo = act(&mut self.bench, Undo { batch: id.clone() }, SATURDAY).unwrap_err();
        assert_eq!(undo.code, Code::Unknown, "what was not done cannot be taken back");

        let outcome = self.try_once(&id, &command).unwrap();
        assert!(outcome.changes > 0, "the same mark was not used up by the refusal");
        let after = self.kept();
        assert_ne!(after, before);
        self.try_once(&id, &command).unwrap();
        assert_eq!(self.kept(), after, "a second time changes nothing");
        let again = Bench::open_native(&self.folder.path().join("bench.sqlite")).unwrap();
        assert_eq!(again.facts().collect::<Vec<_>>(), after.1, "file and memory agree");
        assert_eq!(again.shelf(&BareAsk {}, &at(SATURDAY)).unwrap(), after.2);
    }
}

fn start() -> StartBike {
    StartBike { identity: Identity { name: "Barn find".into(), ..Identity::default() } }
}

fn photo() -> AttachPhoto {
    let (of_kind, of, media) = ("bike".into(), "bike".into(), "image/png".into());
    AttachPhoto { of_kind, of, media, bytes: vec![7; 1000], caption: None }
}

#[test]
fn a_photo_whose_fact_cannot_be_kept_leaves_no_bytes_behind() {
    let mut place = Place::new();
    act(&mut place.bench, start(), SATURDAY).unwrap();
    place.fails_whole_then_passes("change", photo());
}

#[test]
fn a_photo_whose_bytes_cannot_be_kept_leaves_no_fact_behind() {
    let mut place = Place::new();
    act(&mut place.bench, start(), SATURDAY).unwrap();
    place.fails_whole_then_passes("attachment", photo());
}

#[test]
fn a_bike_that_cannot_be_opened_is_not_started() {
    let mut place = Place::new();
    place.fails_whole_then_passes("setting", start());
    place.fails_whole_then_passes("setting", LoadDemo::default());
}

#[test]
fn a_bundle_whose_bike_cannot_be_opened_brings_nothing() {
    let mut from = Bench::in_memory().unwrap();
    act(&mut from, start(), SATURDAY).unwrap();
    act(&mut from, photo(), SATURDAY).unwrap();
    let bundle = from.bundle(&BareAsk {}, &at(SATURDAY)).unwrap().bundle;
    for table in ["change", "attachment", "setting"] {
        Place::new().fails_whole_then_passes(table, ReceiveBundle { bundle: bundle.clone(), as_second_bike: false });
    }
}

#[test]
fn a_photo_that_is_too_large_leaves_nothing_behind() {
    let mut place = Place::new();
    act(&mut place.bench, start(), SATURDAY).unwrap();
    let before = place.kept();
    let most = layshaft_core::record::PHOTO_MOST_BYTES;
    let refused = act(&mut place.bench, AttachPhoto { bytes: vec![7; most + 1], ..photo() }, SATURDAY).unwrap_err();
    assert_eq!(refused.code, Code::Unreadable);
    assert_eq!(place.kept(), before);
}
