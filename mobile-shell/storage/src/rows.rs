//! A change as a row of the table, and back.

use layshaft_core::changes::{Change, Key, Stamp};
use layshaft_core::message::Message;
use rusqlite::{Connection, Row, params};

use crate::StoreError;
use crate::message::StoreMessage;

/// The columns that make a change, in the order in which they are read here.
pub const COLUMNS: &str = "project, kind, record, field, value, stamp, seen, batch";

/// A stamp later than this (the end of the year 9999) comes from no clock. Taken in, it would hold every later stamp up.
const LAST_MILLIS: u64 = 253_402_300_799_999;

/// How a row met what was there.
#[derive(Clone, Debug, PartialEq)]
pub enum Added {
    /// It was not there.
    New,
    /// The same fact was there.
    Known,
    /// Another fact was there under the same stamp; that one stays. This is its value, as JSON text.
    Clash(String),
}

/// Adds a change unless it is there.
pub fn add(connection: &Connection, change: &Change) -> Result<Added, StoreError> {
    let Change { key, field, value, stamp, seen, batch } = change;
    let (value, stamp) = (value.to_string(), stamp.to_string());
    let seen = seen.map(|seen| seen.to_string());
    let new = connection
        .prepare_cached(
            "INSERT INTO change (project, kind, record, field, value, stamp, seen, batch) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)",
        )?
        .execute(params![key.project, key.kind, key.record, field, value, stamp, seen, batch])?;
    if new > 0 {
        return Ok(Added::New);
    }
    let (same, here): (bool, String) = connection
        .prepare_cached(
            "SELECT value = ?1 AND seen IS ?2 AND batch = ?3, value FROM change
            WHERE (project, kind, record, field, stamp) = (?4, ?5, ?6, ?7, ?8)",
        )?
        .query_row(params![value, seen, batch, key.project, key.kind, key.record, field, stamp], |row| {
            Ok((row.get(0)?, row.get(1)?))
        })?;
    Ok(if same { Added::Known } else { Added::Clash(here) })
}

/// Every change of a database, in the order of its key. `damage` says what an unreadable row means there.
pub fn all(connection: &Connection, damage: impl Fn(Message) -> StoreError) -> Result<Vec<Change>, StoreError> {
    let mut statement =
        connection.prepare(&format!("SELECT {COLUMNS} FROM change ORDER BY project, kind, record, field, stamp"))?;
    let mut rows = statement.query([])?;
    let mut changes = Vec::new();
    while let Some(row) = rows.next()? {
        changes.push(read(row)?.map_err(&damage)?);
    }
    Ok(changes)
}

/// Reads a row. The inner error says what cannot be read in it.
fn read(row: &Row<'_>) -> Result<Result<Change, Message>, StoreError> {
    let key = Key { project: row.get(0)?, kind: row.get(1)?, record: row.get(2)? };
    let field: String = row.get(3)?;
    let value: String = row.get(4)?;
    let stamp: String = row.get(5)?;
    let seen: Option<String> = row.get(6)?;
    let batch: String = row.get(7)?;
    let place = || format!("{}/{}/{}/{field} at {stamp}", key.project, key.kind, key.record);
    let read = || {
        Ok::<_, Message>((
            serde_json::from_str(&value).map_err(|error| Message::as_entered(error.to_string()))?,
            read_stamp(&stamp)?,
            seen.as_deref().map(read_stamp).transpose()?,
        ))
    };
    Ok(match read() {
        Ok((value, stamp, seen)) => Ok(Change { key, field, value, stamp, seen, batch }),
        Err(reason) => Err(StoreMessage::BadRow { place: place(), reason }.into()),
    })
}

fn read_stamp(text: &str) -> Result<Stamp, Message> {
    let stamp: Stamp = text.parse().map_err(|error: layshaft_core::error::Refused| error.message())?;
    if stamp.millis > LAST_MILLIS {
        return Err(StoreMessage::LateStamp { stamp: text.to_owned() }.into());
    }
    Ok(stamp)
}
