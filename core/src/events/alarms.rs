//! A calendar file with alarms for what comes about by itself, to be carried to any calendar.
//!
//! Format: iCalendar, RFC 5545 (from memory; `tests/outside/alarms.py` reads it with an independent parser). Times are
//! UTC. The same bike at the same moment gives the same text.

use chrono::{DateTime, Datelike, Timelike};
use layshaft_wire::wire;

use super::due::{Due, DueKind, dues};
use crate::plan::PlanRow;
use crate::record::Bike;
use crate::time::Moment;

/// The alarms, as a list and as a file.
#[wire]
pub struct AlarmsAnswer {
    /// A name for the file.
    pub file_name: String,
    /// The file: iCalendar text.
    pub text: String,
    /// What it holds, earliest first.
    pub alarms: Vec<Due>,
}

/// Longest line of the file, octets without the line break (RFC 5545, 3.1).
const LINE_OCTETS: usize = 75;

/// The alarms for everything that is still to come by the rows of a plan. Drying to the touch is no reason to ring.
pub fn alarms_answer(bike: &Bike, moment: &Moment, rows: &[PlanRow]) -> AlarmsAnswer {
    let ahead = |due: &Due| due.at_ms > moment.now_ms && due.due != DueKind::TouchDry;
    let alarms: Vec<Due> = dues(bike, rows, moment).into_iter().filter(ahead).collect();
    AlarmsAnswer {
        file_name: "layshaft-alarms.ics".to_owned(),
        text: calendar(&bike.id, &alarms, moment.now_ms),
        alarms,
    }
}

