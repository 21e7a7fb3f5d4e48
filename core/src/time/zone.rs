//! Moments and civil time: an instant is UTC, the zone says what the clock on the wall shows.
//!
//! The calendar is the proleptic Gregorian one (crate `chrono`); the rules for days on which the clock is put forward
//! or back are our own and stand at [`Zone::instant_of`].

use layshaft_wire::wire;

use super::{Day, LocalTime};

/// Milliseconds in a minute.
pub(crate) const MINUTE_MS: i64 = 60_000;
/// Milliseconds in an hour.
pub(crate) const HOUR_MS: i64 = 60 * MINUTE_MS;
/// Milliseconds in a day of 24 hours.
pub(crate) const DAY_MS: i64 = 24 * HOUR_MS;
/// Instants further from 1970 than this are drawn in to it, so that no sum of times can run over.
const FAR_MS: i64 = 8_640_000_000_000_000;

/// From this instant on, the local clock is this far from UTC.
#[wire]
pub struct ZoneShift {
    /// Milliseconds since 1970 (UTC).
    pub from_ms: i64,
    /// Local time minus UTC, minutes.
    pub offset_minutes: i32,
}

/// The local clock, as the host knows it for the years at hand. Empty is UTC.
#[wire(lenient)]
pub struct Zone {
    /// Name as in the IANA database.
    pub name: String,
    /// Offsets, earliest first; the first one also holds before its instant.
    pub shifts: Vec<ZoneShift>,
}

/// When and where something is asked. The core reads no clock; the host gives it.
#[wire(lenient)]
pub struct Moment {
    /// Now, milliseconds since 1970 (UTC).
    pub now_ms: i64,
    /// The local clock.
    pub zone: Zone,
}

impl Zone {
    /// How far the local clock is from UTC at an instant, minutes.
    ///
    /// ```
    /// use layshaft_core::time::{Zone, ZoneShift};
    /// let shifts = vec![
    ///     ZoneShift { from_ms: 0, offset_minutes: 60 },
    ///     ZoneShift { from_ms: 1_000, offset_minutes: 120 },
    /// ];
    /// let zone = Zone { name: "Example".to_owned(), shifts };
    /// assert_eq!([-5, 999, 1_000].map(|at_ms| zone.offset_minutes_at(at_ms)), [60, 60, 120]);
    /// assert_eq!(Zone::default().offset_minutes_at(0), 0);
    /// ```
    pub fn offset_minutes_at(&self, at_ms: i64) -> i32 {
        let begun = self.shifts.iter().rev().find(|shift| shift.from_ms <= at_ms);
        begun.or(self.shifts.first()).map_or(0, |shift| shift.offset_minutes)
    }

    /// The local day at an instant, `YYYY-MM-DD`.
    ///
    /// ```
    /// use layshaft_core::time::Zone;
    /// assert_eq!(Zone::default().day_text_at(1_775_260_800_000), "2026-04-04");
    /// ```
    pub fn day_text_at(&self, at_ms: i64) -> String {
        self.day_at(at_ms).text()
    }

    /// The local day at an instant.
    pub(crate) fn day_at(&self, at_ms: i64) -> Day {
        Day(self.wall_ms(at_ms).div_euclid(DAY_MS))
    }

    /// Minutes after local midnight at an instant, as the clock on the wall shows them.
    pub(crate) fn minute_at(&self, at_ms: i64) -> i64 {
        self.wall_ms(at_ms).rem_euclid(DAY_MS) / MINUTE_MS
    }

    /// What the clock on the wall shows at an instant.
    pub(crate) fn local_time(&self, at_ms: i64) -> LocalTime {
        LocalTime { day: self.day_at(at_ms), minute: u32::try_from(self.minute_at(at_ms)).unwrap_or_default() }
    }

    /// The instant at which the clock on the wall shows a day and a minute after midnight.
    ///
    /// Where the clock is put back and shows it twice, the first time counts. Where the clock is put forward past it,
    /// the instant of the change counts: a stretch of bench time loses the hour that did not exist, and only that.
    pub(crate) fn instant_of(&self, day: Day, minute: u32) -> i64 {
        let wall = day.0.saturating_mul(DAY_MS).saturating_add(i64::from(minute) * MINUTE_MS);
        let mut begins = i64::MIN;
        for (place, shift) in self.shifts.iter().enumerate() {
            let ends = self.shifts.get(place + 1).map_or(i64::MAX, |next| next.from_ms);
            let instant = wall.saturating_sub(i64::from(shift.offset_minutes) * MINUTE_MS);
            if instant < ends {
                return instant.max(begins);
            }
            begins = ends;
        }
        wall
    }

