//! The layout of the database: who made it, how far it has been upgraded, and the steps that upgrade it.
//!
//! SQLite keeps two numbers in each file's header for this (<https://www.sqlite.org/fileformat2.html>, seen):
//! `application_id` says whose file it is, `user_version` says which layout it has.

use layshaft_core::changes::RecordKind;
use rusqlite::Connection;

use crate::StoreError;
use crate::views::refresh_views;

/// What marks a database file as ours: the letters `LayS`.
pub const APPLICATION: u32 = 0x4C61_7953;

/// One step for each layout; step *n* leads from layout *n - 1* to layout *n*. A step that was handed out never changes.
const STEPS: &[&str] = &[include_str!("layout/0001.sql")];

/// The newest layout that this program knows.
pub const NEWEST: u32 = STEPS.len() as u32;

/// Whose file this is and which layout it has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Header {
    /// The program that made it; 0 when none said so.
    pub application: u32,
    /// Its layout; 0 for a new file.
    pub layout: u32,
}

/// Reads whose file this is.
pub fn header(connection: &Connection) -> Result<Header, StoreError> {
    let number = |name: &str| connection.pragma_query_value(None, name, |row| row.get::<_, i32>(0));
    Ok(Header {
        application: number("application_id")?.cast_unsigned(),
        layout: number("user_version")?.cast_unsigned(),
    })
}

/// Brings a database up to the newest layout, each step in a transaction of its own, and rebuilds the views, those of these
/// kinds of records among them.
pub fn upgrade(connection: &mut Connection, kinds: &[RecordKind]) -> Result<(), StoreError> {
    let from = header(connection)?.layout;
    for (step, layout) in STEPS.iter().zip(1_u32..).skip(from as usize) {
        let transaction = connection.transaction()?;
        transaction.execute_batch(step)?;
        transaction.pragma_update(None, "application_id", APPLICATION)?;
        transaction.pragma_update(None, "user_version", layout)?;
        transaction.commit()?;
    }
    refresh_views(connection, kinds)
}

#[cfg(test)]
mod tests {
    use layshaft_core::record::KINDS;

    use super::*;
    use crate::Store;

    /// Databases as earlier programs left them, by layout.
    const KEPT: &[(u32, &str)] = &[(1, include_str!("../../../fixtures/databases/v0001.sql"))];

    /// Tables, triggers and views as they are defined.
    fn schema(connection: &Connection) -> Vec<(String, String)> {
        let mut found =
            connection.prepare("SELECT name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name").unwrap();
        found.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).unwrap().collect::<Result<_, _>>().unwrap()
    }

    #[test]
    fn every_kept_database_opens_with_its_facts_and_looks_like_a_new_one() {
        assert_eq!(KEPT.len() as u32, NEWEST, "each layout has a kept database");
        let mut fresh = Store::in_memory().unwrap();
        fresh.show(KINDS).unwrap();
        for (layout, sql) in KEPT {
            let kept = Connection::open_in_memory().unwrap();
            kept.execute_batch(sql).unwrap();
            assert_eq!(header(&kept).unwrap(), Header { application: APPLICATION, layout: *layout });
            let facts: u32 = kept.query_row("SELECT count(*) FROM change", [], |row| row.get(0)).unwrap();

            let mut store = Store::on(kept, |_| Ok(())).unwrap();
            store.show(KINDS).unwrap();
            assert_eq!(header(&store.connection).unwrap().layout, NEWEST);
            assert_eq!(schema(&store.connection), schema(&fresh.connection));
            assert_eq!(store.changes().unwrap().len() as u32, facts);
            let title: String = store
                .connection
                .query_row("SELECT title FROM job WHERE record = 'reline'", [], |row| row.get(0))
                .unwrap();
            assert_eq!(title, "Reline the fuel tank");
            let rubbish = "INSERT INTO change VALUES ('p', 'k', 'r', 'f', 'no JSON', printf('%016x-%08x-%016x', 1, 0, 1), NULL, 'b')";
            assert!(store.connection.execute(rubbish, []).is_err(), "what is written is checked");
        }
    }
}
