//! What the tests share: invented changes, and folders of their own.

use std::fs;
use std::path::PathBuf;

use layshaft_core::changes::{Change, Device, Key, Stamp};
use layshaft_core::record::KINDS;
use layshaft_storage::{Attachment, Store, StoreError};
use serde_json::Value;

/// A change of the first device.
pub fn change(project: &str, kind: &str, record: &str, field: &str, value: impl Into<Value>, millis: u64) -> Change {
    Change {
        key: Key { project: project.into(), kind: kind.into(), record: record.into() },
        field: field.into(),
        value: value.into(),
        stamp: Stamp { millis, count: 0, device: Device(1) },
        seen: None,
        batch: format!("command-{millis}"),
    }
}

/// The same change as another device would have made it.
pub fn on(device: u64, mut change: Change) -> Change {
    change.stamp.device = Device(device);
    change
}

/// Two bikes with a few facts.
pub fn two_bikes() -> Vec<Change> {
    vec![
        change("other-bike", "part", "p1", "title", "Secret saddle of the other bike", 5),
        change("tern", "job", "j1", "handsOnMinutes", 42.5, 2),
        change("tern", "job", "j1", "title", "Reline the fuel tank", 1),
        change("tern", "reading", "r1", "value", 0.1 + 0.2, 3),
    ]
}

/// A store in memory with these changes.
pub fn store(changes: &[Change]) -> Store {
    let mut store = Store::in_memory().unwrap();
    store.show(KINDS).unwrap();
    assert_eq!(store.append(changes).unwrap() as usize, changes.len());
    store
}

/// A folder that is empty at the start of the test that names it and goes with it.
pub struct Folder(PathBuf);

impl Folder {
    pub fn new(name: &str) -> Folder {
        let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
        let _ = fs::remove_dir_all(&path);
        fs::create_dir_all(&path).unwrap();
        Folder(path)
    }

    pub fn at(&self, file: &str) -> PathBuf {
        self.0.join(file)
    }

    /// Names of the files in it, in order.
    pub fn files(&self) -> Vec<String> {
        let mut names: Vec<String> =
            fs::read_dir(&self.0).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

/// Keeps a file; returns the hash by which records name it.
pub fn attach(store: &mut Store, media: &str, bytes: &[u8]) -> Result<String, StoreError> {
    let file = Attachment::of(media, bytes.to_vec());
    store.commit(&[], std::slice::from_ref(&file), &[])?;
    Ok(file.hash)
}
