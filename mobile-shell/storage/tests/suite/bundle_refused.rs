//! Bundles that are refused, each with its reason.

use layshaft_core::error::{Code, Refusal};
use layshaft_storage::{Store, StoreError};
use rusqlite::{Connection, MAIN_DB};

use crate::bench::{attach, change, store, two_bikes};

fn bundle() -> Vec<u8> {
    let mut store =
        store(&(0..400).map(|at| change("tern", "job", &format!("j{at}"), "title", "Grease", at)).collect::<Vec<_>>());
    attach(&mut store, "image/png", &[7; 20_000]).unwrap();
    store.bundle(None).unwrap()
}

/// A bundle in which something was changed by SQL.
fn altered(sql: &str) -> Vec<u8> {
    let bytes = store(&two_bikes()).bundle(None).unwrap();
    let mut file = Connection::open_in_memory().unwrap();
    file.deserialize_read_exact(MAIN_DB, bytes.as_slice(), bytes.len(), false).unwrap();
    file.execute_batch(sql).unwrap();
    file.serialize(MAIN_DB).unwrap().to_vec()
}

fn code(bytes: &[u8]) -> (Code, String) {
    let refusal = Refusal::from(Store::read_bundle(bytes).unwrap_err());
    (refusal.code, layshaft_words::say(&refusal.message).replace("\u{a0}", " "))
}

#[test]
fn what_is_no_sqlite_file_or_belongs_to_another_program_is_no_bundle() {
    let (nothing, message) = code(b"");
    assert_eq!(nothing, Code::NotABundle);
    assert!(message.contains("empty"), "{message}");
    assert_eq!(code(b"%PDF-1.7 a letter").0, Code::NotABundle);
    let foreign = altered("PRAGMA application_id = 5");
    assert_eq!(code(&foreign).0, Code::NotABundle);
    let mut plain = Connection::open_in_memory().unwrap();
    plain.execute_batch("CREATE TABLE songs (title TEXT)").unwrap();
    assert_eq!(code(&plain.serialize(MAIN_DB).unwrap()).0, Code::NotABundle);
}

#[test]
fn a_bundle_cut_short_anywhere_is_refused_as_damaged() {
    let whole = bundle();
    for length in (16..whole.len()).step_by(509).chain([99, 100, 511, whole.len() - 1]) {
        let (refused, message) = code(&whole[..length]);
        assert_eq!(refused, Code::DamagedBundle, "{length} bytes: {message}");
        assert!(message.contains("cut short"), "{length} bytes: {message}");
    }
    assert!(Store::read_bundle(&whole).is_ok());
}

#[test]
fn a_bundle_with_a_page_wiped_is_refused_or_has_lost_nothing_that_is_read() {
    let whole = bundle();
    let good = Store::read_bundle(&whole).unwrap();
    let mut refused = 0;
    for page in 1..whole.len() / 4096 {
        let mut spoilt = whole.clone();
        spoilt[page * 4096..(page + 1) * 4096].fill(0);
        match Store::read_bundle(&spoilt) {
            Ok(read) => assert_eq!(read, good, "page {page}"),
            Err(error) => {
                refused += 1;
                assert!(matches!(error, StoreError::DamagedBundle { .. }), "page {page}: {error}");
            }
        }
    }
    assert!(refused > 0);
}

#[test]
fn a_bundle_of_a_newer_program_is_refused_with_both_layouts_named() {
    let newer = altered("PRAGMA user_version = 7");
    assert_eq!(Store::read_bundle(&newer).unwrap_err(), StoreError::NewerSchema { found: 7, known: 1 });
    let (refused, message) = code(&newer);
    assert_eq!(refused, Code::NewerSchema);
    assert!(message.contains("layout 7") && message.contains("1 to 1"), "{message}");
}

#[test]
fn a_bundle_whose_content_cannot_be_is_refused() {
    for (sql, reason) in [
        ("DROP TABLE attachment", "“attachment” is missing"),
        ("DROP TABLE change; CREATE VIEW change AS SELECT 1", "“change” is missing"),
        ("INSERT INTO attachment VALUES (printf('%064d', 1), 'a/b', x'00')", "not what its hash says"),
        (
            "INSERT INTO change VALUES ('t','k','r','f','1', printf('%016x-%08x-%016x', 1 << 60, 0, 1), NULL, 'b')",
            "after the year 9999",
        ),
        (
            "INSERT INTO change VALUES ('t','k','r','f','1', printf('%016x-%08x-%016x', 1, 0, 1), 'nonsense', 'b')",
            "nonsense",
        ),
    ] {
        let (refused, message) = code(&altered(sql));
        assert_eq!(refused, Code::DamagedBundle, "{sql}");
        assert!(message.contains(reason), "{sql}: {message}");
    }
}
