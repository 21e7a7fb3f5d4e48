//! The database as a file: durable, shared, set aside when damaged, left alone when it is not ours.

use std::fs;

use layshaft_core::changes::Device;
use layshaft_core::error::Refusal;
use layshaft_storage::{Store, StoreError, set_aside_files};
use rusqlite::Connection;

use crate::bench::{Folder, attach, change, two_bikes};

#[test]
fn what_was_appended_is_in_the_files_before_the_store_is_closed() {
    let folder = Folder::new("durable");
    let mut store = Store::open(&folder.at("bench.db")).unwrap().store;
    store.append(&two_bikes()).unwrap();
    // As the disk would look if the power failed now.
    for ending in ["", "-wal"] {
        fs::copy(folder.at(&format!("bench.db{ending}")), folder.at(&format!("later.db{ending}"))).unwrap();
    }
    let later = Store::open(&folder.at("later.db")).unwrap();
    assert_eq!(later.set_aside, None);
    assert_eq!(later.store.changes().unwrap(), two_bikes());
    drop(store);
}

#[test]
fn the_mark_settings_and_attachments_of_a_device_are_there_after_reopening() {
    let folder = Folder::new("reopened");
    let path = folder.at("bench.db");
    let mut store = Store::open(&path).unwrap().store;
    assert_eq!(store.device(), None);
    assert_eq!(store.set_device_if_new(Device(0xfeed)).unwrap(), Device(0xfeed));
    store.set_setting("openBike", "tern").unwrap();
    store.set_setting("openBike", "other-bike").unwrap();
    let hash = attach(&mut store, "image/jpeg", b"a photograph").unwrap();
    assert_eq!(attach(&mut store, "image/jpeg", b"a photograph").unwrap(), hash);
    drop(store);

    let mut store = Store::open(&path).unwrap().store;
    assert_eq!(store.device(), Some(Device(0xfeed)));
    assert_eq!(store.set_device_if_new(Device(7)).unwrap(), Device(0xfeed), "the first mark stays");
    assert_eq!(store.setting("openBike").unwrap().as_deref(), Some("other-bike"));
    assert_eq!(store.setting("neverSet").unwrap(), None);
    assert_eq!(store.attachment(&hash).unwrap(), Some(("image/jpeg".into(), b"a photograph".to_vec())));
    assert_eq!(store.attachment("no such hash").unwrap(), None);
}

#[test]
fn a_second_program_on_the_same_file_is_noticed() {
    let folder = Folder::new("shared");
    let path = folder.at("bench.db");
    let mut here = Store::open(&path).unwrap().store;
    let mut there = Store::open(&path).unwrap().store;
    here.append(&two_bikes()[..1]).unwrap();
    assert!(!here.changed_elsewhere().unwrap(), "own writes do not count");
    there.append(&two_bikes()[1..]).unwrap();
    assert!(here.changed_elsewhere().unwrap());
    assert!(!here.changed_elsewhere().unwrap(), "once told, told");
    assert_eq!(here.changes().unwrap(), two_bikes());
}

/// Opens a spoilt file and proves that its bytes are kept under another name and that a fresh store works.
fn set_aside(name: &str, spoil: impl Fn(&mut Vec<u8>)) {
    let folder = Folder::new(name);
    let path = folder.at("bench.db");
    let mut store = Store::open(&path).unwrap().store;
    let many: Vec<_> = (0..3_000).map(|at| change("tern", "job", &format!("j{at}"), "title", "Grease", at)).collect();
    store.append(&many).unwrap();
    drop(store);
    let mut bytes = fs::read(&path).unwrap();
    spoil(&mut bytes);
    fs::write(&path, &bytes).unwrap();

    let mut opened = Store::open(&path).unwrap();
    let aside = opened.set_aside.expect("the damaged file is set aside");
    assert!(aside.ends_with("bench.db.damaged-1"), "{aside}");
    assert!(fs::read(&aside).unwrap() == bytes, "nothing of it is lost");
    let files = set_aside_files(&aside).unwrap();
    assert!(files.len() == 1 && files[0].name == "bench.db.damaged-1" && files[0].bytes == bytes);
    assert_eq!(opened.store.changes().unwrap(), []);
    opened.store.append(&two_bikes()).unwrap();
    drop(opened.store);
    let again = Store::open(&path).unwrap();
    assert_eq!((again.set_aside, again.store.changes().unwrap()), (None, two_bikes()));
}

#[test]
fn a_file_that_is_no_database_any_more_is_set_aside() {
    set_aside("overwritten", |bytes| bytes[..4096].fill(b'x'));
}

