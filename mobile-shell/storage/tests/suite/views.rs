//! The read-only views of a bundle against the fold of its changes: whoever reads it with another SQLite tool sees the
//! same bike.

use std::collections::BTreeMap;

use layshaft_core::changes::{Change, Field, Fields, Ledger, RecordKind};
use layshaft_core::record::KINDS;
use layshaft_storage::Store;
use proptest::prelude::*;
use rusqlite::types::Value as Sql;
use rusqlite::{Connection, MAIN_DB};
use serde_json::{Value, json};

use crate::bench::{change, on, store};

fn open(changes: &[Change]) -> Connection {
    file_of(&store(changes))
}

fn file_of(store: &Store) -> Connection {
    let bytes = store.bundle(None).unwrap();
    let mut file = Connection::open_in_memory().unwrap();
    file.deserialize_read_exact(MAIN_DB, bytes.as_slice(), bytes.len(), true).unwrap();
    file
}

/// The rows of a view, by project and record, with what each column holds.
fn rows(file: &Connection, view: &str) -> BTreeMap<(String, String), BTreeMap<String, Sql>> {
    let mut statement = file.prepare(&format!("SELECT * FROM \"{view}\"")).unwrap();
    let names: Vec<String> = statement.column_names().map(str::to_owned).collect();
    let read = statement.query_map([], |row| {
        let columns =
            (2..names.len()).map(|at| row.get(at).map(|held| (names[at].clone(), held))).collect::<Result<_, _>>()?;
        Ok(((row.get(0)?, row.get(1)?), columns))
    });
    read.unwrap().collect::<Result<_, _>>().unwrap()
}

/// A JSON value as SQL shows it.
fn as_sql(value: &Value) -> Sql {
    match value {
        Value::Null => Sql::Null,
        Value::Bool(yes) => Sql::Integer((*yes).into()),
        Value::Number(number) => number.as_i64().map_or_else(|| Sql::Real(number.as_f64().unwrap()), Sql::Integer),
        Value::String(text) => Sql::Text(text.clone()),
        other => Sql::Text(other.to_string()),
    }
}

fn snake(field: &str) -> String {
    field
        .chars()
        .flat_map(|c| if c.is_ascii_uppercase() { vec!['_', c.to_ascii_lowercase()] } else { vec![c] })
        .collect()
}

fn assert_agree(changes: &[Change]) {
    let file = open(changes);
    let ledger = Ledger::fold(changes.iter().cloned());
    for RecordKind { kind, .. } in KINDS {
        let found = rows(&file, &snake(kind));
        let folded: Vec<(&str, &str, &Fields)> = ["b1", "b2"]
            .into_iter()
            .flat_map(|project| ledger.present(project, kind).map(move |(record, fields)| (project, record, fields)))
            .collect();
        assert_eq!(found.len(), folded.len(), "records of {kind}");
        for (project, record, fields) in folded {
            let columns = &found[&(project.to_owned(), record.to_owned())];
            for field in fields.0.keys().filter(|field| columns.contains_key(&snake(field))) {
                assert_eq!(columns[&snake(field)], as_sql(fields.value(field).unwrap()), "{kind}/{record}/{field}");
            }
            let unset = columns.iter().filter(|(_, held)| **held != Sql::Null).count();
            let known = fields.0.keys().filter(|field| columns.contains_key(&snake(field)));
            assert_eq!(unset, known.filter(|field| !fields.value(field).unwrap().is_null()).count(), "{kind}/{record}");
        }
    }
    assert_current_agrees(&file, &ledger);
}

fn assert_current_agrees(file: &Connection, ledger: &Ledger) {
    let mut statement =
        file.prepare("SELECT project, kind, record, field, value, stamp FROM current ORDER BY 1, 2, 3, 4").unwrap();
    let found: Vec<[String; 6]> = statement
        .query_map([], |row| Ok([row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?, row.get(4)?, row.get(5)?]))
        .unwrap()
        .collect::<Result<_, _>>()
        .unwrap();
    let folded: Vec<[String; 6]> = ledger
        .records()
        .filter(|(_, fields)| !fields.gone())
        .flat_map(|(key, fields)| {
            fields.0.keys().map(|field| {
                let (value, stamp) = (fields.value(field).unwrap(), fields.stamp(field).unwrap());
                let Change { key, .. } = Change { key: key.clone(), ..change("", "", "", "", 0, 0) };
                [key.project, key.kind, key.record, field.clone(), value.to_string(), stamp.to_string()]
            })
        })
        .collect();
    assert_eq!(found, folded);
}

