//! The open bench behind the commands of the pages, and what is told of it beside the pages.

use std::path::Path;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use layshaft_core::error::{Code, Refusal};
use layshaft_core::time::{Moment, Zone};
use layshaft_door::command::Outcome;
use layshaft_door::{Bench, HostMessage, moment_of};
use layshaft_words::Words;
use tauri::State;

use crate::notices::{self, Notice};

/// Name of the database in the app-data folder.
const DATABASE: &str = "layshaft.sqlite";

/// The bench, or the refusal that says why it could not be opened: the pages then show that.
type Opened = Result<Bench, String>;

/// The open bench, and the thread that sees to its notices.
pub struct Desk {
    bench: Arc<Mutex<Opened>>,
    /// The local clock and the language of the last call; only the pages know them.
    reader: Mutex<Option<(Zone, String)>>,
    changed: Sender<(Moment, &'static Words)>,
}

impl Desk {
    /// Opens the database in `folder`, which is made if it is not there. `expect` is given all notices that are ahead, each
    /// time they may be others.
    pub fn open(folder: &Path, expect: impl Fn(Vec<Notice>) + Send + 'static) -> Self {
        let made = std::fs::create_dir_all(folder).map_err(|error| {
            let (folder, reason) = (folder.display().to_string(), error.to_string());
            Refusal::new(Code::Storage, HostMessage::NoFolder { folder, reason })
        });
        let bench = made.and_then(|()| Bench::open_native(&folder.join(DATABASE)));
        let bench = Arc::new(Mutex::new(bench.map_err(|refusal| serde_json::to_string(&refusal).unwrap_or_default())));
        let (changed, moments) = channel();
        let watched = Arc::clone(&bench);
        std::thread::spawn(move || watch(&watched, &moments, expect));
        Self { bench, reader: Mutex::default(), changed }
    }

    /// Does what the mechanic did: JSON of a call in, JSON of its outcome out, or of the refusal. `language` is the tag of the
    /// one that the pages speak.
    pub fn act(&self, call: &str, language: &str) -> Result<String, String> {
        let outcome = lock(&self.bench).as_mut().map_err(|refusal| refusal.clone())?.act_json(call)?;
        let moved = serde_json::from_str(&outcome).is_ok_and(|outcome: Outcome| notices::stale(&outcome.stale));
        self.heard(call, language, moved);
        Ok(outcome)
    }

    /// Answers a question: JSON of a call in, JSON of its answer out, or of the refusal.
    pub fn ask(&self, call: &str, language: &str) -> Result<String, String> {
        let answer = lock(&self.bench).as_ref().map_err(|refusal| refusal.clone())?.ask_json(call);
        self.heard(call, language, false);
        answer
    }

    /// The notices may be others after a command that says so, with the first call, and when the local clock or the language is
    /// another.
    fn heard(&self, call: &str, language: &str, moved: bool) {
        let Some(moment) = moment_of(call) else { return };
        let now = (moment.zone.clone(), language.to_owned());
        let mut reader = lock(&self.reader);
        if moved || reader.as_ref() != Some(&now) {
            *reader = Some(now);
            let words = Words::in_language(language).unwrap_or(Words::english());
            // The thread ends with the program only; a moment that is lost then has nobody to be told.
            let _ = self.changed.send((moment, words));
        }
    }
}

/// Makes the notices anew after each change, once for all changes that wait. It is done beside the calls, so that none
/// waits for it, and at the moment of the call, so that the plan it rests on is the one that the pages ask for.
fn watch(bench: &Mutex<Opened>, moments: &Receiver<(Moment, &'static Words)>, expect: impl Fn(Vec<Notice>)) {
    while let Ok(first) = moments.recv() {
        let (moment, words) = moments.try_iter().last().unwrap_or(first);
        let notices = lock(bench).as_ref().ok().map(|bench| notices::ahead(bench, &moment, words));
        if let Some(notices) = notices {
            expect(notices);
        }
    }
}

/// A panic in an earlier call leaves the bench as the last finished transaction left it, so it stays usable.
fn lock<T>(held: &Mutex<T>) -> MutexGuard<'_, T> {
    held.lock().unwrap_or_else(PoisonError::into_inner)
}

/// [`Desk::act`] for the pages.
#[tauri::command(async)]
pub fn act(desk: State<'_, Desk>, envelope: String, language: String) -> Result<String, String> {
    desk.act(&envelope, &language)
}

/// [`Desk::ask`] for the pages.
#[tauri::command(async)]
pub fn ask(desk: State<'_, Desk>, envelope: String, language: String) -> Result<String, String> {
    desk.ask(&envelope, &language)
}

/// Takes a language into use for pages and notices, by what the program brings along in it, as JSON. It is chosen before the
/// first call, and holds until the program ends.
#[tauri::command(async)]
pub fn use_language(content: String) -> Result<(), String> {
    let refusal = |refused| serde_json::to_string(&Refusal::from(refused)).unwrap_or_default();
    layshaft_core::content::use_language(&content).map_err(refusal)
}

#[cfg(test)]
#[path = "bench_tests.rs"]
mod tests;
