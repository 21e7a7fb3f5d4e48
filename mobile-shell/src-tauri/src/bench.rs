//! The open bench behind the two commands of the pages.

use std::path::Path;
use std::sync::{Mutex, MutexGuard, PoisonError};

use layshaft_core::error::{Code, Refusal};
use layshaft_door::Bench;
use tauri::State;

use crate::notices::{self, Announcer};

/// Name of the database in the app-data folder.
const DATABASE: &str = "layshaft.sqlite";

/// The open bench, and who says when a cure has come to its end.
pub struct Desk {
    /// The bench, or the refusal that says why it could not be opened: the pages then show that.
    bench: Mutex<Result<Bench, String>>,
    announcer: Announcer,
}

impl Desk {
    /// Opens the database in `folder`, which is made if it is not there.
    pub fn open(folder: &Path, announcer: Announcer) -> Self {
        let made = std::fs::create_dir_all(folder)
            .map_err(|error| Refusal::new(Code::Storage, format!("{} cannot be made: {error}", folder.display())));
        let bench = made.and_then(|()| Bench::open_native(&folder.join(DATABASE)));
        let desk = Self {
            bench: Mutex::new(bench.map_err(|refusal| serde_json::to_string(&refusal).unwrap_or_default())),
            announcer,
        };
        if let Ok(bench) = &*desk.bench() {
            desk.announce(bench);
        }
        desk
    }

    fn announce(&self, bench: &Bench) {
        self.announcer.expect(notices::ahead(bench, notices::now_ms()));
    }

    /// A panic in an earlier call leaves the bench as the last finished transaction left it, so it stays usable.
    fn bench(&self) -> MutexGuard<'_, Result<Bench, String>> {
        self.bench.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Does what the mechanic did: JSON of a call in, JSON of its outcome out, or of the refusal.
#[tauri::command(async)]
pub fn act(desk: State<'_, Desk>, envelope: String) -> Result<String, String> {
    match &mut *desk.bench() {
        Ok(bench) => {
            let outcome = bench.act_json(&envelope)?;
            desk.announce(bench);
            Ok(outcome)
        }
        Err(refusal) => Err(refusal.clone()),
    }
}

/// Answers a question: JSON of a call in, JSON of its answer out, or of the refusal.
#[tauri::command(async)]
pub fn ask(desk: State<'_, Desk>, envelope: String) -> Result<String, String> {
    match &*desk.bench() {
        Ok(bench) => bench.ask_json(&envelope),
        Err(refusal) => Err(refusal.clone()),
    }
}
