//! The plan page.

use layshaft_wire::wire;

use super::offers::{Offer, offers};
use super::suppose::{Supposed, Supposition, suppose};
use crate::bounds;
use crate::error::Refused;
use crate::message::Message;
use crate::plan::outlook::{Odds, ToOrder, order_first};
use crate::plan::schedule::Scheduled;
use crate::plan::{PlanRow, WorkSpan};
use crate::quantity::Finding;
use crate::record::{Bike, JobState};
use crate::time::{Day, Moment};

/// Days shown when nothing is asked for: four weeks.
const USUAL_DAYS: u32 = 28;

/// What to plan. What is left out is as the bike says.
#[wire(lenient)]
pub struct PlanAsk {
    /// Days shown, from today; left out: 28.
    pub days: Option<u32>,
    /// What to suppose; left out: nothing.
    pub what_if: Option<Supposition>,
    /// Whether to tell how sure the date is and what else could be supposed; left out: no. It takes a while.
    pub how_sure: Option<bool>,
}

/// The plan page.
#[wire]
pub struct PlanAnswer {
    /// Jobs in the order of their dates; done ones last.
    pub rows: Vec<PlanRow>,
    /// Bench time in the days shown.
    pub bench: Vec<WorkSpan>,
    /// First day shown begins here, milliseconds since 1970 (UTC).
    pub from_ms: i64,
    /// Last day shown ends here.
    pub to_ms: i64,
    /// The days shown, each with the midnight at which it begins: for the scale of the picture.
    pub days: Vec<DayMark>,
    /// When everything is done and every wait is over, milliseconds since 1970 (UTC); none when it cannot be planned.
    pub ready_ms: Option<i64>,
    /// No order of the jobs can be ready before, milliseconds since 1970 (UTC); the ready date is this or later.
    pub bound_ms: Option<i64>,
    /// The ready date is proven to be the earliest there is.
    pub proven_best: bool,
    /// How sure that is; none where it was not asked for, or where no parcel and no hands-on time varies.
    pub odds: Option<Odds>,
    /// Parts to order, the most urgent first.
    pub order_first: Vec<ToOrder>,
    /// What may be worth supposing, each with what it comes to; empty where it was not asked for.
    pub offers: Vec<Offer>,
    /// What the supposition comes to, where one was asked for.
    pub what_if: Option<Supposed>,
    /// What holds the date, in one sentence.
    pub held_by: Message,
    /// Jobs not done.
    pub jobs_left: u32,
    /// Hands-on minutes left.
    pub minutes_left: f64,
    /// What is worth saying: circles, jobs without bench time.
    pub findings: Vec<Finding>,
}

/// The start of a day.
#[wire]
pub struct DayMark {
    /// Local midnight, milliseconds since 1970 (UTC).
    pub at_ms: i64,
    /// The day, `YYYY-MM-DD`.
    pub day: String,
    /// Day of the week, Monday is 1.
    pub weekday: u32,
}

