//! The database in the browser: a pool of files of the origin private file system, held by one dedicated worker.
//!
//! The pool keeps no write-ahead log, so a rollback journal is used; keeping the journal file and the lock makes a commit
//! about four times as fast as making them anew each time.

use std::cell::RefCell;

use layshaft_core::message::Message;
use rusqlite::Connection;
use sqlite_wasm_rs::WasmOsCallback;
use sqlite_wasm_rs::vfs::VfsFilesManager;
use sqlite_wasm_rs::vfs::transfer::DbTransfer;
use sqlite_wasm_vfs::sahpool::{OpfsSAHError, OpfsSAHPoolCfgBuilder, OpfsSAHPoolUtil, install};

use crate::message::StoreMessage;
use crate::{AsideFile, Opened, Store, StoreError};

/// Files of a new pool: a database and its journal, and as many again, so that a damaged one can be set aside.
const FILES: usize = 4;

/// Free files that are always there. Each file costs a slow phone time at every start, so there are no more than needed.
const SPARE: usize = 2;

thread_local! {
    static POOL: RefCell<Option<OpfsSAHPoolUtil>> = const { RefCell::new(None) };
}

/// Takes hold of the pool in a folder of the private file system. Only one worker of the origin can have it.
pub async fn open_pool(directory: &str) -> Result<(), StoreError> {
    let wanted = OpfsSAHPoolCfgBuilder::new().directory(directory).initial_capacity(FILES).build();
    let pool = install::<WasmOsCallback>(&wanted, true).await.map_err(from_pool)?;
    pool.ensure_capacity(pool.len().map_err(from_pool)? + SPARE).await.map_err(from_pool)?;
    POOL.set(Some(pool));
    Ok(())
}

/// A database that was set aside, so that the person can take it out of the browser.
pub fn set_aside_files(name: &str) -> Result<Vec<AsideFile>, StoreError> {
    let bytes = with_pool(|pool| pool.export_db(name).map_err(from_pool))?;
    Ok(vec![AsideFile { name: name.to_owned(), bytes }])
}

impl Store {
    /// Opens a database of the pool, or makes it; [`open_pool`] comes first. A damaged one is renamed, never deleted, and
    /// a fresh one is made.
    pub fn open_named(name: &str) -> Result<Opened, StoreError> {
        match open_whole(name) {
            Err(StoreError::Damaged { .. }) => {
                let aside = set_aside(name)?;
                Ok(Opened { store: open_whole(name)?, set_aside: Some(aside) })
            }
            opened => Ok(Opened { store: opened?, set_aside: None }),
        }
    }
}

fn open_whole(name: &str) -> Result<Store, StoreError> {
    with_pool(|_| Ok(()))?;
    let connection = Connection::open(name)?;
    Store::on(connection, |connection| {
        connection.pragma_update(None, "page_size", 4096)?;
        connection.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
        connection.pragma_update(None, "journal_mode", "PERSIST")?;
        connection.pragma_update(None, "synchronous", "FULL")?;
        Ok(())
    })
}

/// The pool cannot rename: the bytes are copied under the new name, flushed there, and only then is the old name freed.
fn set_aside(name: &str) -> Result<String, StoreError> {
    with_pool(|pool| {
        let names = pool.names().map_err(from_pool)?;
        let aside = (1_u32..)
            .map(|number| format!("{name}.damaged-{number}"))
            .find(|free| !names.contains(free))
            .unwrap_or_else(|| format!("{name}.damaged"));
        // SQLite has used the journal up by now, or could not.
        pool.remove(&format!("{name}-journal")).map_err(from_pool)?;
        let bytes = pool.export_db(name).map_err(from_pool)?;
        pool.import_db_unchecked(&aside, &bytes).map_err(from_pool)?;
        pool.remove(name).map_err(from_pool)?;
        Ok(aside)
    })
}

fn with_pool<T>(use_it: impl FnOnce(&OpfsSAHPoolUtil) -> Result<T, StoreError>) -> Result<T, StoreError> {
    POOL.with_borrow(|pool| match pool {
        Some(pool) => use_it(pool),
        None => Err(StoreError::Sqlite(StoreMessage::NoPool.into())),
    })
}

fn from_pool(error: OpfsSAHError) -> StoreError {
    let text = error.to_string();
    if text.contains("NoModificationAllowedError") {
        return StoreError::Busy;
    }
    if text.contains("QuotaExceededError") {
        return StoreError::Full;
    }
    StoreError::Sqlite(Message::as_entered(text))
}
