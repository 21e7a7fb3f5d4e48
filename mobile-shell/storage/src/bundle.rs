//! Bundles: one SQLite file that carries one bike or all of them to another device.
//!
//! A bundle is built row by row into a new database rather than cut out of a copy, so that nothing that does not belong
//! into it can be left over in it: no other bike, no setting of this device, no free page.

use std::sync::atomic::{AtomicU32, Ordering};

use layshaft_core::changes::Change;
use rusqlite::{Connection, MAIN_DB};

use crate::commit::add_attachment;
use crate::layout::upgrade;
use crate::rows::COLUMNS;
use crate::store::{content_hash, memory};
use crate::{Store, StoreError};

/// A file that belongs to the records: a photograph, a scanned page.
#[derive(Clone, Debug, PartialEq)]
pub struct Attachment {
    /// SHA-256 of the bytes, hexadecimal.
    pub hash: String,
    /// Media type, as `image/jpeg`.
    pub media: String,
    /// The file itself.
    pub bytes: Vec<u8>,
}

impl Attachment {
    /// A file under the hash of its bytes.
    pub fn of(media: &str, bytes: Vec<u8>) -> Attachment {
        Attachment { hash: content_hash(&bytes), media: media.to_owned(), bytes }
    }
}

/// A bundle that was read and found whole.
#[derive(Clone, Debug, PartialEq)]
pub struct Bundle {
    /// Ids of the bikes in it, each once, in order.
    pub projects: Vec<String>,
    /// All its changes.
    pub changes: Vec<Change>,
    /// All its attachments.
    pub attachments: Vec<Attachment>,
    /// Layout in which it was written.
    pub schema: u32,
}

/// What a bundle brought.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Received {
    /// Changes that were new here.
    pub changes: u32,
    /// Changes that were known already.
    pub known: u32,
    /// Changes that could not be taken in; every other change of the bundle stands here now.
    pub clashes: Vec<Clash>,
    /// Attachments that were new here.
    pub attachments: u32,
}

/// A change under a stamp that means something else here, which only happens when two devices work under one id. The
/// fact that was here stays.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// The change that was not taken in.
    pub came: Change,
    /// The value that stands here under its stamp, as JSON text.
    pub here: String,
}

impl Store {
    /// One bike, or all of them with `None`, as the bytes of a SQLite file.
    ///
    /// A bike takes along its changes of every kind, also of kinds that only a newer program knows, and the attachments that
    /// its records name. A database of a newer program is copied whole, whatever
    /// is in it, since only that program knows what belongs to what.
    pub fn bundle(&self, project: Option<&str>) -> Result<Vec<u8>, StoreError> {
        if self.newer_schema().is_some() {
            return whole_copy(&self.connection);
        }
        let mut bundle = memory()?;
        // Nobody else sees it and nothing of it is kept after an error, so it needs no way back. What its rows hold was
        // checked when they were written here; doing it again would take longer than all the rest.
        bundle.pragma_update(None, "journal_mode", "off")?;
        bundle.pragma_update(None, "ignore_check_constraints", true)?;
        upgrade(&mut bundle, self.kinds)?;
        let writing = bundle.transaction()?;
        // Both selections below see the same state of the store.
        let reading = self.connection.unchecked_transaction()?;
        copy_changes(&reading, &writing, project)?;
        copy_attachments(&reading, &writing, project)?;
        reading.finish()?;
        writing.commit()?;
        Ok(bundle.serialize(MAIN_DB)?.to_vec())
    }
}

fn copy_changes(from: &Connection, to: &Connection, project: Option<&str>) -> Result<(), StoreError> {
    let mut add = to.prepare(&format!("INSERT INTO change ({COLUMNS}) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)"))?;
    let mut found = from.prepare(&format!("SELECT {COLUMNS} FROM change WHERE ?1 IS NULL OR project = ?1"))?;
    let mut rows = found.query([project])?;
    while let Some(row) = rows.next()? {
        let texts: [Option<String>; 8] =
            [row.get(0)?, row.get(1)?, row.get(2)?, row.get(3)?, row.get(4)?, row.get(5)?, row.get(6)?, row.get(7)?];
        add.execute(texts)?;
    }
    Ok(())
}

/// Records name an attachment by its hash, wherever in a value that stands.
fn copy_attachments(from: &Connection, to: &Connection, project: Option<&str>) -> Result<(), StoreError> {
    let mut found = from.prepare(
        "SELECT hash, media, bytes FROM attachment WHERE ?1 IS NULL OR hash IN (
            SELECT part.atom FROM change, json_tree(change.value) AS part
            WHERE change.project = ?1 AND part.type = 'text' AND length(part.atom) = 64)
        ORDER BY hash",
    )?;
    let mut rows = found.query([project])?;
    while let Some(row) = rows.next()? {
        add_attachment(
            to,
            &row.get::<_, String>(0)?,
            &row.get::<_, String>(1)?,
            row.get_ref(2)?.as_blob().unwrap_or_default(),
        )?;
    }
    Ok(())
}

/// A copy of a database as it is, without its free pages.
fn whole_copy(from: &Connection) -> Result<Vec<u8>, StoreError> {
    // Databases in memory are shared by name within the program, so each copy needs a name of its own.
    static COPIES: AtomicU32 = AtomicU32::new(0);
    let name = format!("file:/whole-copy-{}?vfs=memdb", COPIES.fetch_add(1, Ordering::Relaxed));
    let mut copy = Connection::open(&name)?;
    from.execute("VACUUM INTO ?1", [&name])?;
    Ok(copy.serialize(MAIN_DB)?.to_vec())
}
