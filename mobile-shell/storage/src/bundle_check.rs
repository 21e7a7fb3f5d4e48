//! Reading a bundle: nothing in it is believed before it was checked.
//!
//! The header's fields and their places: <https://www.sqlite.org/fileformat2.html> (seen).

use layshaft_core::changes::Change;
use layshaft_core::message::Message;
use rusqlite::{Connection, MAIN_DB};

use crate::bundle::{Attachment, Bundle};
use crate::layout::{APPLICATION, NEWEST, upgrade};
use crate::message::StoreMessage;
use crate::store::content_hash;
use crate::{Store, StoreError, rows};

/// How every SQLite file begins.
const MAGIC: &[u8; 16] = b"SQLite format 3\0";

/// What the header of the file says.
struct Header {
    page_bytes: u32,
    pages: u32,
    layout: u32,
    application: u32,
}

impl Store {
    /// Reads a bundle and checks that it is whole. A plain copy of a database file is one, too.
    pub fn read_bundle(bytes: &[u8]) -> Result<Bundle, StoreError> {
        let header = read_header(bytes)?;
        let mut connection = open(bytes).map_err(as_bundle)?;
        find_whole(&connection).map_err(as_bundle)?;
        upgrade(&mut connection, &[]).map_err(as_bundle)?;
        let changes = rows::all(&connection, |reason| StoreError::DamagedBundle { reason }).map_err(as_bundle)?;
        Ok(Bundle {
            projects: projects(&changes),
            attachments: attachments(&connection).map_err(as_bundle)?,
            changes,
            schema: header.layout,
        })
    }
}

/// Checks all that can be told without SQLite: whose file it is, its layout, and that none of it is missing.
fn read_header(bytes: &[u8]) -> Result<Header, StoreError> {
    let none = |reason: StoreMessage| StoreError::NotABundle { reason: reason.into() };
    if bytes.is_empty() {
        return Err(none(StoreMessage::Empty));
    }
    if !bytes.starts_with(MAGIC) {
        return Err(none(StoreMessage::NoDatabase));
    }
    let cut = |whole: u64| StoreError::DamagedBundle {
        reason: StoreMessage::CutShort { there: bytes.len(), whole: i64::try_from(whole).unwrap_or(i64::MAX) }.into(),
    };
    let number =
        |place: usize| bytes.get(place..place + 4).and_then(|four| four.try_into().ok()).map(u32::from_be_bytes);
    let pair = bytes.get(16..18).and_then(|two| two.try_into().ok()).map(u16::from_be_bytes);
    let (Some(page), Some(pages), Some(layout), Some(application)) = (pair, number(28), number(60), number(68)) else {
        return Err(cut(100));
    };
    // A page of 65536 bytes does not fit the field and is written as 1.
    let page_bytes = if page == 1 { 65_536 } else { u32::from(page) };
    let header = Header { page_bytes, pages, layout, application };
    if header.application != APPLICATION {
        return Err(none(StoreMessage::OtherProgram));
    }
    if header.layout > NEWEST {
        return Err(StoreError::NewerSchema { found: header.layout, known: NEWEST });
    }
    let whole = u64::from(header.page_bytes) * u64::from(header.pages);
    if (bytes.len() as u64) < whole.max(512) {
        return Err(cut(whole.max(512)));
    }
    Ok(header)
}

/// Opens the bytes as a database in memory.
fn open(bytes: &[u8]) -> Result<Connection, StoreError> {
    let mut copy = bytes.to_vec();
    // A copy of a database in use says that it has a write-ahead log, which a database in memory cannot have.
    if let Some(versions) = copy.get_mut(18..20) {
        versions.copy_from_slice(&[1, 1]);
    }
    let mut connection = Connection::open_in_memory()?;
    // Views and triggers of a stranger's file may not call what could do harm.
    connection.pragma_update(None, "trusted_schema", false)?;
    connection.deserialize_read_exact(MAIN_DB, copy.as_slice(), copy.len(), false)?;
    Ok(connection)
}

fn find_whole(connection: &Connection) -> Result<(), StoreError> {
    let damaged = |reason| StoreError::DamagedBundle { reason };
    let found: String = connection.query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))?;
    if found != "ok" {
        return Err(damaged(Message::as_entered(found)));
    }
    for table in ["change", "attachment"] {
        let there: bool = connection.query_row(
            "SELECT count(*) > 0 FROM sqlite_schema WHERE type = 'table' AND name = ?1",
            [table],
            |row| row.get(0),
        )?;
        if !there {
            return Err(damaged(StoreMessage::NoTable { table: table.to_owned() }.into()));
        }
    }
    Ok(())
}

fn attachments(connection: &Connection) -> Result<Vec<Attachment>, StoreError> {
    let mut statement = connection.prepare("SELECT hash, media, bytes FROM attachment ORDER BY hash")?;
    let found = statement
        .query_map([], |row| Ok(Attachment { hash: row.get(0)?, media: row.get(1)?, bytes: row.get(2)? }))?
        .collect::<Result<Vec<_>, _>>()?;
    for attachment in &found {
        if content_hash(&attachment.bytes) != attachment.hash {
            return Err(StoreError::DamagedBundle {
                reason: StoreMessage::OtherAttachment { hash: attachment.hash.clone() }.into(),
            });
        }
    }
    Ok(found)
}

/// The changes stand in the order of their bikes.
fn projects(changes: &[Change]) -> Vec<String> {
    let mut projects: Vec<String> = changes.iter().map(|change| change.key.project.clone()).collect();
    projects.dedup();
    projects
}

/// What goes wrong with a bundle is the bundle's fault, except for what this device lacks.
fn as_bundle(error: StoreError) -> StoreError {
    match error {
        StoreError::Damaged { reason } | StoreError::Sqlite(reason) => StoreError::DamagedBundle { reason },
        other => other,
    }
}