#[test]
fn a_file_with_a_hole_in_its_facts_is_set_aside() {
    set_aside("holed", |bytes| {
        let middle = bytes.len() / 2 / 4096 * 4096;
        bytes[middle..middle + 4096].fill(0);
    });
}

#[test]
fn a_file_that_was_cut_short_is_set_aside() {
    set_aside("cut", |bytes| bytes.truncate(bytes.len() / 2));
}

#[test]
fn a_second_damaged_file_does_not_overwrite_the_first_one_set_aside() {
    let folder = Folder::new("twice");
    for text in ["first rubbish, long enough to be no database", "second rubbish, long enough to be no database"] {
        fs::write(folder.at("bench.db"), text).unwrap();
        assert!(Store::open(&folder.at("bench.db")).unwrap().set_aside.is_some());
    }
    assert!(fs::read_to_string(folder.at("bench.db.damaged-1")).unwrap().starts_with("first"));
    assert!(fs::read_to_string(folder.at("bench.db.damaged-2")).unwrap().starts_with("second"));
}

#[test]
fn what_was_set_aside_is_given_out_with_its_log_and_refused_where_it_is_gone() {
    let folder = Folder::new("given-out");
    let aside = folder.at("bench.db.damaged-1");
    fs::write(&aside, "main").unwrap();
    fs::write(folder.at("bench.db.damaged-1-wal"), "log").unwrap();
    let files = set_aside_files(&aside.display().to_string()).unwrap();
    let told: Vec<(&str, &[u8])> = files.iter().map(|file| (file.name.as_str(), file.bytes.as_slice())).collect();
    assert_eq!(told, [("bench.db.damaged-1", b"main".as_slice()), ("bench.db.damaged-1-wal", b"log".as_slice())]);
    fs::remove_file(&aside).unwrap();
    let gone = set_aside_files(&aside.display().to_string()).unwrap_err();
    let gone = layshaft_words::say(&Refusal::from(gone).message);
    assert!(gone.contains("damaged-1 could not be read"), "{gone}");
}

#[test]
fn the_database_of_another_program_is_refused_and_left_as_it_is() {
    let folder = Folder::new("foreign");
    let path = folder.at("bench.db");
    Connection::open(&path)
        .unwrap()
        .execute_batch("CREATE TABLE songs (title TEXT); INSERT INTO songs VALUES ('x')")
        .unwrap();
    let before = fs::read(&path).unwrap();
    assert_eq!(Store::open(&path).map(|_| ()).unwrap_err(), StoreError::Foreign);
    assert!(fs::read(&path).unwrap() == before);
    assert_eq!(folder.files(), ["bench.db"]);
}

#[test]
fn a_database_of_a_newer_program_is_read_and_exported_but_never_written() {
    let folder = Folder::new("newer");
    let path = folder.at("bench.db");
    let mut store = Store::open(&path).unwrap().store;
    store.append(&two_bikes()).unwrap();
    store.set_device_if_new(Device(0xfeed)).unwrap();
    drop(store);
    Connection::open(&path)
        .unwrap()
        .execute_batch("CREATE TABLE tool (name TEXT); INSERT INTO tool VALUES ('spanner'); PRAGMA user_version = 99")
        .unwrap();

    let before = fs::read(&path).unwrap();
    let mut opened = Store::open(&path).unwrap();
    assert_eq!((opened.set_aside, opened.store.newer_schema()), (None, Some(99)));
    assert_eq!(opened.store.changes().unwrap(), two_bikes());
    let refused = StoreError::NewerSchema { found: 99, known: 1 };
    assert_eq!(opened.store.append(&[change("tern", "job", "j2", "title", "x", 9)]).unwrap_err(), refused);
    assert_eq!(opened.store.set_setting("a", "b").unwrap_err(), refused);
    assert_eq!(opened.store.set_device_if_new(Device(1)), Ok(Device(0xfeed)), "the mark is known and needs no writing");
    assert_eq!(attach(&mut opened.store, "a/b", b"c").unwrap_err(), refused);

    // The bundle is complete for the newer program, down to the table that this one does not know.
    let bundle = opened.store.bundle(None).unwrap();
    assert_eq!(Store::read_bundle(&bundle).unwrap_err(), refused);
    fs::write(folder.at("bundle.db"), &bundle).unwrap();
    let copy = Connection::open(folder.at("bundle.db")).unwrap();
    let tool: String = copy.query_row("SELECT name FROM tool", [], |row| row.get(0)).unwrap();
    assert_eq!(tool, "spanner");
    assert_eq!(copy.query_row("SELECT count(*) FROM change", [], |row| row.get::<_, u32>(0)).unwrap(), 4);
    drop(opened.store);
    assert!(fs::read(&path).unwrap() == before, "the file is as it was");
}
