//! On a desktop a thread waits for the next notice as long as the program is open.

use std::collections::VecDeque;
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::time::Duration;

use tauri::AppHandle;
use tauri_plugin_notification::NotificationExt;

use super::{Notice, now_ms};

/// A machine that slept, or whose clock was set, is caught up with within this time.
const LONGEST_WAIT: Duration = Duration::from_secs(60);

/// Says each notice when its moment has come.
pub struct Announcer(Sender<Vec<Notice>>);

impl Announcer {
    /// Starts waiting, with nothing to wait for yet.
    pub fn start(app: AppHandle) -> Self {
        let (sender, notices) = channel();
        std::thread::spawn(move || wait(&app, &notices));
        Self(sender)
    }

    /// Puts these notices in the place of all earlier ones.
    pub fn expect(&self, notices: Vec<Notice>) {
        // The thread ends with the program only; a notice that is lost then has nobody to read it.
        let _ = self.0.send(notices);
    }
}

fn wait(app: &AppHandle, fresh: &Receiver<Vec<Notice>>) {
    let mut waiting: VecDeque<Notice> = VecDeque::new();
    let mut said_to_ms = i64::MIN;
    loop {
        match fresh.recv_timeout(until_next(&waiting)) {
            // What was said while the new list was made is not said again.
            Ok(notices) => waiting = notices.into_iter().filter(|notice| notice.due_ms > said_to_ms).collect(),
            Err(RecvTimeoutError::Timeout) => {}
            Err(RecvTimeoutError::Disconnected) => return,
        }
        while let Some(notice) = waiting.pop_front_if(|notice| notice.due_ms <= now_ms()) {
            said_to_ms = notice.due_ms;
            let shown = app.notification().builder().title(notice.title).body(notice.body).show();
            if let Err(error) = shown {
                eprintln!("A notice could not be shown: {error}");
            }
        }
    }
}

fn until_next(waiting: &VecDeque<Notice>) -> Duration {
    let Some(next) = waiting.front() else { return LONGEST_WAIT };
    let left_ms = u64::try_from(next.due_ms.saturating_sub(now_ms())).unwrap_or(0);
    Duration::from_millis(left_ms).min(LONGEST_WAIT)
}
