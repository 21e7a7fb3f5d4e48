//! Civil days: read, written and counted. The calendar is the proleptic Gregorian one (crate `chrono`).

use chrono::{Datelike, NaiveDate};
use layshaft_wire::message;

use crate::error::Refused;
use crate::message::{Argument, ArgumentKind, FieldMessage, IntoArgument};

/// A civil day, counted from 1 January 1970.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Day(pub(crate) i64);

impl Day {
    /// Reads `YYYY-MM-DD`; none when there is no such day between 1970 and 2100.
    pub(crate) fn read(text: &str) -> Option<Day> {
        let written_out = text.len() == 10 && text.bytes().all(|byte| byte.is_ascii_digit() || byte == b'-');
        let date = NaiveDate::parse_from_str(text, "%Y-%m-%d").ok().filter(|_| written_out)?;
        (1970..=2100).contains(&date.year()).then(|| Day(i64::from(date.num_days_from_ce()) - CE_TO_1970))
    }

    /// The day so many days later.
    pub(crate) fn plus(self, days: i64) -> Day {
        Day(self.0.saturating_add(days))
    }

    /// Day of the week, Monday is 1. The first of January 1970 was a Thursday.
    pub(crate) fn weekday(self) -> u32 {
        u32::try_from((self.0 + 3).rem_euclid(7) + 1).unwrap_or(1)
    }

    /// The day as `YYYY-MM-DD`.
    pub(crate) fn text(self) -> String {
        self.date().to_string()
    }

    fn date(self) -> NaiveDate {
        i32::try_from(self.0 + CE_TO_1970).ok().and_then(NaiveDate::from_num_days_from_ce_opt).unwrap_or_default()
    }
}

impl IntoArgument for Day {
    const KIND: ArgumentKind = ArgumentKind::Day;

    fn argument(self) -> Argument {
        Argument::Day { day: self.text() }
    }
}

/// A day and the time of day, as the clock on the wall shows it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LocalTime {
    /// The day.
    pub(crate) day: Day,
    /// Minutes after midnight.
    pub(crate) minute: u32,
}

impl IntoArgument for LocalTime {
    const KIND: ArgumentKind = ArgumentKind::LocalTime;

    fn argument(self) -> Argument {
        Argument::LocalTime { day: self.day.text(), minute: self.minute }
    }
}

/// Days from 1 January of the year 1 to 1 January 1970, both counted.
const CE_TO_1970: i64 = 719_163;

/// Moments at which something on a bike can have been done: from 2000 to 2099, milliseconds since 1970 (UTC).
const WRITTEN_MS: std::ops::Range<i64> = 946_684_800_000..4_102_444_800_000;

/// Why a moment or a day is refused.
#[message("time")]
pub(crate) enum TimeMessage {
    /// No moment of this age.
    NoMoment { ms: String },
    /// No day of the calendar.
    NoDay { text: String },
}

/// Accepts a moment at which something on a bike can have been done, or none.
///
/// ```
/// use layshaft_core::message::FieldMessage;
/// use layshaft_core::time::check_written;
/// assert!(check_written("takenMs", FieldMessage::WhenItWasMeasured, Some(1_775_000_000_000)).is_ok());
/// assert!(check_written("takenMs", FieldMessage::WhenItWasMeasured, None).is_ok());
/// assert!(check_written("takenMs", FieldMessage::WhenItWasMeasured, Some(0)).is_err());
/// ```
pub fn check_written(field: &str, label: FieldMessage, at_ms: Option<i64>) -> Result<(), Refused> {
    match at_ms {
        Some(at_ms) if !WRITTEN_MS.contains(&at_ms) => Err(Refused::Unreadable {
            field: field.to_owned(),
            label: label.into(),
            reason: TimeMessage::NoMoment { ms: at_ms.to_string() }.into(),
        }),
        _ => Ok(()),
    }
}

/// Accepts a day written `YYYY-MM-DD` that the calendar has, from 1970 to 2100.
///
/// ```
/// use layshaft_core::message::FieldMessage;
/// use layshaft_core::time::check_day;
/// assert!(check_day("expected", FieldMessage::ExpectedDay, "2028-02-29").is_ok());
/// assert!(check_day("expected", FieldMessage::ExpectedDay, "2026-02-29").is_err());
/// ```
pub fn check_day(field: &str, label: FieldMessage, day: &str) -> Result<(), Refused> {
    match Day::read(day) {
        Some(_) => Ok(()),
        None => Err(Refused::Unreadable {
            field: field.to_owned(),
            label: label.into(),
            reason: TimeMessage::NoDay { text: day.to_owned() }.into(),
        }),
    }
}