/// The plan on the calendar of the days shown, from its schedule.
pub fn plan_answer(bike: &Bike, ask: &PlanAsk, moment: &Moment, scheduled: &Scheduled) -> Result<PlanAnswer, Refused> {
    let shown = ask.days.unwrap_or(USUAL_DAYS);
    bounds::DAYS_SHOWN.check(f64::from(shown))?;
    let zone = &moment.zone;
    let today = zone.day_at(moment.at_ms());
    let midnight = |day: Day| zone.instant_of(day, 0);
    let (from_ms, to_ms) = (midnight(today), midnight(today.plus(i64::from(shown))));
    let how_sure = ask.how_sure == Some(true);
    let Scheduled { rows, ready_ms, bound_ms, odds, held_by, findings, .. } = scheduled.clone();
    let what_if = ask.what_if.as_ref().map(|what_if| suppose(bike, what_if, moment, scheduled)).transpose()?;
    Ok(PlanAnswer {
        bench: bike.bench_time.between(zone, from_ms, to_ms),
        from_ms,
        to_ms,
        days: (0..i64::from(shown))
            .map(|day| today.plus(day))
            .map(|day| DayMark { at_ms: midnight(day), day: day.text(), weekday: day.weekday() })
            .collect(),
        ready_ms,
        bound_ms,
        proven_best: ready_ms.is_some() && ready_ms == bound_ms,
        odds,
        order_first: order_first(bike, &rows, moment),
        offers: if how_sure { offers(bike, moment, scheduled) } else { Vec::new() },
        what_if,
        held_by,
        jobs_left: rows.iter().map(|row| u32::from(row.state != JobState::Done)).sum(),
        minutes_left: rows.iter().map(|row| row.minutes_left).sum(),
        rows,
        findings,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::schedule::schedule;
    use crate::plan::tests::example::{at, bike, done, job, tuesday_noon};
    use crate::time::{HOUR_MS, Zone, ZoneShift};

    fn asked(bike: &Bike, days: Option<u32>, moment: &Moment) -> Result<PlanAnswer, Refused> {
        plan_answer(bike, &PlanAsk { days, ..PlanAsk::default() }, moment, &schedule(bike, moment))
    }

    fn sheet(bike: &Bike, days: Option<u32>, moment: &Moment) -> PlanAnswer {
        asked(bike, days, moment).unwrap()
    }

    #[test]
    fn the_sheet_shows_whole_days_from_today_on_with_their_bench_time() {
        let sheet = sheet(&bike(vec![job("tyre", 1.0, &[])]), Some(7), &tuesday_noon());
        assert_eq!((sheet.from_ms, sheet.to_ms), (at("2026-03-24", 0), at("2026-03-31", 0)));
        let days: Vec<(&str, u32)> = sheet.days.iter().map(|day| (day.day.as_str(), day.weekday)).collect();
        assert_eq!((days.len(), days[0], days[6]), (7, ("2026-03-24", 2), ("2026-03-30", 1)));
        assert_eq!(sheet.bench.iter().map(|span| (span.to_ms - span.from_ms) / HOUR_MS).collect::<Vec<_>>(), [2, 2, 7]);
        assert_eq!(self::sheet(&Bike::default(), None, &tuesday_noon()).days.len(), 28);
    }

    #[test]
    fn the_sheet_counts_what_is_left() {
        let jobs =
            vec![done(job("strip", 3.0, &[]), at("2026-03-20", 0)), job("tyre", 1.0, &[]), job("lamps", 0.5, &[])];
        let sheet = sheet(&bike(jobs), None, &tuesday_noon());
        assert_eq!((sheet.jobs_left, sheet.minutes_left), (2, 90.0));
        assert_eq!(sheet.rows.last().map(|row| row.job.as_str()), Some("strip"));
    }

    #[test]
    fn midnights_follow_the_clock_on_the_wall_over_its_change() {
        let shift = |from_ms, offset_minutes| ZoneShift { from_ms, offset_minutes };
        let zone = Zone { name: "Europe/Berlin".to_owned(), shifts: vec![shift(0, 60), shift(1_774_746_000_000, 120)] };
        let sheet = sheet(&Bike::default(), Some(3), &Moment { now_ms: at("2026-03-28", 600), zone });
        let hours: Vec<i64> = sheet.days.iter().map(|day| (day.at_ms - sheet.from_ms) / HOUR_MS).collect();
        assert_eq!(hours, [0, 24, 47]);
        assert_eq!((sheet.to_ms - sheet.from_ms) / HOUR_MS, 71);
    }

    #[test]
    fn days_outside_the_range_are_refused_with_field_and_range() {
        for days in [0, 367, u32::MAX] {
            let refused = asked(&Bike::default(), Some(days), &tuesday_noon()).unwrap_err();
            assert!(refused.english().contains("is outside 1 to 366 days"), "{refused}");
        }
    }
}
