//! What a bundle carries, and that it carries nothing else.

use std::fs;

use layshaft_core::changes::Device;
use layshaft_storage::{Received, Store};
use rusqlite::Connection;

use crate::bench::{Folder, attach, change, store, two_bikes};

fn holds(bytes: &[u8], text: &str) -> bool {
    bytes.windows(text.len()).any(|window| window == text.as_bytes())
}

#[test]
fn a_bundle_of_everything_brings_everything_to_an_empty_store() {
    let mut from = store(&two_bikes());
    let hash = attach(&mut from, "image/jpeg", b"a photograph").unwrap();
    let bundle = Store::read_bundle(&from.bundle(None).unwrap()).unwrap();
    assert_eq!((bundle.projects.clone(), bundle.schema), (vec!["other-bike".to_owned(), "tern".to_owned()], 1));

    let mut to = Store::in_memory().unwrap();
    assert_eq!(to.receive(&bundle, &[]).unwrap(), Received { changes: 4, known: 0, clashes: vec![], attachments: 1 });
    assert_eq!(to.changes().unwrap(), two_bikes());
    assert_eq!(to.attachment(&hash).unwrap().unwrap().1, b"a photograph");
    assert_eq!(to.receive(&bundle, &[]).unwrap(), Received { changes: 0, known: 4, clashes: vec![], attachments: 0 });
}

#[test]
fn a_bundle_of_one_bike_holds_nothing_of_another_nor_of_the_device() {
    let mut from = store(&two_bikes());
    from.set_device_if_new(Device(0xfeed_beef)).unwrap();
    from.set_setting("openBike", "kept to this device").unwrap();
    let mine = attach(&mut from, "image/jpeg", b"my own photograph").unwrap();
    let listed = attach(&mut from, "image/jpeg", b"one of several photographs").unwrap();
    attach(&mut from, "image/jpeg", b"a photograph of the other bike").unwrap();
    from.append(&[
        change("tern", "reading", "r1", "photo", mine.as_str(), 10),
        change("tern", "part", "p9", "photos", serde_json::json!([{ "of": "front", "hash": listed }]), 11),
    ])
    .unwrap();

    let bytes = from.bundle(Some("tern")).unwrap();
    for leak in ["other bike", "other-bike", "kept to this device", "feedbeef"] {
        assert!(!holds(&bytes, leak), "'{leak}' is in the bundle");
    }
    let bundle = Store::read_bundle(&bytes).unwrap();
    assert_eq!(bundle.projects, ["tern"]);
    assert_eq!(bundle.changes.len(), 5);
    let mut hashes = vec![mine, listed];
    hashes.sort();
    assert_eq!(bundle.attachments.iter().map(|file| file.hash.clone()).collect::<Vec<_>>(), hashes);
}

#[test]
fn a_bundle_is_a_plain_sqlite_file_without_free_pages() {
    let folder = Folder::new("plain");
    let path = folder.at("bundle.db");
    fs::write(&path, store(&two_bikes()).bundle(Some("tern")).unwrap()).unwrap();
    let file = Connection::open(&path).unwrap();
    let title: String = file.query_row("SELECT title FROM job WHERE project = 'tern'", [], |row| row.get(0)).unwrap();
    assert_eq!(title, "Reline the fuel tank");
    assert_eq!(file.pragma_query_value(None, "freelist_count", |row| row.get::<_, u32>(0)).unwrap(), 0);
    assert_eq!(file.pragma_query_value(None, "journal_mode", |row| row.get::<_, String>(0)).unwrap(), "delete");
}

#[test]
fn a_copy_of_the_database_file_is_read_like_a_bundle() {
    let folder = Folder::new("copied");
    let path = folder.at("bench.db");
    let mut kept = Store::open(&path).unwrap().store;
    kept.append(&two_bikes()).unwrap();
    drop(kept);
    assert_eq!(Store::read_bundle(&fs::read(&path).unwrap()).unwrap().changes, two_bikes());
}

#[test]
fn a_bundle_that_fails_half_way_leaves_nothing_behind() {
    let mut bundle = Store::read_bundle(&store(&two_bikes()).bundle(None).unwrap()).unwrap();
    bundle.attachments.push(layshaft_storage::Attachment { hash: "short".into(), media: "a/b".into(), bytes: vec![1] });
    let mut to = Store::in_memory().unwrap();
    assert!(to.receive(&bundle, &[]).is_err());
    assert_eq!(to.changes().unwrap(), []);
}

#[test]
fn a_bundle_keeps_every_bit_of_a_number_and_every_letter_of_a_text() {
    let odd = [
        serde_json::json!(0.1 + 0.2),
        serde_json::json!(1.797_693_134_862_315_7e308),
        serde_json::json!(5e-324),
        serde_json::json!(-0.0),
        serde_json::json!(9_007_199_254_740_993_i64),
        serde_json::json!("Ω \u{0} \" ' 🏍"),
        serde_json::json!(null),
        serde_json::json!({ "b": [1, 2.5, { "a": true }], "a": "" }),
    ];
    let changes: Vec<_> = odd
        .iter()
        .zip(1..)
        .map(|(value, at)| change("tern", "odd", "o", &format!("f{at}"), value.clone(), at))
        .collect();
    let bundle = Store::read_bundle(&store(&changes).bundle(None).unwrap()).unwrap();
    assert_eq!(bundle.changes, changes);
}
