//! A calendar file of what comes about by itself, to be carried to any calendar.
//!
//! Format: iCalendar, RFC 5545 (from memory; `tests/outside/alarms.py` reads it with an independent parser). Times are
//! UTC. The same entries at the same moment give the same text. Its words come in from whoever put the events into words.

use chrono::{DateTime, Datelike, Timelike};
use layshaft_wire::wire;

use crate::time::Moment;

/// An entry of a calendar, in words.
#[wire]
pub struct CalendarEntry {
    /// What tells it from every other: the id of the event.
    pub id: String,
    /// When, milliseconds since 1970 (UTC).
    pub at_ms: i64,
    /// In a few words.
    pub summary: String,
    /// The sentence behind it.
    pub text: String,
}

/// What stands in the calendar.
#[wire]
pub struct CalendarAsk {
    /// The entries.
    pub entries: Vec<CalendarEntry>,
}

/// A calendar as a file.
#[wire]
pub struct CalendarAnswer {
    /// A name for the file.
    pub file_name: String,
    /// The file: iCalendar text.
    pub text: String,
}

/// The calendar as a file.
pub fn calendar_answer(ask: &CalendarAsk, moment: &Moment) -> CalendarAnswer {
    CalendarAnswer { file_name: "layshaft-alarms.ics".to_owned(), text: calendar(&ask.entries, moment.now_ms) }
}

/// Longest line of the file, octets without the line break (RFC 5545, 3.1).
const LINE_OCTETS: usize = 75;

/// The file for a list of entries, stamped with a moment (milliseconds since 1970, UTC).
///
/// Source: RFC 5545: lines end with CR LF and are folded at 75 octets, texts are escaped, an alarm of the kind DISPLAY
/// carries a trigger and a description. Range: moments from the year 1970 to 9999; others are left out.
fn calendar(entries: &[CalendarEntry], stamp_ms: i64) -> String {
    let mut file = String::new();
    let mut line = |text: String| file.push_str(&folded(&text));
    line("BEGIN:VCALENDAR".to_owned());
    line("VERSION:2.0".to_owned());
    line("PRODID:-//Layshaft//Layshaft//EN".to_owned());
    line("CALSCALE:GREGORIAN".to_owned());
    let stamp = utc(stamp_ms);
    for entry in entries {
        let (Some(at), Some(stamp)) = (utc(entry.at_ms), stamp.as_ref()) else { continue };
        let summary = escaped(&entry.summary);
        line("BEGIN:VEVENT".to_owned());
        line(escaped(&format!("UID:{}", entry.id)));
        line(format!("DTSTAMP:{stamp}"));
        line(format!("DTSTART:{at}"));
        line(format!("SUMMARY:{summary}"));
        line(format!("DESCRIPTION:{}", escaped(&entry.text)));
        line("TRANSP:TRANSPARENT".to_owned());
        line("BEGIN:VALARM".to_owned());
        line("ACTION:DISPLAY".to_owned());
        line("TRIGGER:PT0S".to_owned());
        line(format!("DESCRIPTION:{summary}"));
        line("END:VALARM".to_owned());
        line("END:VEVENT".to_owned());
    }
    line("END:VCALENDAR".to_owned());
    file
}

/// A moment as UTC date and time: `20260404T164000Z`, the second rounded up; none outside the years 1970 to 9999.
fn utc(at_ms: i64) -> Option<String> {
    let at = DateTime::from_timestamp(at_ms.div_euclid(1000) + i64::from(at_ms.rem_euclid(1000) > 0), 0)?;
    let (year, month, day) = (at.year(), at.month(), at.day());
    let (hour, minute, second) = (at.hour(), at.minute(), at.second());
    (1970..=9999).contains(&year).then(|| format!("{year:04}{month:02}{day:02}T{hour:02}{minute:02}{second:02}Z"))
}

/// A text value: backslash, semicolon and comma with a backslash before them, a line break as `\\n`, no other control
/// characters.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.replace("\r\n", "\n").chars() {
        match letter {
            '\\' | ';' | ',' => out.extend(['\\', letter]),
            '\n' => out.push_str("\\n"),
            letter if letter.is_control() => {}
            letter => out.push(letter),
        }
    }
    out
}

/// A line with its end, broken so that no piece is longer than 75 octets and no letter is torn apart.
fn folded(line: &str) -> String {
    let mut out = String::with_capacity(line.len() + 2);
    let mut octets = 0;
    for letter in line.chars() {
        if octets + letter.len_utf8() > LINE_OCTETS {
            out.push_str("\r\n ");
            octets = 1;
        }
        out.push(letter);
        octets += letter.len_utf8();
    }
    out.push_str("\r\n");
    out
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// The file as it stands in `fixtures/calendar`, so that a change of it is seen.
    const SAMPLE: &str = include_str!("../../../fixtures/calendar/sample.ics");

    fn entry(at_ms: i64, code: &str, summary: &str, text: &str) -> CalendarEntry {
        let id = format!("coat-mark-{at_ms}-{code}@orrin.layshaft.invalid");
        CalendarEntry { id, at_ms, summary: summary.to_owned(), text: text.to_owned() }
    }

    fn sample() -> String {
        let entries = [
            entry(
                1_775_296_800_000,
                "recoatopen",
                "Side panel, left; inside: may be recoated",
                "Colour, spray can: may be recoated.",
            ),
            entry(
                1_775_302_200_001,
                "cured",
                "Fuel tank, outside – the “second” coat, put on at 18 °C and 55 % with a surface 6 K above: fully cured",
                "First line\nsecond line, with \\ and ; and a long tail that has to be folded more than once because it goes on and on.",
            ),
            entry(1_790_000_000_000, "partexpected", "Chain kit: expected today", "Expected on this day: is it here?"),
        ];
        calendar(&entries, 1_775_260_800_000)
    }

    #[test]
    fn the_sample_that_other_readers_check_is_what_is_written() {
        assert_eq!(sample(), SAMPLE);
    }

    #[test]
    fn moments_that_no_calendar_can_write_are_left_out() {
        for at_ms in [i64::MIN, -2_000, i64::MAX] {
            assert!(!calendar(&[entry(at_ms, "cured", "x", "y")], 0).contains("VEVENT"));
        }
        assert_eq!(utc(0).as_deref(), Some("19700101T000000Z"));
        assert_eq!(utc(1_775_302_200_001).as_deref(), Some("20260404T113001Z"));
    }

    /// Undoes folding and escaping by the letter of the format.
    fn read_back(line: &str) -> String {
        let unfolded = line.replace("\r\n ", "");
        let mut letters = unfolded.trim_end_matches("\r\n").chars();
        let mut out = String::new();
        while let Some(letter) = letters.next() {
            match (letter, letter == '\\') {
                (_, true) => match letters.next() {
                    Some('n') => out.push('\n'),
                    Some(other) => out.push(other),
                    None => {}
                },
                (letter, _) => out.push(letter),
            }
        }
        out
    }

    proptest! {
        #[test]
        fn any_text_comes_back_and_no_line_is_too_long(text in "[ -~äöüß–°µ\n;,\\\\]{0,300}") {
            let folded = folded(&escaped(&text));
            prop_assert!(folded.split("\r\n").all(|piece| piece.len() <= LINE_OCTETS));
            prop_assert_eq!(read_back(&folded), text);
        }
    }
}
