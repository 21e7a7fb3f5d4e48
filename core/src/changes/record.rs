//! Typed records on top of fields: a record is written as the fields in which it differs, and read back leniently.

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::{Map, Value};

use super::fold::{Fields, GONE};
use super::stored::Stored;

/// A type that is stored field by field. Each field folds by itself, and all alike: of its values the one with the
/// greatest stamp holds, and one that it had not seen is kept beside it as a rival.
pub trait Record: Serialize + DeserializeOwned + Default + Stored {
    /// Kind of the record in the table of changes.
    const KIND: &'static str;
    /// Id of the message that names the kind within a sentence.
    const WITHIN: &'static str;
}

/// A field that shall get a value.
#[derive(Clone, Debug, PartialEq)]
pub struct Edit {
    /// Kind of the record.
    pub kind: String,
    /// The record's id.
    pub record: String,
    /// The field.
    pub field: String,
    /// Its new value.
    pub value: Value,
}

impl Edit {
    /// Puts a record away, or brings it back.
    pub fn gone<R: Record>(record: &str, gone: bool) -> Edit {
        Edit { kind: R::KIND.to_owned(), record: record.to_owned(), field: GONE.to_owned(), value: gone.into() }
    }
}

/// The edits that turn `old` into `new`: one for each field that differs. Without `old`, one for each field that says
/// something.
pub fn edits<R: Record>(record: &str, new: &R, old: Option<&R>) -> Vec<Edit> {
    let before = old.map(as_map).unwrap_or_default();
    as_map(new)
        .into_iter()
        .filter(|(field, value)| value != before.get(field).unwrap_or(&Value::Null))
        .map(|(field, value)| Edit { kind: R::KIND.to_owned(), record: record.to_owned(), field, value })
        .collect()
}

/// Reads a record. A field that this program cannot read is passed over (it stays in the table of changes).
pub fn read<R: Record>(fields: &Fields) -> R {
    let known: Map<String, Value> = fields
        .0
        .iter()
        .filter(|(field, _)| field.as_str() != GONE)
        .filter_map(|(field, history)| Some((field.clone(), history.last_key_value()?.1.value.clone())))
        .filter(|(_, value)| !value.is_null())
        .collect();
    match serde_json::from_value(Value::Object(known.clone())) {
        Ok(record) => record,
        Err(_) => read_what_can_be(known),
    }
}

/// Field by field: keeps each one with which the record can still be read.
fn read_what_can_be<R: Record>(known: Map<String, Value>) -> R {
    let mut kept = Map::new();
    for (field, value) in known {
        let mut tried = kept.clone();
        tried.insert(field, value);
        if serde_json::from_value::<R>(Value::Object(tried.clone())).is_ok() {
            kept = tried;
        }
    }
    serde_json::from_value(Value::Object(kept)).unwrap_or_default()
}

fn as_map<R: Record>(record: &R) -> Map<String, Value> {
    match serde_json::to_value(record) {
        Ok(Value::Object(map)) => map,
        _ => Map::new(),
    }
}
