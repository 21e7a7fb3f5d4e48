//! The date on a sidewall: week and year in which the tyre was made.
//!
//! Three figures (week, last figure of the year) until the rule of 8 July 1999, four (week, year) since: 64 FR 36807, seen.
//! Three figures name no decade, so every decade that it may be is kept. From memory: tyres carry the code since 1971; four
//! figures are compulsory since July 2000; a small triangle beside three figures marks the 1990s; week 01 begins on the first
//! Sunday of the year.

use std::fmt;

use chrono::{Datelike, Duration, NaiveDate, Weekday};

use super::diameter::years_of;
use super::message::SidewallMessage;
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::message::FieldMessage;
use crate::quantity::{Source, Standing};

/// Field of the code as it crosses the door.
pub(crate) const FIELD: &str = "dateCode";
const LABEL: FieldMessage = FieldMessage::DateCodeOfTheTyre;
/// First year of the code (from memory: May 1971).
const FIRST_YEAR: i32 = 1971;
/// Last year in which three figures were allowed, and the last week of it (from memory: until 2 July 2000).
const LAST_SHORT: (i32, u32) = (2000, 26);
/// Marks that stand for the small triangle.
const TRIANGLES: [char; 9] = ['◁', '◀', '▷', '▶', '△', '▲', '∆', '<', '>'];

/// A date code as read. [`DateCode::read`] makes it, [`Display`](fmt::Display) writes it back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DateCode {
    week: u32,
    year: YearPart,
}

/// What the code says about the year.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum YearPart {
    /// Two figures.
    Full(i32),
    /// The last figure, and whether the triangle of the 1990s stands beside it.
    Figure { last: i32, nineties: bool },
}

/// One week in which the tyre may have been made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WeekMade {
    /// Year.
    pub year: i32,
    /// Week of that year.
    pub week: u32,
    /// First day of that week.
    pub from: NaiveDate,
}

impl DateCode {
    /// Reads three or four figures, alone or at the end of the whole `DOT …` number; nothing is guessed.
    ///
    /// Refused (field `dateCode`): another count of figures, anything else than figures, a week outside 01 to 53.
    ///
    /// ```
    /// use layshaft_core::record::DateCode;
    /// assert_eq!(DateCode::read("DOT XA3B 4C5D 3202").unwrap().to_string(), "3202");
    /// assert!(DateCode::read("5402").is_err());
    /// ```
    pub fn read(code: &str) -> Result<Self, Refused> {
        let code = check::check_text(FIELD, LABEL, code, 40)?;
        let dot = code.get(..3).is_some_and(|start| start.eq_ignore_ascii_case("dot"));
        let last = if dot { code.split_whitespace().last().unwrap_or_default() } else { code.as_str() };
        let bare = last.trim_end_matches(|end: char| end == ' ' || TRIANGLES.contains(&end));
        let (marked, figures) = (bare.len() < last.len(), bare.len());
        let number = Some(bare).filter(|bare| bare.bytes().all(|byte| byte.is_ascii_digit()));
        let number: u32 = match number.and_then(|bare| bare.parse().ok()) {
            Some(number) if figures == 3 || (figures == 4 && !marked) => number,
            _ => return Err(unreadable(&code)),
        };
        let (week, rest) = if figures == 3 { (number / 10, number % 10) } else { (number / 100, number % 100) };
        bounds::TYRE_WEEK.of(FIELD).check(f64::from(week))?;
        let rest = i32::try_from(rest).map_err(|_| unreadable(&code))?;
        let year = match (figures, rest) {
            (3, last) => YearPart::Figure { last, nineties: marked },
            // Four figures were allowed from the second half of 1999 on; no earlier year can be written with them.
            (_, 99) => YearPart::Full(1999),
            (_, rest) => YearPart::Full(2000 + rest),
        };
        Ok(Self { week, year })
    }

    /// Every week that the code may stand for, latest first: one for four figures, up to three for three.
    ///
    /// ```
    /// use layshaft_core::record::DateCode;
    /// let years = |code: &str| DateCode::read(code).unwrap().weeks().iter().map(|made| made.year).collect::<Vec<_>>();
    /// assert_eq!(years("3202"), [2002]);
    /// assert_eq!(years("324"), [1994, 1984, 1974]);
    /// assert_eq!(years("324◁"), [1994]);
    /// ```
    pub fn weeks(self) -> Vec<WeekMade> {
        let years = match self.year {
            YearPart::Full(year) => vec![year],
            YearPart::Figure { last, nineties: true } => vec![1990 + last],
            YearPart::Figure { last, nineties: false } => [2000, 1990, 1980, 1970]
                .map(|decade| decade + last)
                .into_iter()
                .filter(|year| self.short_in(*year))
                .collect(),
        };
        years.into_iter().filter_map(|year| week_of(year, self.week)).collect()
    }

    /// Whether the code has three figures and so leaves the decade open or to a triangle.
    pub fn is_short(self) -> bool {
        matches!(self.year, YearPart::Figure { .. })
    }

    /// Whether three figures were in use in this week of that year.
    fn short_in(self, year: i32) -> bool {
        year >= FIRST_YEAR && (year, self.week) <= LAST_SHORT
    }
}

