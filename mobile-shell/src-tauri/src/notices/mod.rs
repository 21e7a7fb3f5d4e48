//! Notices of cures: when a coat may be recoated and when it is cured, said even while another page is open.
//!
//! A desktop has no timer for notices of its own, so the program waits while it is open. A phone puts the program to
//! sleep, so there the system is given every notice beforehand.

#[cfg(desktop)]
mod desktop;
#[cfg(mobile)]
mod mobile;

use std::time::{SystemTime, UNIX_EPOCH};

#[cfg(desktop)]
pub use desktop::Announcer;
use layshaft_core::record::CureState;
use layshaft_core::time::{Moment, Zone};
use layshaft_core::today::TodayAsk;
use layshaft_door::Bench;
#[cfg(mobile)]
pub use mobile::Announcer;

/// Something to say at a moment that is still ahead.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// On what the coat is.
    pub title: String,
    /// What holds from then on.
    pub body: &'static str,
    /// When, milliseconds since 1970 (UTC).
    pub due_ms: i64,
}

/// What the running cures of the open bike will have to say, the next first. Nothing when no bike is open.
pub fn ahead(bench: &Bench, now_ms: i64) -> Vec<Notice> {
    let moment = Moment { now_ms, zone: Zone::default() };
    let Ok(today) = bench.today(&TodayAsk::default(), &moment) else { return Vec::new() };
    let mut notices: Vec<Notice> = Vec::new();
    for cure in &today.cures {
        for milestone in &cure.milestones {
            let body = match milestone.state {
                CureState::RecoatOpen => "May be recoated from now on.",
                CureState::Cured => "Fully cured.",
                _ => continue,
            };
            if let Some(due_ms) = milestone.due_ms.filter(|due_ms| *due_ms > now_ms) {
                notices.push(Notice { title: cure.title.clone(), body, due_ms });
            }
        }
    }
    notices.sort_by_key(|notice| notice.due_ms);
    notices
}

/// Now, by this machine's clock, in milliseconds since 1970 (UTC).
pub fn now_ms() -> i64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_millis()).unwrap_or(i64::MAX)
}
