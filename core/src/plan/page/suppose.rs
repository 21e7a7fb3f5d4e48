//! “What if”: the ready date of the same bike with one thing supposed otherwise. Nothing is stored.

use layshaft_wire::wire;

use crate::bounds;
use crate::coating::ClimateLog;
use crate::error::Refused;
use crate::message::Message;
use crate::plan::message::PlanRefusedMessage;
use crate::plan::schedule::{Scheduled, schedule_keeping};
use crate::record::{BenchTime, Bike, Climate, ExtraTime};
use crate::time::{Day, HOUR_MS, Moment};

/// What to suppose. What is left out stays as it is.
#[wire(lenient)]
pub struct Supposition {
    /// A part, by its id, that comes later.
    pub part: Option<String>,
    /// How many days later; left out: 7.
    pub days: Option<u32>,
    /// A day of the week without bench time, Monday is 1.
    pub without_weekday: Option<u32>,
    /// Bench time on one day more.
    pub extra: Option<ExtraTime>,
    /// The garage is so much colder for a while from now on, kelvins; negative is warmer.
    pub colder_kelvin: Option<f64>,
    /// How many days that lasts; left out: 7.
    pub colder_days: Option<u32>,
}

/// What the supposition comes to.
#[wire]
pub struct Supposed {
    /// When the bike is ready then, milliseconds since 1970 (UTC).
    pub ready_ms: Option<i64>,
    /// How much later that is than without it, hours; negative when earlier.
    pub later_hours: Option<f64>,
    /// What holds the date then.
    pub held_by: Message,
}

/// Days that a part comes later, or that the cold lasts, when no number is given.
const USUAL_DAYS: u32 = 7;

/// Plans the bike with something supposed, beside its schedule without it.
pub(crate) fn suppose(
    bike: &Bike,
    supposition: &Supposition,
    moment: &Moment,
    scheduled: &Scheduled,
) -> Result<Supposed, Refused> {
    let mut supposed = bike.clone();
    if let Some(id) = &supposition.part {
        let days = bounds::DAYS_SHOWN.check(f64::from(supposition.days.unwrap_or(USUAL_DAYS)))?;
        later(&mut supposed, id, days, moment)?;
    }
    if let Some(weekday) = supposition.without_weekday {
        bounds::WEEKDAY.check(f64::from(weekday))?;
        let mut spans = bike.bench_time.pattern();
        spans.retain(|span| span.weekday != weekday);
        if spans.is_empty() {
            return Err(Refused::Conflict {
                field: bounds::WEEKDAY.field.to_owned(),
                reason: PlanRefusedMessage::NoBenchTimeLeft.into(),
            });
        }
        supposed.bench_time.spans = spans;
    }
    if let Some(extra) = &supposition.extra {
        let spans = supposed.bench_time.pattern();
        let extra = Some(bike.bench_time.extra.iter().flatten().chain([extra]).cloned().collect());
        supposed.bench_time = BenchTime { spans, extra, ..supposed.bench_time }.checked()?;
    }
    if let Some(kelvin) = supposition.colder_kelvin {
        let days = bounds::DAYS_SHOWN.check(f64::from(supposition.colder_days.unwrap_or(USUAL_DAYS)))?;
        colder(&mut supposed, bounds::COLDER.check(kelvin)?, days, moment);
    }
    let plan = schedule_keeping(&supposed, moment, &scheduled.standing, false);
    let later_hours = plan.ready_ms.zip(scheduled.ready_ms).map(|(then, now)| (then - now) as f64 / HOUR_MS as f64);
    Ok(Supposed { ready_ms: plan.ready_ms, later_hours, held_by: plan.held_by })
}

/// Lets the place be so much colder for some days, hour by hour; after them a day at the mean of what is usual there
/// leads back to it.
fn colder(bike: &mut Bike, kelvin: f64, days: f64, moment: &Moment) {
    let log = ClimateLog::of(bike, moment);
    let now_ms = moment.at_ms();
    let hours = (days * 24.0) as i64;
    let at = |hour: i64| now_ms.saturating_add(hour.saturating_mul(HOUR_MS));
    bike.climate.retain(|reading| reading.from_ms < now_ms);
    bike.climate.extend((0..hours).map(at).map(|from_ms| Climate {
        from_ms,
        celsius: log.celsius_at(from_ms) - kelvin,
        humidity: log.humidity_at(from_ms),
    }));
    let mean = (0..24).map(|hour| log.celsius_at(at(hours + hour))).sum::<f64>() / 24.0;
    bike.climate.push(Climate { from_ms: at(hours), celsius: mean, humidity: log.humidity_at(at(hours)) });
}