/// The file for a list of alarms of one bike, stamped with a moment (milliseconds since 1970, UTC).
///
/// Source: RFC 5545: lines end with CR LF and are folded at 75 octets, texts are escaped, an alarm of the kind DISPLAY
/// carries a trigger and a description. Range: moments from the year 1970 to 9999; others are left out.
pub fn calendar(bike: &str, alarms: &[Due], stamp_ms: i64) -> String {
    let mut file = String::new();
    let mut line = |text: String| file.push_str(&folded(&text));
    line("BEGIN:VCALENDAR".to_owned());
    line("VERSION:2.0".to_owned());
    line("PRODID:-//Layshaft//Layshaft//EN".to_owned());
    line("CALSCALE:GREGORIAN".to_owned());
    let stamp = utc(stamp_ms);
    for alarm in alarms {
        let (Some(at), Some(stamp)) = (utc(alarm.at_ms), stamp.as_ref()) else { continue };
        let summary = escaped(&format!("{}: {}", alarm.title, short(alarm.due)));
        line("BEGIN:VEVENT".to_owned());
        let (kind, record, code) = (&alarm.record_kind, &alarm.record, code(alarm.due));
        line(escaped(&format!("UID:{kind}-{record}-{code}@{bike}.layshaft.invalid")));
        line(format!("DTSTAMP:{stamp}"));
        line(format!("DTSTART:{at}"));
        line(format!("SUMMARY:{summary}"));
        line(format!("DESCRIPTION:{}", escaped(&alarm.text.to_string())));
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

/// What comes about, as it stands in the identifier of an alarm. A calendar that took an alarm in knows it again by this, so
/// none may ever change.
fn code(due: DueKind) -> &'static str {
    match due {
        DueKind::TouchDry => "touchdry",
        DueKind::RecoatOpen => "recoatopen",
        DueKind::RecoatShut => "recoatshut",
        DueKind::Handle => "handle",
        DueKind::Cured => "cured",
        DueKind::WaitOver => "waitover",
        DueKind::PartExpected => "partexpected",
    }
}

/// What comes about, in two or three words.
fn short(due: DueKind) -> &'static str {
    match due {
        DueKind::TouchDry => "touch dry",
        DueKind::RecoatOpen => "may be recoated",
        DueKind::RecoatShut => "recoat window closes",
        DueKind::Handle => "may be handled",
        DueKind::Cured => "fully cured",
        DueKind::WaitOver => "wait is over",
        DueKind::PartExpected => "expected today",
    }
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

    fn due(at_ms: i64, due: DueKind, title: &str, text: &str) -> Due {
        let (title, text) = (title.to_owned(), text.to_owned());
        Due { at_ms, due, title, text: text.into(), record_kind: "coat".to_owned(), record: format!("mark-{at_ms}") }
    }

    fn sample() -> String {
        let alarms = [
            due(
                1_775_296_800_000,
                DueKind::RecoatOpen,
                "Side panel, left; inside",
                "Colour, spray can: may be recoated.",
            ),
            due(
                1_775_302_200_001,
                DueKind::Cured,
                "Fuel tank, outside – the “second” coat, put on at 18 °C and 55 % with a surface 6 K above",
                "First line\nsecond line, with \\ and ; and a long tail that has to be folded more than once because it goes on and on.",
            ),
            due(1_790_000_000_000, DueKind::PartExpected, "Chain kit", "Expected on this day: is it here?"),
        ];
        calendar("orrin", &alarms, 1_775_260_800_000)
    }

    #[test]
    fn the_sample_that_other_readers_check_is_what_is_written() {
        assert_eq!(sample(), SAMPLE);
    }

    #[test]
    fn the_same_bike_at_the_same_moment_gives_the_same_file_with_only_what_is_ahead() {
        use crate::plan::schedule;
        use crate::plan::tests::example::tuesday_noon;
        use crate::ready_made::typical_product;
        use crate::record::Coat;
        let mut bike = Bike { id: "orrin".to_owned(), ..Bike::default() };
        let product = typical_product("tank-liner").unwrap();
        let applied_ms = tuesday_noon().now_ms - 20 * 3_600_000;
        bike.coats.insert("tank".to_owned(), Coat { title: "Tank".to_owned(), product, applied_ms, ..Coat::default() });
        let sheet = alarms_answer(&bike, &tuesday_noon(), &schedule(&bike, &tuesday_noon()).rows);
        assert_eq!(sheet, alarms_answer(&bike, &tuesday_noon(), &schedule(&bike, &tuesday_noon()).rows));
        let kinds: Vec<DueKind> = sheet.alarms.iter().map(|alarm| alarm.due).collect();
        assert_eq!(kinds, [DueKind::Handle, DueKind::Cured]);
        assert_eq!(sheet.text.matches("BEGIN:VALARM").count(), 2);
        let empty = alarms_answer(&Bike::default(), &tuesday_noon(), &schedule(&Bike::default(), &tuesday_noon()).rows);
        assert!(empty.alarms.is_empty() && empty.text.ends_with("END:VCALENDAR\r\n"));
    }

    #[test]
    fn a_calendar_knows_an_alarm_again_by_the_identifier_that_it_always_had() {
        let identifiers = [
            (DueKind::TouchDry, "UID:coat-mark-1-touchdry@orrin.layshaft.invalid"),
            (DueKind::RecoatOpen, "UID:coat-mark-1-recoatopen@orrin.layshaft.invalid"),
            (DueKind::RecoatShut, "UID:coat-mark-1-recoatshut@orrin.layshaft.invalid"),
            (DueKind::Handle, "UID:coat-mark-1-handle@orrin.layshaft.invalid"),
            (DueKind::Cured, "UID:coat-mark-1-cured@orrin.layshaft.invalid"),
            (DueKind::WaitOver, "UID:coat-mark-1-waitover@orrin.layshaft.invalid"),
            (DueKind::PartExpected, "UID:coat-mark-1-partexpected@orrin.layshaft.invalid"),
        ];
        for (kind, identifier) in identifiers {
            let file = calendar("orrin", &[due(1, kind, "x", "y")], 0);
            assert!(file.lines().any(|line| line == identifier), "{file}");
        }
    }

    #[test]
    fn moments_that_no_calendar_can_write_are_left_out() {
        for at_ms in [i64::MIN, -2_000, i64::MAX] {
            assert!(!calendar("b", &[due(at_ms, DueKind::Cured, "x", "y")], 0).contains("VEVENT"));
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
