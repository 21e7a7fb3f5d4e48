//! Days, times of day and lengths of time, as parts for the messages of the catalogue.

/// A day, taken apart: day of the week (Monday is 1), day, month, year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DayParts {
    pub weekday: u32,
    pub day: u32,
    pub month: u32,
    pub year: i64,
}

/// Reads `YYYY-MM-DD`.
pub fn day(text: &str) -> Option<DayParts> {
    let mut parts = text.splitn(3, '-').map(|part| part.parse::<u32>().ok());
    let (year, month, day) = (parts.next()??, parts.next()??, parts.next()??);
    Some(DayParts { weekday: weekday(year, month, day), day, month, year: i64::from(year) })
}

/// Day of the week in the Gregorian calendar, Monday is 1. Zeller's congruence (1887), standing: memory; the test holds it against
/// days that a calendar names.
fn weekday(year: u32, month: u32, day: u32) -> u32 {
    let (year, month) = if month < 3 { (year.saturating_sub(1), month + 12) } else { (year, month) };
    let (century, within) = (year / 100, year % 100);
    let from_saturday = (day + 13 * (month + 1) / 5 + within + within / 4 + century / 4 + 5 * century) % 7;
    (from_saturday + 5) % 7 + 1
}

/// `18:05` from minutes after midnight.
pub fn clock(minute: u32) -> String {
    format!("{:02}:{:02}", minute / 60, minute % 60)
}

/// A length of time: which message says it, and its number with so many decimals at most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TimeForm {
    pub message: &'static str,
    pub number: f64,
    pub decimals: usize,
}

/// Time that passes: 40 min, 1.5 h, 31 h, 5 days.
pub fn passing(minutes: f64) -> TimeForm {
    let hours = minutes / 60.0;
    if minutes.round() < 60.0 {
        TimeForm { message: "duration-minutes", number: minutes.round(), decimals: 0 }
    } else if hours < 72.0 {
        TimeForm { message: "duration-hours", number: hours, decimals: usize::from(hours < 9.95) }
    } else {
        TimeForm { message: "duration-days", number: hours / 24.0, decimals: usize::from(hours < 239.0) }
    }
}

/// Minutes of work, as hours and minutes.
pub fn work(minutes: f64) -> (i64, i64) {
    let whole = minutes.round() as i64;
    (whole / 60, whole % 60)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_knows_its_place_in_the_week() {
        // ISO 8601 gives 2000-01-01 as a Saturday; 29 February 2024 was a Thursday (any calendar).
        for (text, weekday) in [("2000-01-01", 6), ("2024-02-29", 4), ("1970-01-01", 4), ("2100-03-01", 1)] {
            assert_eq!(day(text).map(|day| day.weekday), Some(weekday), "{text}");
        }
        assert_eq!(day("tomorrow"), None);
    }

    #[test]
    fn a_length_takes_the_unit_that_one_would_say() {
        assert_eq!(passing(59.4).message, "duration-minutes");
        assert_eq!(passing(59.6).message, "duration-hours");
        assert_eq!(passing(72.0 * 60.0).message, "duration-days");
        assert_eq!(work(89.6), (1, 30));
    }
}