#[test]
fn every_kind_of_record_has_a_view_with_its_present_values() {
    let mut changes: Vec<Change> =
        KINDS.iter().zip(1..).map(|(of, at)| change("b1", of.kind, "r", "unknownField", at, at)).collect();
    changes.extend([
        change("b1", "job", "j1", "title", "Reline the tank", 20),
        change("b1", "job", "j1", "title", "Reline the fuel tank", 21),
        change("b1", "job", "j1", "handsOnMinutes", 42.5, 22),
        change("b1", "job", "j1", "after", json!(["j2", "j3"]), 23),
        change("b1", "part", "p1", "priceMinor", 1250, 24),
        change("b1", "part", "p2", "title", "Put away", 25),
        change("b1", "part", "p2", "gone", true, 26),
        change("b1", "part", "p3", "gone", true, 27),
        change("b1", "part", "p3", "gone", false, 28),
        change("b1", "part", "p3", "title", "Brought back", 29),
        change("b2", "benchTime", "bike", "spans", json!([{ "weekday": 6, "fromMinute": 540, "toMinute": 720 }]), 30),
        change("b2", "bike", "bike", "invented", true, 31),
        change("b2", "bike", "bike", "modelYear", Value::Null, 32),
    ]);
    assert_agree(&changes);
    let file = open(&changes);
    let job: (String, f64, String) = file
        .query_row("SELECT title, hands_on_minutes, after FROM job WHERE record = 'j1'", [], |row| {
            Ok((row.get(0)?, row.get(1)?, row.get(2)?))
        })
        .unwrap();
    assert_eq!(job, ("Reline the fuel tank".to_owned(), 42.5, "[\"j2\",\"j3\"]".to_owned()));
}

/// A kind that no trade has heard of.
const INVENTED: &[RecordKind] = &[RecordKind {
    kind: "bottleRack",
    words: "Bottle rack",
    fields: &[Field { name: "bottlesHeld", words: "Bottles", within: &[] }],
}];

#[test]
fn a_kind_has_its_view_by_being_told_of_here_and_in_a_bundle_and_comes_along_also_untold() {
    let mut store = Store::in_memory().unwrap();
    store.append(&[change("b1", "bottleRack", "r1", "bottlesHeld", 6, 1)]).unwrap();
    let untold = file_of(&store);
    assert!(untold.prepare("SELECT * FROM bottle_rack").is_err());
    store.show(INVENTED).unwrap();
    let held =
        |file: &Connection| file.query_row("SELECT bottles_held FROM bottle_rack", [], |row| row.get::<_, u32>(0));
    assert_eq!(held(&file_of(&store)), Ok(6));
    assert_eq!(Store::read_bundle(&store.bundle(Some("b1")).unwrap()).unwrap().changes.len(), 1);
    let known = untold.query_row("SELECT count(*) FROM current", [], |row| row.get::<_, u32>(0));
    assert_eq!(known, Ok(1), "a fact of an unknown kind comes along");
}

#[test]
fn history_tells_when_each_value_was_set() {
    // 2026-03-14 09:26:53 UTC.
    let file = open(&[on(2, change("b1", "job", "j1", "title", "Grease", 1_773_480_413_589))]);
    let row: (String, String) =
        file.query_row("SELECT at_utc, device FROM history", [], |row| Ok((row.get(0)?, row.get(1)?))).unwrap();
    assert_eq!(row, ("2026-03-14 09:26:53".to_owned(), "0000000000000002".to_owned()));
}

fn some_change() -> impl Strategy<Value = Change> {
    let value = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i32>().prop_map(Value::from),
        (-1e9..1e9).prop_map(Value::from),
        "[ -~]{0,8}".prop_map(Value::from),
        Just(json!(["a", 1, { "b": null }])),
    ];
    let kind = prop::sample::select(KINDS.iter().map(|of| of.kind).collect::<Vec<_>>());
    let field = prop::sample::select(vec!["title", "name", "value", "gone", "priceMinor", "gearRatios", "elsewhere"]);
    ("b[12]", kind, "r[12]", field, value, 0..50_u64, 1..3_u64).prop_map(
        |(project, kind, record, field, value, millis, device)| {
            on(device, change(&project, kind, &record, field, value, millis))
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]
    #[test]
    fn views_and_fold_agree_whatever_happened(mut changes in prop::collection::vec(some_change(), 0..60)) {
        // One device never sets one stamp twice.
        let mut stamps = std::collections::BTreeSet::new();
        changes.retain(|change| stamps.insert((change.key.clone(), change.field.clone(), change.stamp)));
        assert_agree(&changes);
    }
}
