//! Notices of what comes about by itself, said even while another page is open: coats, waits, parcels. They are the events
//! that the pages list and the alarm file carries.
//!
//! A desktop has no timer for notices of its own, so the program waits while it is open. A phone puts the program to
//! sleep, so there the system is given every notice beforehand.

#[cfg(desktop)]
mod desktop;
#[cfg(mobile)]
mod mobile;

#[cfg(desktop)]
use std::time::{SystemTime, UNIX_EPOCH};

#[cfg(desktop)]
pub use desktop::Announcer;
use layshaft_core::time::Moment;
use layshaft_door::Bench;
use layshaft_door::query::BareAsk;
use layshaft_words::Words;
#[cfg(mobile)]
pub use mobile::Announcer;

/// Something to say at a moment that is still ahead.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// On what: a coat, a job, a part.
    pub title: String,
    /// What holds from then on.
    pub body: String,
    /// When, milliseconds since 1970 (UTC).
    pub due_ms: i64,
}

/// The query whose answer the notices are.
const EVENTS: &str = "alarms";

/// Whether the notices are among the answers that went old.
pub fn stale(queries: &[String]) -> bool {
    queries.iter().any(|query| query == EVENTS)
}

/// What is ahead of the open bike in the words of a language, the next first. Nothing when no bike is open.
pub fn ahead(bench: &Bench, moment: &Moment, words: &Words) -> Vec<Notice> {
    let Ok(sheet) = bench.alarms(&BareAsk {}, moment) else { return Vec::new() };
    let events = sheet.alarms.into_iter();
    events.map(|event| Notice { title: event.title, body: words.say(&event.text), due_ms: event.at_ms }).collect()
}

/// Now, by this machine's clock, in milliseconds since 1970 (UTC).
#[cfg(desktop)]
pub fn now_ms() -> i64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_millis()).unwrap_or(i64::MAX)
}
