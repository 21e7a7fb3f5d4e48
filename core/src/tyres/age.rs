//! How old a tyre is on a day, and what is commonly done about it.

use chrono::NaiveDate;
use layshaft_wire::wire;

use super::message::{TyresMessage, TyresRefused, TyresSource};
use crate::error::Refused;
use crate::message::{ListStyle, Message};
use crate::quantity::{Judgement, Source, Standing};
use crate::record::{DateCode, FIELD, WeekMade, age_days, age_years, date_source, decade_source};
use crate::time::Day;
use crate::units::Unit;

/// Years after which a tyre is looked at every year. Common practice, from memory.
pub const LOOK_YEARLY_YEARS: f64 = 5.0;
/// Years after which a tyre is replaced at the latest, whatever its tread. Common practice, from memory.
pub const REPLACE_YEARS: f64 = 10.0;
/// A week still to come by no more than this is taken for this week: the count of weeks is from memory.
const WEEK_OFF_YEARS: f64 = 8.0 / 365.25;

/// One week in which the tyre may have been made.
#[wire]
pub struct TyreWeek {
    /// Year.
    pub year: u32,
    /// Week of that year.
    pub week: u32,
    /// First day of that week, `YYYY-MM-DD`.
    pub from_day: String,
    /// Age on the day of asking, days.
    pub age_days: f64,
    /// The same in years.
    pub age_years: f64,
}

/// The age of a tyre.
#[wire]
pub struct TyreAge {
    /// The code as read.
    pub code: String,
    /// Every week that it may stand for and that is past, latest first.
    pub weeks: Vec<TyreWeek>,
    /// Least age, years.
    pub least_years: f64,
    /// Greatest age, years.
    pub most_years: f64,
    /// Fine below the age of yearly looks, outside from the age of replacement on, open between them.
    pub judgement: Judgement,
    /// What is commonly done.
    pub advice: Message,
    /// Where form, decades and advice come from.
    pub sources: Vec<Source>,
}

/// Reads a date code and says how old the tyre is on a day, `YYYY-MM-DD`.
///
/// Refused (field `dateCode`): a code that cannot be read, or one of which every week is still to come.
///
/// ```
/// let age = layshaft_core::tyres::tyre_age("324", "2026-11-26").unwrap();
/// assert!(age.least_years > 32.0 && age.most_years < 52.5);
/// ```
pub fn tyre_age(code: &str, day: &str) -> Result<TyreAge, Refused> {
    let read = DateCode::read(code)?;
    // A day that no calendar has counts as 1970: every week lies ahead of it, and that is refused.
    let today: NaiveDate = day.parse().unwrap_or_default();
    let past = |made: &WeekMade| age_years(made, today) > -WEEK_OFF_YEARS;
    let weeks: Vec<TyreWeek> = read.weeks().iter().filter(|made| past(made)).map(|made| on_day(made, today)).collect();
    let (Some(youngest), Some(oldest)) = (weeks.first(), weeks.last()) else {
        return Err(Refused::Conflict {
            field: FIELD.to_owned(),
            reason: TyresRefused::StillToCome { code: read.to_string(), today: Day::read(day).unwrap_or(Day(0)) }
                .into(),
        });
    };
    let (least_years, most_years) = (youngest.age_years, oldest.age_years);
    let (judgement, advice) = advice(least_years, most_years, read.is_short());
    let sources = vec![date_source(), decade_source(), age_source()];
    Ok(TyreAge { code: read.to_string(), least_years, most_years, judgement, advice, sources, weeks })
}

fn on_day(made: &WeekMade, today: NaiveDate) -> TyreWeek {
    TyreWeek {
        year: u32::try_from(made.year).unwrap_or(0),
        week: made.week,
        from_day: made.from.to_string(),
        age_days: age_days(made, today).max(0.0),
        age_years: age_years(made, today).max(0.0),
    }
}

fn advice(least: f64, most: f64, short: bool) -> (Judgement, Message) {
    let years = Unit::None.of(least);
    if least >= REPLACE_YEARS {
        let mut said = vec![TyresMessage::Replace { years }.into()];
        said.extend(short.then(|| TyresMessage::DecadeOpen.into()));
        (Judgement::Outside, Message::joined(ListStyle::Sentences, said))
    } else if most < LOOK_YEARLY_YEARS {
        (Judgement::Fine, TyresMessage::Young { years }.into())
    } else {
        let at_latest = Unit::None.of(REPLACE_YEARS);
        (Judgement::Open, TyresMessage::LookYearly { years, at_latest }.into())
    }
}

/// Where the advice on age comes from.
pub fn age_source() -> Source {
    Source::new(TyresSource::Age, Standing::Memory)
}

#[cfg(test)]
mod tests {
    use super::*;

    const TODAY: &str = "2026-11-26";

    #[test]
    fn three_figures_are_at_least_twenty_five_years_old_whatever_the_decade() {
        for week in 1..=53 {
            for last in 0..=9 {
                let age = tyre_age(&format!("{week:02}{last}"), TODAY).unwrap();
                assert!(age.least_years >= 25.0 && age.judgement == Judgement::Outside, "{age:?}");
                assert!(age.weeks.len() >= 2, "{age:?}");
            }
        }
    }

    #[test]
    fn age_goes_with_the_day_of_asking() {
        let age = tyre_age("3202", TODAY).unwrap();
        assert_eq!((age.weeks.len(), age.weeks[0].from_day.as_str()), (1, "2002-08-11"));
        // 11 August 2002 to 26 November 2026: 8,873 days, counted apart.
        assert!((age.least_years - 8873.0 / 365.25).abs() < 1e-9);
        assert_eq!(tyre_age("3202", "2003-01-01").unwrap().judgement, Judgement::Fine);
    }

    #[test]
    fn between_five_and_ten_years_it_is_neither_fine_nor_outside() {
        assert_eq!(tyre_age("4721", TODAY).unwrap().judgement, Judgement::Open);
        assert_eq!(tyre_age("4921", TODAY).unwrap().judgement, Judgement::Fine);
        assert_eq!(tyre_age("4516", TODAY).unwrap().judgement, Judgement::Outside);
        assert_eq!(tyre_age("4916", TODAY).unwrap().judgement, Judgement::Open);
    }

    #[test]
    fn a_week_still_to_come_is_refused_and_this_week_is_not() {
        let refused = tyre_age("0127", TODAY).unwrap_err();
        assert!(matches!(&refused, Refused::Conflict { field, .. } if field == "dateCode"), "{refused}");
        assert!(refused.english().contains("still to come"));
        assert_eq!(tyre_age("4826", TODAY).unwrap().least_years, 0.0);
        assert!(tyre_age("324", "1970-01-01").is_err());
    }
}
