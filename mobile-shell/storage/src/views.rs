//! Read-only views, so that any SQLite tool or spreadsheet can read a database or a bundle.
//!
//! Views are derived and rebuilt on opening. There are three sorts:
//!
//! - `current`: the value that each field has now, as JSON; records that were put away are left out.
//! - `history`: every value that a field has had, with the UTC time at which it was set.
//! - one for each kind of record (`bike`, `job`, `part`, `reading`, `drive`, ...): a row is a record, a column a field. The
//!   columns are the fields of the record's type in the core, in their order, written `like_this`; the unit of a number
//!   is part of its name (`hands_on_minutes`, `applied_ms` is milliseconds since 1970 UTC). Lists and the like are JSON.
//!   Of the technical spec, `record` says side and place, as `fitted/front`.

use layshaft_core::changes::Record;
use layshaft_core::record::{
    BenchTime, Brake, Climate, Coat, Consumer, Drive, ElementChange, FaultSearch, Fluid, Identity, Indication,
    ItemAnswer, Job, Part, Photo, Place, Process, Reading, Supply, Tightening, Wheel,
};
use rusqlite::{Connection, OptionalExtension};

use crate::StoreError;
use crate::names::{column_name, field_names};

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
pub fn refresh_views(connection: &mut Connection) -> Result<(), StoreError> {
    let transaction = connection.transaction()?;
    for (name, sql) in all() {
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

/// Every view with its definition.
fn all() -> Vec<(String, String)> {
    vec![
        ("current".to_owned(), CURRENT.to_owned()),
        ("history".to_owned(), history()),
        of::<Identity>(),
        of::<Place>(),
        of::<Drive>(),
        of::<Wheel>(),
        of::<Supply>(),
        of::<Consumer>(),
        of::<Brake>(),
        of::<Fluid>(),
        of::<Indication>(),
        of::<ElementChange>(),
        of::<FaultSearch>(),
        of::<Part>(),
        of::<Tightening>(),
        of::<Photo>(),
        of::<Coat>(),
        of::<Process>(),
        of::<Climate>(),
        of::<Reading>(),
        of::<Job>(),
        of::<ItemAnswer>(),
        of::<BenchTime>(),
    ]
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
fn of<R: Record>() -> (String, String) {
    let name = column_name(R::KIND);
    let columns: String = field_names::<R>()
        .iter()
        .map(|field| {
            format!(",\n    max(value ->> '$') FILTER (WHERE field = '{field}') AS \"{}\"", column_name(field))
        })
        .collect();
    let kind = R::KIND;
    let sql = format!(
        "CREATE VIEW \"{name}\" AS\nSELECT project, record{columns}\nFROM current WHERE kind = '{kind}' GROUP BY project, record"
    );
    (name, sql)
}