impl fmt::Display for DateCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.year {
            YearPart::Full(year) => write!(f, "{:02}{:02}", self.week, year % 100),
            YearPart::Figure { last, nineties } => {
                write!(f, "{:02}{last}{}", self.week, if nineties { "◁" } else { "" })
            }
        }
    }
}

/// The week counted from the first Sunday of the year (from memory).
fn week_of(year: i32, week: u32) -> Option<WeekMade> {
    let first = NaiveDate::from_ymd_opt(year, 1, 1)?;
    let to_sunday = first.weekday().days_since(Weekday::Sun);
    let days = i64::from((7 - to_sunday) % 7) + 7 * (i64::from(week) - 1);
    Some(WeekMade { year, week, from: first + Duration::days(days) })
}

/// Age in years of a tyre made in a week, at a day.
///
/// `a = (d − d₀) / 365.25`, `d` the day, `d₀` the first day of the week of its making
///
/// Source: calendar, computed; mean length of a year in the Julian calendar. Negative: the week is still to come. Range: the
/// week itself is up to a week off.
///
/// ```
/// use layshaft_core::record::{DateCode, age_years};
/// let made = DateCode::read("3202").unwrap().weeks()[0];
/// let day = |text: &str| text.parse().unwrap();
/// assert_eq!(made.from, day("2002-08-11"));
/// assert!((age_years(&made, day("2012-08-11")) - 10.0).abs() < 0.003);
/// ```
pub fn age_years(made: &WeekMade, today: NaiveDate) -> f64 {
    years_of(age_days(made, today))
}

/// Age in days, counted from the first day of the week.
pub(crate) fn age_days(made: &WeekMade, today: NaiveDate) -> f64 {
    (today - made.from).num_days() as f64
}

/// Where the form of the code comes from.
pub fn date_source() -> Source {
    Source::new(SidewallMessage::SourceDate, Standing::Seen)
}

/// Where the decades, the triangle and the count of weeks come from.
pub fn decade_source() -> Source {
    Source::new(SidewallMessage::SourceDecade, Standing::Memory)
}

fn unreadable(code: &str) -> Refused {
    Refused::Unreadable {
        field: FIELD.to_owned(),
        label: LABEL.into(),
        reason: SidewallMessage::DateCode { code: code.to_owned() }.into(),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn years(code: &str) -> Vec<i32> {
        DateCode::read(code).unwrap().weeks().iter().map(|made| made.year).collect()
    }

    /// 3202: 64 FR 36807 (seen). 324: week 32 of 1994, oocities.org “Motor Cycle Tyre Codes” (second hand).
    #[test]
    fn the_published_codes_give_their_week_and_year() {
        let made = DateCode::read("3202").unwrap().weeks();
        assert_eq!((made[0].week, made[0].year, made.len()), (32, 2002, 1));
        assert_eq!(years("324"), [1994, 1984, 1974]);
        assert!(DateCode::read("324").unwrap().weeks().iter().all(|made| made.week == 32));
        assert_eq!(years("324◁"), [1994]);
    }

    #[test]
    fn three_figures_end_in_the_middle_of_2000_and_begin_in_1971() {
        assert_eq!(years("260"), [2000, 1990, 1980]);
        assert_eq!(years("270"), [1990, 1980]);
        assert_eq!(years("011"), [1991, 1981, 1971]);
    }

    #[test]
    fn four_figures_begin_in_1999() {
        assert_eq!((years("4099"), years("0100"), years("5326")), (vec![1999], vec![2000], vec![2026]));
    }

    #[test]
    fn weeks_outside_01_to_53_are_refused_with_field_and_range() {
        for code in ["0002", "5402", "9902", "004", "544", "994"] {
            match DateCode::read(code).unwrap_err() {
                Refused::OutOfRange { field, min, max, .. } => {
                    assert_eq!((field.as_str(), min, max), ("dateCode", 1.0, 53.0), "{code}");
                }
                other => panic!("{code}: {other:?}"),
            }
        }
    }

    #[test]
    fn anything_else_is_refused_and_the_refusal_shows_the_form() {
        for code in ["32", "32022", "3 202", "32O2", "3202◁", "DOT", "week 32", "-324", "+324", "３２０２", "DOT XA3B"]
        {
            let refused = DateCode::read(code).unwrap_err();
            assert!(matches!(&refused, Refused::Unreadable { field, .. } if field == "dateCode"), "{code}: {refused}");
        }
        assert!(matches!(DateCode::read(" "), Err(Refused::BadText { field, .. }) if field == "dateCode"));
    }

    proptest! {
        #[test]
        fn what_is_read_prints_to_what_reads_back_equal(code in "(DOT [A-Z]{2} )?[0-9]{2,5}[◁<]?") {
            if let Ok(read) = DateCode::read(&code) {
                prop_assert_eq!(DateCode::read(&read.to_string()), Ok(read));
                prop_assert!(!read.weeks().is_empty());
                // Every week begins in its own year, or just past it for a week 53 that the year does not have.
                for made in read.weeks() {
                    prop_assert!(made.from.weekday() == Weekday::Sun);
                    prop_assert!((made.from.year() - made.year) <= i32::from(made.week == 53));
                }
            }
        }

        #[test]
        fn no_text_makes_the_reader_panic(text in "\\PC{0,50}") {
            let _ = DateCode::read(&text);
        }
    }
}
