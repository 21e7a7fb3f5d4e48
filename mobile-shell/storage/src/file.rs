//! The database as a file of the system: durable, and set aside when it is damaged.

use std::path::{Path, PathBuf};
use std::time::Duration;
use std::{fs, io};

use rusqlite::Connection;

use crate::message::StoreMessage;
use crate::{AsideFile, Opened, Store, StoreError};

/// How long to wait for another program that is just writing to the same file.
const PATIENCE: Duration = Duration::from_secs(5);

impl Store {
    /// Opens the database file, or makes it. A damaged one is renamed, never deleted, and a fresh one is made.
    pub fn open(path: &Path) -> Result<Opened, StoreError> {
        match open_whole(path) {
            Err(StoreError::Damaged { .. }) => {
                let aside = set_aside(path)?;
                Ok(Opened { store: open_whole(path)?, set_aside: Some(aside.display().to_string()) })
            }
            opened => Ok(Opened { store: opened?, set_aside: None }),
        }
    }
}

/// A database that was set aside under this path, with its write-ahead log where there is one: facts may stand only there.
pub fn set_aside_files(aside: &str) -> Result<Vec<AsideFile>, StoreError> {
    let path = Path::new(aside);
    let mut files = Vec::new();
    for ending in ["", "-wal"] {
        let from = with_ending(path, ending);
        if !ending.is_empty() && !from.exists() {
            continue;
        }
        let bytes = fs::read(&from)
            .map_err(|error| failed(&from, &error, |file, reason| StoreMessage::NotRead { file, reason }))?;
        files.push(AsideFile { name: from.file_name().unwrap_or_default().to_string_lossy().into_owned(), bytes });
    }
    Ok(files)
}

fn open_whole(path: &Path) -> Result<Store, StoreError> {
    let connection = Connection::open(path)?;
    connection.busy_timeout(PATIENCE)?;
    Store::on(connection, |connection| {
        // A write-ahead log lets another program read meanwhile; FULL puts each commit on the disk before it returns.
        connection.pragma_update(None, "journal_mode", "WAL")?;
        connection.pragma_update(None, "synchronous", "FULL")?;
        Ok(())
    })
}

/// What the system says about a file.
fn failed(file: &Path, error: &io::Error, say: fn(String, String) -> StoreMessage) -> StoreError {
    StoreError::Sqlite(say(file.display().to_string(), error.to_string()).into())
}

/// Renames the file and its companions. The file itself goes last: as long as it is there, it is found damaged again.
fn set_aside(path: &Path) -> Result<PathBuf, StoreError> {
    let aside = free_name(path);
    for ending in ["-wal", "-shm", ""] {
        let from = with_ending(path, ending);
        if from.exists() {
            fs::rename(&from, with_ending(&aside, ending))
                .map_err(|error| failed(&from, &error, |file, reason| StoreMessage::NotRenamed { file, reason }))?;
        }
    }
    Ok(aside)
}

fn free_name(path: &Path) -> PathBuf {
    let mut number = 1_u32;
    loop {
        let name = with_ending(path, &format!(".damaged-{number}"));
        if !name.exists() && !with_ending(&name, "-wal").exists() {
            return name;
        }
        number += 1;
    }
}

fn with_ending(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(ending);
    PathBuf::from(name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use rusqlite::TransactionBehavior;

    #[test]
    fn commits_are_forced_to_the_disk_and_a_busy_file_is_named() {
        let folder = std::env::temp_dir().join(format!("layshaft-busy-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        let path = folder.join("bench.db");
        let mut here = Store::open(&path).unwrap().store;
        let pragma = |name| {
            here.connection.pragma_query_value(None, name, |row| row.get::<_, rusqlite::types::Value>(0)).unwrap()
        };
        assert_eq!((pragma("journal_mode"), pragma("synchronous")), ("wal".to_owned().into(), 2.into()));

        here.connection.busy_timeout(Duration::ZERO).unwrap();
        let mut there = Store::open(&path).unwrap().store;
        let writing = there.connection.transaction_with_behavior(TransactionBehavior::Immediate).unwrap();
        assert_eq!(here.append(&[]).unwrap_err(), StoreError::Busy);
        assert_eq!(here.set_setting("a", "b").unwrap_err(), StoreError::Busy);
        writing.rollback().unwrap();
        assert_eq!(here.append(&[]), Ok(0));
        drop((here, there));
        fs::remove_dir_all(&folder).unwrap();
    }
}
