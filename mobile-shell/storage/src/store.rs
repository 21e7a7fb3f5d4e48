//! The device's own database.

use std::cell::Cell;

use layshaft_core::changes::{Change, Device, RecordKind};
use layshaft_core::message::Message;
use rusqlite::{Connection, OptionalExtension};
use sha2::{Digest, Sha256};

use crate::StoreError;
use crate::layout::{self, APPLICATION, NEWEST};
use crate::message::StoreMessage;
use crate::rows;
use crate::views::refresh_views;

/// One SQLite connection to the changes, attachments and settings of this device.
#[derive(Debug)]
pub struct Store {
    pub(crate) connection: Connection,
    newer: Option<u32>,
    device: Option<Device>,
    version_seen: Cell<i64>,
    pub(crate) kinds: &'static [RecordKind],
}

/// A store that was opened, and what happened on the way.
#[derive(Debug)]
pub struct Opened {
    /// The store.
    pub store: Store,
    /// Name under which a damaged database was set aside; the store is then a fresh one.
    pub set_aside: Option<String>,
}

/// A file that was set aside, as it was found.
#[derive(Debug, PartialEq)]
pub struct AsideFile {
    /// Its name, without a folder.
    pub name: String,
    /// Every byte of it.
    pub bytes: Vec<u8>,
}

impl Store {
    /// A store that lasts as long as the value: for tests and for looking at something without keeping it.
    pub fn in_memory() -> Result<Store, StoreError> {
        Store::on(memory()?, |_| Ok(()))
    }

    /// Checks what the connection leads to, makes it last (`durable` knows how), and upgrades it where it is older. What is
    /// not ours to write is not touched.
    pub(crate) fn on(
        mut connection: Connection,
        durable: impl FnOnce(&Connection) -> Result<(), StoreError>,
    ) -> Result<Store, StoreError> {
        connection.pragma_update(None, "foreign_keys", true)?;
        connection.pragma_update(None, "trusted_schema", false)?;
        let header = layout::header(&connection)?;
        let empty = connection.query_row("SELECT count(*) = 0 FROM sqlite_schema", [], |row| row.get::<_, bool>(0))?;
        if header.application != APPLICATION && !empty {
            return Err(StoreError::Foreign);
        }
        let newer = (header.layout > NEWEST).then_some(header.layout);
        if newer.is_none() {
            durable(&connection)?;
            if !empty {
                check(&connection)?;
            }
            layout::upgrade(&mut connection, &[])?;
        }
        let mut store = Store { connection, newer, device: None, version_seen: Cell::new(0), kinds: &[] };
        store.device = match newer {
            // A newer program may keep its id elsewhere; reading the facts needs none.
            Some(_) => store.read_device().unwrap_or(None),
            None => store.read_device()?,
        };
        store.version_seen.set(store.version()?);
        Ok(store)
    }

    /// Says which kinds of records there are: each gets a view, here and in every bundle.
    pub fn show(&mut self, kinds: &'static [RecordKind]) -> Result<(), StoreError> {
        self.kinds = kinds;
        match self.newer {
            // A newer program's views are not ours to rewrite.
            Some(_) => Ok(()),
            None => refresh_views(&mut self.connection, kinds),
        }
    }

    /// Layout of the database where it is newer than this program: then it can be read and exported, not written.
    pub fn newer_schema(&self) -> Option<u32> {
        self.newer
    }

    /// This device's id, once it has one.
    pub fn device(&self) -> Option<Device> {
        self.device
    }

    /// Gives this device its id unless it has one; returns the id that holds. The host draws `fresh` at random.
    pub fn set_device_if_new(&mut self, fresh: Device) -> Result<Device, StoreError> {
        if let Some(device) = self.device {
            return Ok(device);
        }
        self.may_write()?;
        self.connection
            .execute("INSERT OR IGNORE INTO meta (name, value) VALUES ('device', ?1)", [format!("{:016x}", fresh.0)])?;
        // Another program on the same file may have been quicker.
        self.device = self.read_device()?;
        self.device.ok_or_else(|| StoreError::Sqlite(StoreMessage::NoMark.into()))
    }

    fn read_device(&self) -> Result<Option<Device>, StoreError> {
        let text: Option<String> = self
            .connection
            .query_row("SELECT value FROM meta WHERE name = 'device'", [], |row| row.get(0))
            .optional()?;
        text.map(|text| {
            u64::from_str_radix(&text, 16)
                .map(Device)
                .map_err(|_| StoreError::Damaged { reason: StoreMessage::BadMark { text }.into() })
        })
        .transpose()
    }

    /// Every change, in the order of bikes, kinds, records, fields and stamps.
    pub fn changes(&self) -> Result<Vec<Change>, StoreError> {
        rows::all(&self.connection, |reason| StoreError::Damaged { reason })
    }

