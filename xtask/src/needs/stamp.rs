//! Remembers what was installed from a lock file, so that the same lock is not installed twice.

use std::path::Path;

use crate::command::{Outcome, at_path};
use crate::paths;

/// Runs `install` unless `folder` was already filled from exactly this `lock`.
pub fn once(name: &str, lock: &Path, folder: &Path, install: impl FnOnce() -> Outcome) -> Outcome {
    let wanted = at_path(lock, std::fs::read(lock))?;
    let stamp = paths::made("stamps").join(name);
    let done = std::fs::read(&stamp).is_ok_and(|before| before == wanted);
    if done && folder.is_dir() {
        return Ok(());
    }
    install()?;
    at_path(&stamp, std::fs::create_dir_all(paths::made("stamps")))?;
    at_path(&stamp, std::fs::write(&stamp, wanted))
}
