//! A phone's system keeps the notices and shows them while the program sleeps.

use std::sync::mpsc::{Sender, channel};

use tauri::AppHandle;
use tauri_plugin_notification::{NotificationExt, PermissionState, Result, Schedule};
use time::OffsetDateTime;

use super::Notice;

/// Hands the notices to the system.
pub struct Announcer(Sender<Vec<Notice>>);

impl Announcer {
    /// Makes the way to the system. It has a thread of its own, because asking for permission waits for the person.
    pub fn start(app: AppHandle) -> Self {
        let (sender, fresh) = channel();
        std::thread::spawn(move || {
            for notices in fresh {
                if let Err(error) = hand_over(&app, notices) {
                    eprintln!("Notices could not be handed to the system: {error}");
                }
            }
        });
        Self(sender)
    }

    /// Puts these notices in the place of all earlier ones.
    pub fn expect(&self, notices: Vec<Notice>) {
        // The thread ends with the program only; the system then still has the notices of before.
        let _ = self.0.send(notices);
    }
}

/// Asks for permission only when there is something to say.
fn hand_over(app: &AppHandle, notices: Vec<Notice>) -> Result<()> {
    let system = app.notification();
    system.cancel_all()?;
    if notices.is_empty() || !may_speak(app)? {
        return Ok(());
    }
    for (id, notice) in (1..).zip(notices) {
        let Ok(date) = OffsetDateTime::from_unix_timestamp(notice.due_ms / 1000) else { continue };
        let schedule = Schedule::At { date, repeating: false, allow_while_idle: true };
        system.builder().id(id).title(notice.title).body(notice.body).schedule(schedule).show()?;
    }
    Ok(())
}

fn may_speak(app: &AppHandle) -> Result<bool> {
    let system = app.notification();
    match system.permission_state()? {
        PermissionState::Granted => Ok(true),
        PermissionState::Denied => Ok(false),
        _ => Ok(system.request_permission()? == PermissionState::Granted),
    }
}