    /// Whether another program wrote to the same file since this was last asked: then read [`Store::changes`] again.
    pub fn changed_elsewhere(&self) -> Result<bool, StoreError> {
        let version = self.version()?;
        Ok(self.version_seen.replace(version) != version)
    }

    /// A number that SQLite changes whenever another connection commits.
    fn version(&self) -> Result<i64, StoreError> {
        Ok(self.connection.pragma_query_value(None, "data_version", |row| row.get(0))?)
    }

    /// A setting of this device. Settings are neither merged nor exported.
    pub fn setting(&self, name: &str) -> Result<Option<String>, StoreError> {
        Ok(self
            .connection
            .query_row("SELECT value FROM setting WHERE name = ?1", [name], |row| row.get(0))
            .optional()?)
    }

    /// A file by its hash: media type and bytes.
    pub fn attachment(&self, hash: &str) -> Result<Option<(String, Vec<u8>)>, StoreError> {
        Ok(self
            .connection
            .query_row("SELECT media, bytes FROM attachment WHERE hash = ?1", [hash], |row| {
                Ok((row.get(0)?, row.get(1)?))
            })
            .optional()?)
    }

    /// Refuses to write into a database of a newer program, which may mean something else by what it keeps.
    pub(crate) fn may_write(&self) -> Result<(), StoreError> {
        match self.newer {
            Some(found) => Err(StoreError::NewerSchema { found, known: NEWEST }),
            None => Ok(()),
        }
    }
}

/// A new database in memory.
pub(crate) fn memory() -> Result<Connection, StoreError> {
    let connection = Connection::open_in_memory()?;
    // The two platforms have different defaults; a bundle shall be the same from both.
    connection.pragma_update(None, "page_size", 4096)?;
    Ok(connection)
}

/// Looks through the tables that everything hangs on. The attachments are left out: they may be large, and each proves
/// itself by its hash. What a row may hold was checked when it was written; doing it again would take four times as long.
fn check(connection: &Connection) -> Result<(), StoreError> {
    connection.pragma_update(None, "ignore_check_constraints", true)?;
    for table in ["change", "meta", "setting"] {
        let found: String = connection.query_row(&format!("PRAGMA quick_check({table})"), [], |row| row.get(0))?;
        if found != "ok" {
            return Err(StoreError::Damaged { reason: Message::as_entered(found) });
        }
    }
    connection.pragma_update(None, "ignore_check_constraints", false)?;
    Ok(())
}

/// SHA-256, hexadecimal.
pub fn content_hash(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Attachment;
    use crate::commit::tests::change;

    #[test]
    fn no_statement_rewrites_replaces_or_deletes_a_fact() {
        let mut store = Store::in_memory().unwrap();
        store.commit(&[change(15, 1)], &[Attachment::of("a/b", b"c".to_vec())], &[]).unwrap();
        for sql in [
            "UPDATE change SET value = '9'",
            "DELETE FROM change",
            "UPDATE attachment SET media = 'x'",
            "DELETE FROM attachment",
        ] {
            let error = store.connection.execute(sql, []).unwrap_err().to_string();
            assert!(error.contains("never"), "{sql}: {error}");
        }
        store
            .connection
            .execute_batch(
                "INSERT OR REPLACE INTO change SELECT project, kind, record, field, '9', stamp, seen, batch FROM change;
                INSERT OR REPLACE INTO attachment SELECT hash, 'x', bytes FROM attachment;",
            )
            .unwrap();
        assert_eq!(store.changes().unwrap(), [change(15, 1)]);
        assert_eq!(store.attachment(&content_hash(b"c")).unwrap().unwrap().0, "a/b");
    }

    #[test]
    fn no_row_that_is_no_change_gets_in_from_any_tool() {
        let store = Store::in_memory().unwrap();
        let good = "00000000000000ff-00000000-0000000000000001";
        let add = |value: &str, stamp: &str| {
            store
                .connection
                .execute("INSERT INTO change VALUES ('p', 'k', 'r', 'f', ?1, ?2, NULL, 'b')", [value, stamp])
        };
        for (value, stamp) in [
            ("not json", good),
            ("1", "1-2-3"),
            ("1", "00000000000000FF-00000000-0000000000000001"),
            ("1", "00000000000000ff-00000000-00000000000-0001"),
            ("1", "00000000000000ff_00000000_0000000000000001"),
        ] {
            assert!(add(value, stamp).is_err(), "{value} {stamp}");
        }
        assert!(add("1", good).is_ok());
    }

    #[test]
    fn sha_256_of_abc_is_that_of_the_standard() {
        // FIPS 180-2, appendix B.1 (standing: memory).
        assert_eq!(content_hash(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }
}