/// Lets a part come so many days later.
fn later(bike: &mut Bike, id: &str, days: f64, moment: &Moment) -> Result<(), Refused> {
    let unreadable = |reason: PlanRefusedMessage| Refused::Unreadable {
        field: "part".to_owned(),
        label: PlanRefusedMessage::FieldPart.into(),
        reason: reason.into(),
    };
    let part = bike.parts.get_mut(id).ok_or_else(|| unreadable(PlanRefusedMessage::NoSuchPart))?;
    let expected = part.expected.as_deref().and_then(Day::read);
    if expected.is_none() && part.delivery.is_none() {
        return Err(unreadable(PlanRefusedMessage::PartNeverExpected));
    }
    // A parcel that is late already is counted on for tomorrow, and comes later than that.
    let tomorrow = moment.zone.day_at(moment.at_ms()).plus(1);
    let today = tomorrow.plus(-1);
    part.expected = expected.map(|day| if day < today { tomorrow } else { day }.plus(days as i64).text());
    if let Some(delivery) = &mut part.delivery {
        delivery.least_days += days;
        delivery.likely_days += days;
        delivery.most_days += days;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::schedule::schedule;
    use crate::plan::tests::example::{at, bike, job, needing, part, tuesday_noon, waiting};
    use crate::record::{Job, PartState, Place, Wait};

    fn with_parcel() -> Bike {
        let mut made = bike(vec![job("strip", 1.0, &[]), needing(job("seals", 1.0, &["strip"]), &["kit"])]);
        made.parts.insert("kit".to_owned(), part("Seal kit", PartState::Ordered, Some("2026-03-26")));
        made
    }

    fn supposed(bike: &Bike, supposition: &Supposition) -> Result<Supposed, Refused> {
        suppose(bike, supposition, &tuesday_noon(), &schedule(bike, &tuesday_noon()))
    }

    #[test]
    fn a_parcel_a_week_late_moves_the_date_by_a_week_and_leaves_the_bike_as_it_is() {
        let bike = with_parcel();
        let late = supposed(&bike, &Supposition { part: Some("kit".to_owned()), ..Supposition::default() }).unwrap();
        assert_eq!((late.later_hours, late.ready_ms), (Some(168.0), Some(at("2026-04-02", 20 * 60))));
        assert_eq!(bike, with_parcel());
    }

    #[test]
    fn without_thursday_the_parcel_waits_for_saturday_and_a_friday_evening_helps() {
        let bike = with_parcel();
        let without = supposed(&bike, &Supposition { without_weekday: Some(4), ..Supposition::default() }).unwrap();
        assert_eq!(without.ready_ms, Some(at("2026-03-28", 10 * 60)));
        let extra = ExtraTime { day: "2026-03-27".to_owned(), from_minute: 18 * 60, to_minute: 20 * 60 };
        let both = Supposition { without_weekday: Some(4), extra: Some(extra), ..Supposition::default() };
        assert_eq!(supposed(&bike, &both).unwrap().ready_ms, Some(at("2026-03-27", 19 * 60)));
    }

    #[test]
    fn a_colder_garage_makes_a_cure_longer_and_leaves_other_waits_alone() {
        let primer =
            Wait { name: "primer cures".to_owned(), product: Some("Primer, spray can".to_owned()), ..Wait::default() };
        let mut made = bike(vec![Job { wait: Some(primer), ..job("paint", 1.0, &[]) }]);
        made.place = Place { night_celsius: Some(14.0), day_celsius: Some(20.0), ..Place::default() };
        let ask = |kelvin| Supposition { colder_kelvin: Some(kelvin), ..Supposition::default() };
        let later = |bike: &Bike, kelvin| supposed(bike, &ask(kelvin)).unwrap().later_hours.unwrap();
        let (colder, warmer) = (later(&made, 5.0), later(&made, -5.0));
        assert!(colder > 1.0 && warmer < -1.0, "{colder} {warmer}");
        // A week's cold is over in the end: after it, the same coat takes as long as ever.
        let soon = Supposition { colder_days: Some(1), ..ask(5.0) };
        let one_day = supposed(&made, &soon).unwrap().later_hours.unwrap();
        assert!(0.0 < one_day && one_day < colder, "{one_day} {colder}");
        let soaked = bike(vec![waiting(job("soak", 1.0, &[]), "soaks", 24.0)]);
        assert_eq!(later(&soaked, 5.0), 0.0);
        assert!(supposed(&made, &ask(31.0)).unwrap_err().english().contains("31"));
    }

    #[test]
    fn what_cannot_be_supposed_is_refused_and_named() {
        let refused = |supposition: Supposition| supposed(&with_parcel(), &supposition).unwrap_err().english();
        let part = Some("nothing".to_owned());
        assert!(refused(Supposition { part, ..Supposition::default() }).contains("no such part"));
        assert!(refused(Supposition { without_weekday: Some(8), ..Supposition::default() }).contains("8"));
        let extra = Some(ExtraTime { day: "2026-03-27".to_owned(), from_minute: 60, to_minute: 60 });
        assert!(refused(Supposition { extra, ..Supposition::default() }).contains("end must come after"));
    }
}
