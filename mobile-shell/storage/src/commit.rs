//! Writing: everything that belongs together is one transaction of SQLite, so that all of it is there afterwards or none.

use layshaft_core::changes::Change;
use rusqlite::{Connection, Transaction, TransactionBehavior, params};

use crate::bundle::{Attachment, Bundle, Clash, Received};
use crate::rows::{self, Added};
use crate::{Store, StoreError};

/// Names of settings of this device with their new values.
pub type Settings = [(String, String)];

impl Store {
    /// Keeps what one command says: its changes, its attachments and the settings that it moves, all of them or none. What
    /// is there already is passed over; returns how many changes were new.
    pub fn commit(
        &mut self,
        changes: &[Change],
        attachments: &[Attachment],
        settings: &Settings,
    ) -> Result<u32, StoreError> {
        let transaction = self.transaction()?;
        let mut new = 0;
        for change in changes {
            match rows::add(&transaction, change)? {
                Added::New => new += 1,
                Added::Known => (),
                // Dropped without a commit, the transaction takes back what it wrote.
                Added::Clash(_) => return Err(StoreError::Clash { stamp: change.stamp.to_string() }),
            }
        }
        add_attachments(&transaction, attachments)?;
        put_settings(&transaction, settings)?;
        transaction.commit()?;
        Ok(new)
    }

    /// Adds changes alone; see [`Store::commit`].
    pub fn append(&mut self, changes: &[Change]) -> Result<u32, StoreError> {
        self.commit(changes, &[], &[])
    }

    /// Takes a bundle in, and moves settings with it: all of it or, after an error, nothing.
    pub fn receive(&mut self, bundle: &Bundle, settings: &Settings) -> Result<Received, StoreError> {
        let transaction = self.transaction()?;
        let mut received = Received::default();
        for change in &bundle.changes {
            match rows::add(&transaction, change)? {
                Added::New => received.changes += 1,
                Added::Known => received.known += 1,
                Added::Clash(here) => received.clashes.push(Clash { came: change.clone(), here }),
            }
        }
        received.attachments = add_attachments(&transaction, &bundle.attachments)?;
        put_settings(&transaction, settings)?;
        transaction.commit()?;
        Ok(received)
    }

    /// Keeps one setting of this device.
    pub fn set_setting(&mut self, name: &str, value: &str) -> Result<(), StoreError> {
        self.commit(&[], &[], &[(name.to_owned(), value.to_owned())]).map(|_| ())
    }

    /// A transaction that nobody else can write in between.
    fn transaction(&mut self) -> Result<Transaction<'_>, StoreError> {
        self.may_write()?;
        Ok(self.connection.transaction_with_behavior(TransactionBehavior::Immediate)?)
    }
}

/// Keeps files unless they are there; returns how many were new.
fn add_attachments(connection: &Connection, attachments: &[Attachment]) -> Result<u32, StoreError> {
    let mut new = 0;
    for Attachment { hash, media, bytes } in attachments {
        new += u32::from(add_attachment(connection, hash, media, bytes)?);
    }
    Ok(new)
}

/// Keeps a file unless it is there; says whether it was new.
pub(crate) fn add_attachment(
    connection: &Connection,
    hash: &str,
    media: &str,
    bytes: &[u8],
) -> Result<bool, StoreError> {
    let new = connection
        .prepare_cached("INSERT INTO attachment (hash, media, bytes) VALUES (?1, ?2, ?3)")?
        .execute(params![hash, media, bytes])?;
    Ok(new > 0)
}

fn put_settings(connection: &Connection, settings: &Settings) -> Result<(), StoreError> {
    for (name, value) in settings {
        connection
            .prepare_cached("INSERT OR REPLACE INTO setting (name, value) VALUES (?1, ?2)")?
            .execute([name, value])?;
    }
    Ok(())
}

#[cfg(test)]
pub(crate) mod tests {
    use layshaft_core::changes::{Device, Key, Stamp};

    use super::*;

    /// A fact of the bike `tern`, told by its value and its moment.
    pub(crate) fn change(value: i32, millis: u64) -> Change {
        Change {
            key: Key { project: "tern".into(), kind: "drive".into(), record: "fitted/drive".into() },
            field: "frontTeeth".into(),
            value: value.into(),
            stamp: Stamp { millis, count: 0, device: Device(1) },
            seen: None,
            batch: "command".into(),
        }
    }

    #[test]
    fn adding_the_same_change_again_adds_nothing() {
        let mut store = Store::in_memory().unwrap();
        assert_eq!(store.append(&[change(15, 1), change(16, 2)]).unwrap(), 2);
        assert_eq!(store.append(&[change(16, 2), change(17, 3), change(17, 3)]).unwrap(), 1);
        assert_eq!(store.changes().unwrap(), [change(15, 1), change(16, 2), change(17, 3)]);
    }

    #[test]
    fn another_fact_under_the_same_stamp_is_refused_and_the_whole_command_with_it() {
        let mut store = Store::in_memory().unwrap();
        store.append(&[change(15, 1)]).unwrap();
        let photo = Attachment::of("a/b", b"c".to_vec());
        let setting = [("open".to_owned(), "tern".to_owned())];
        let refused =
            store.commit(&[change(16, 2), change(99, 1)], std::slice::from_ref(&photo), &setting).unwrap_err();
        assert_eq!(refused, StoreError::Clash { stamp: change(15, 1).stamp.to_string() });
        assert_eq!(store.changes().unwrap(), [change(15, 1)]);
        assert_eq!((store.attachment(&photo.hash).unwrap(), store.setting("open").unwrap()), (None, None));
    }

    #[test]
    fn a_full_device_is_named_and_nothing_is_stored() {
        let mut store = Store::in_memory().unwrap();
        let pages: u32 = store.connection.pragma_query_value(None, "page_count", |row| row.get(0)).unwrap();
        store.connection.pragma_update_and_check(None, "max_page_count", pages, |_| Ok(())).unwrap();
        // Each part of a command in turn is what there is no room for; the parts before it had room.
        let many: Vec<_> = (0..1000).map(|at| change(1, at)).collect();
        assert_eq!(store.append(&many).unwrap_err(), StoreError::Full);
        let photo = Attachment::of("a/b", vec![1; 100_000]);
        assert_eq!(store.commit(&[change(1, 1)], &[photo], &[]).unwrap_err(), StoreError::Full);
        let setting = [("stood".to_owned(), "x".repeat(100_000))];
        let small = Attachment::of("a/b", vec![1; 10]);
        assert_eq!(
            store.commit(&[change(1, 1)], std::slice::from_ref(&small), &setting).unwrap_err(),
            StoreError::Full
        );
        assert_eq!(store.changes().unwrap(), []);
        assert_eq!(store.attachment(&small.hash).unwrap(), None);
        assert_eq!(store.commit(&[change(1, 1)], &[small], &[]), Ok(1), "what fits goes in");
    }
}
