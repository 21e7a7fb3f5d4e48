//! Read-only views, so that any SQLite tool or spreadsheet can read a database or a bundle.
//!
//! Views are derived and rebuilt on opening. There are three sorts:
//!
//! - `current`: the value that each field has now, as JSON; records that were put away are left out.
//! - `history`: every value that a field has had, with the UTC time at which it was set.
//! - one for each kind of record that the program told of: a row is a record, a column a field. The columns are the fields
//!   in their order, written `like_this`; the unit of a number is part of its name (`hands_on_minutes`, `applied_ms` is
//!   milliseconds since 1970 UTC). Lists and the like are JSON.
//!
//! What kinds there are comes as data ([`Store::show`](crate::Store::show)): nothing here knows what they are about.

use layshaft_core::changes::RecordKind;
use rusqlite::{Connection, OptionalExtension};

use crate::StoreError;

/// The value that each field has now. Where `max` is the only aggregate, SQLite takes the other columns from the row that
/// holds it (<https://www.sqlite.org/lang_select.html>, "bare columns", seen).
const CURRENT: &str = "CREATE VIEW current AS
SELECT project, kind, record, field, value, max(stamp) AS stamp, seen, batch, device
FROM change AS one
WHERE json_type((SELECT value FROM change AS gone
    WHERE (gone.project, gone.kind, gone.record, gone.field) = (one.project, one.kind, one.record, 'gone')
    ORDER BY stamp DESC LIMIT 1)) IS NOT 'true'
GROUP BY project, kind, record, field";

/// Rebuilds the views that are missing or not as this program writes them.
pub fn refresh_views(connection: &mut Connection, kinds: &[RecordKind]) -> Result<(), StoreError> {
    let transaction = connection.transaction()?;
    let of_all = [("current".to_owned(), CURRENT.to_owned()), ("history".to_owned(), history())];
    for (name, sql) in of_all.into_iter().chain(kinds.iter().map(of)) {
        let there: Option<String> = transaction
            .query_row("SELECT sql FROM sqlite_schema WHERE type = 'view' AND name = ?1", [&name], |row| row.get(0))
            .optional()?;
        if there.as_ref() != Some(&sql) {
            transaction.execute_batch(&format!("DROP VIEW IF EXISTS \"{name}\"; {sql};"))?;
        }
    }
    transaction.commit()?;
    Ok(())
}

/// Every value with its time. SQLite reads no hexadecimal text, so each digit is looked up; 12 digits of milliseconds last
/// until the year 10889.
fn history() -> String {
    let digit =
        |place: u32| format!("((instr('0123456789abcdef', substr(stamp, {}, 1)) - 1) << {})", 16 - place, 4 * place);
    let millis = (0..12).map(digit).collect::<Vec<_>>().join(" | ");
    format!(
        "CREATE VIEW history AS
SELECT project, kind, record, field, value, strftime('%Y-%m-%d %H:%M:%S', ({millis}) / 1000, 'unixepoch') AS at_utc, stamp, seen, batch, device
FROM change"
    )
}

/// The view of one kind of record.
fn of(kind: &RecordKind) -> (String, String) {
    let name = column_name(kind.kind);
    let column = |field: &str| {
        format!(",\n    max(value ->> '$') FILTER (WHERE field = '{field}') AS \"{}\"", column_name(field))
    };
    let columns: String = kind.fields.iter().map(|field| column(field.name)).collect();
    let sql = format!(
        "CREATE VIEW \"{name}\" AS\nSELECT project, record{columns}\nFROM current WHERE kind = '{}' GROUP BY project, record",
        kind.kind
    );
    (name, sql)
}

/// `handsOnMinutes` as `hands_on_minutes`.
fn column_name(field: &str) -> String {
    let mut name = String::with_capacity(field.len() + 4);
    for letter in field.chars() {
        if letter.is_ascii_uppercase() {
            name.push('_');
        }
        name.push(letter.to_ascii_lowercase());
    }
    name
}