    /// The instant at which the clock on the wall shows a day (`YYYY-MM-DD`) and a minute after midnight; none when the
    /// day cannot be read.
    pub fn instant_on(&self, day: &str, minute: u32) -> Option<i64> {
        Day::read(day).map(|day| self.instant_of(day, minute))
    }

    /// What the clock on the wall shows, as milliseconds since 1970 of that clock.
    fn wall_ms(&self, at_ms: i64) -> i64 {
        at_ms.clamp(-FAR_MS, FAR_MS) + i64::from(self.offset_minutes_at(at_ms)) * MINUTE_MS
    }
}

impl Moment {
    /// Now, drawn in to the years that a calendar can write.
    pub(crate) fn at_ms(&self) -> i64 {
        self.now_ms.clamp(-FAR_MS, FAR_MS)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::message::FieldMessage;
    use crate::time::{Day, check_day};

    /// Central European time of 2026: forward on 29 March 01:00 UTC, back on 25 October 01:00 UTC.
    fn central_europe() -> Zone {
        let shift = |from_ms, offset_minutes| ZoneShift { from_ms, offset_minutes };
        let shifts = vec![shift(0, 60), shift(1_774_746_000_000, 120), shift(1_792_890_000_000, 60)];
        Zone { name: "Europe/Berlin".to_owned(), shifts }
    }

    fn day(text: &str) -> Day {
        Day::read(text).unwrap()
    }

    #[test]
    fn days_read_back_as_they_were_written_and_know_their_weekday() {
        for (text, weekday) in [("1970-01-01", 4), ("2026-03-29", 7), ("2026-04-04", 6), ("2100-12-31", 5)] {
            assert_eq!((day(text).text(), day(text).weekday()), (text.to_owned(), weekday));
        }
    }

    #[test]
    fn days_that_no_calendar_has_are_refused_and_the_refusal_shows_the_form() {
        for bad in [
            "2026-02-29",
            "2026-13-01",
            "2026-00-10",
            "2026-04-31",
            "2026-4-2",
            "+026-04-02",
            "",
            "soon",
            "1969-12-31",
            "2101-01-01",
        ] {
            let text = check_day("expected", FieldMessage::ExpectedDay, bad).unwrap_err().english();
            assert!(text.starts_with("Expected day: ") && text.contains("2026-04-02"), "{text}");
        }
    }

    #[test]
    fn wall_clock_and_instant_are_inverse_on_a_plain_day() {
        let zone = central_europe();
        let instant = zone.instant_of(day("2026-07-01"), 19 * 60);
        assert_eq!(zone.day_at(instant), day("2026-07-01"));
        assert_eq!(zone.minute_at(instant), 19 * 60);
        assert_eq!(zone.minute_at(zone.instant_of(day("2026-01-10"), 5)), 5);
    }

    #[test]
    fn the_day_the_clock_goes_forward_has_23_hours_and_the_one_it_goes_back_has_25() {
        let zone = central_europe();
        let length = |text: &str| zone.instant_of(day(text).plus(1), 0) - zone.instant_of(day(text), 0);
        assert_eq!(length("2026-03-28"), 24 * HOUR_MS);
        assert_eq!(length("2026-03-29"), 23 * HOUR_MS);
        assert_eq!(length("2026-10-25"), 25 * HOUR_MS);
    }

    #[test]
    fn a_minute_that_the_clock_skips_is_the_instant_of_the_change() {
        let zone = central_europe();
        let change = 1_774_746_000_000;
        let at = |minute| zone.instant_of(day("2026-03-29"), minute);
        assert_eq!(at(2 * 60 - 1), change - MINUTE_MS);
        assert_eq!([at(2 * 60), at(2 * 60 + 30), at(3 * 60)], [change; 3]);
        assert_eq!(at(3 * 60 + 1), change + MINUTE_MS);
    }

    #[test]
    fn a_minute_that_the_clock_shows_twice_is_the_first_of_them() {
        let zone = central_europe();
        let back = 1_792_890_000_000;
        let at = |minute| zone.instant_of(day("2026-10-25"), minute);
        assert_eq!(at(2 * 60), back - HOUR_MS);
        assert_eq!(at(2 * 60 + 59), back - MINUTE_MS);
        assert_eq!(at(3 * 60), back + HOUR_MS);
    }

    #[test]
    fn the_ends_of_time_do_not_run_over() {
        for now_ms in [i64::MIN, i64::MAX] {
            let moment = Moment { now_ms, zone: central_europe() };
            let today = moment.zone.day_at(moment.at_ms());
            assert!(today.text().len() >= 4);
            assert!((1..=7).contains(&today.weekday()));
        }
    }
}
