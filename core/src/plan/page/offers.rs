//! What may be worth supposing: for this bike, with its parcels, its week and its cures, each with the date that it gives.

use layshaft_wire::wire;

use super::suppose::{Supposed, Supposition, suppose};
use crate::plan::schedule::Scheduled;
use crate::plan::tasks::{Clockwork, WaitRule, missing};
use crate::record::{Bike, ExtraTime, JobState, Part};
use crate::time::{Day, Moment};

/// Parcels that are offered: those that come last.
const PARCELS: usize = 3;
/// The evening that is offered, minutes after midnight: two hours. An assumption of ours.
const EVENING: (u32, u32) = (19 * 60, 21 * 60);
/// How much colder the place is supposed to be, kelvins.
const COLDER_KELVIN: f64 = 5.0;

/// Something to suppose, and what it comes to.
#[wire]
pub struct Offer {
    /// What is supposed; give it back as it is to suppose it together with others.
    pub supposition: Supposition,
    /// The part's title, where a part is supposed to come later.
    pub title: Option<String>,
    /// What it comes to.
    pub supposed: Supposed,
}

/// Everything that is offered; nothing where there is no date that could move.
pub(crate) fn offers(bike: &Bike, moment: &Moment, scheduled: &Scheduled) -> Vec<Offer> {
    if scheduled.ready_ms.is_none_or(|ready_ms| ready_ms <= moment.at_ms()) {
        return Vec::new();
    }
    let parcels = parcels(bike).into_iter().map(|(id, part)| {
        let supposition = Supposition { part: Some(id.to_owned()), ..Supposition::default() };
        (supposition, Some(part.title.clone()))
    });
    let others =
        weekdays(bike).chain(evening(bike, moment)).chain(colder(bike, moment)).map(|supposition| (supposition, None));
    parcels
        .chain(others)
        .filter_map(|(supposition, title)| {
            let supposed = suppose(bike, &supposition, moment, scheduled).ok()?;
            Some(Offer { supposition, title, supposed })
        })
        .collect()
}

/// The missing parts with a day, the latest first.
fn parcels(bike: &Bike) -> Vec<(&str, &Part)> {
    let open = bike.parts.iter().filter(|(_, part)| missing(part));
    let known = open.filter(|(_, part)| part.expected.is_some() || part.delivery.is_some());
    let mut parcels: Vec<(&str, &Part)> = known.map(|(id, part)| (id.as_str(), part)).collect();
    parcels.sort_by(|(_, one), (_, other)| other.expected.cmp(&one.expected));
    parcels.truncate(PARCELS);
    parcels
}

/// The days of the week with bench time, where there is more than one.
fn weekdays(bike: &Bike) -> impl Iterator<Item = Supposition> {
    let mut days: Vec<u32> = bike.bench_time.pattern().iter().map(|span| span.weekday).collect();
    days.dedup();
    let several = days.len() > 1;
    let without = |weekday| Supposition { without_weekday: Some(weekday), ..Supposition::default() };
    days.into_iter().filter(move |_| several).map(without)
}

/// An evening on the next day of the coming week that has no bench time.
fn evening(bike: &Bike, moment: &Moment) -> Option<Supposition> {
    let today = moment.zone.day_at(moment.at_ms());
    let busy = |day: Day| {
        let next = moment.zone.instant_of(day.plus(1), 0);
        !bike.bench_time.between(&moment.zone, moment.zone.instant_of(day, 0), next).is_empty()
    };
    let free = (1..=7).map(|days| today.plus(days)).find(|day| !busy(*day))?;
    let extra = ExtraTime { day: free.text(), from_minute: EVENING.0, to_minute: EVENING.1 };
    Some(Supposition { extra: Some(extra), ..Supposition::default() })
}

/// A colder place, where a cure runs or is still to come.
fn colder(bike: &Bike, moment: &Moment) -> Option<Supposition> {
    let clockwork = Clockwork::of(bike, moment);
    let now_ms = moment.at_ms();
    let runs = |over_ms: Option<i64>| over_ms.is_none_or(|over_ms| over_ms > now_ms);
    let on = bike.coats.values().any(|coat| runs(clockwork.coat_over_ms(coat)));
    // The cure of a job that is done counts from its coats, where it has any.
    let coated = |id: &str| bike.coats.values().any(|coat| coat.job.as_deref() == Some(id));
    let cures = bike.jobs.iter().any(|(id, job)| match WaitRule::of(job.wait.as_ref(), bike) {
        WaitRule::Cure(_) if job.state != JobState::Done => true,
        rule @ WaitRule::Cure(_) => !coated(id) && runs(clockwork.over_ms(&rule, job.done_ms.unwrap_or(now_ms))),
        _ => false,
    });
    (cures || on).then(|| Supposition { colder_kelvin: Some(COLDER_KELVIN), ..Supposition::default() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::schedule::schedule;
    use crate::plan::tests::example::{at, bike, done, job, needing, part, tuesday_noon};
    use crate::ready_made::typical_product;
    use crate::record::{Coat, Job, PartState, Wait};
    use crate::time::DAY_MS;

    fn offered(bike: &Bike) -> Vec<Offer> {
        offers(bike, &tuesday_noon(), &schedule(bike, &tuesday_noon()))
    }

    #[test]
    fn parcels_days_an_evening_and_the_cold_are_offered_with_their_dates() {
        let liner =
            Wait { name: "cures".to_owned(), product: Some("Tank liner, two-part".to_owned()), ..Wait::default() };
        let mut made =
            bike(vec![needing(job("seals", 2.0, &[]), &["kit"]), Job { wait: Some(liner), ..job("tank", 1.0, &[]) }]);
        made.parts.insert("kit".to_owned(), part("Seal kit", PartState::Ordered, Some("2026-03-26")));
        made.parts.insert("lamp".to_owned(), part("Lamp", PartState::Wanted, None));
        let list = offered(&made);
        assert_eq!(list[0].title.as_deref(), Some("Seal kit"));
        let days: Vec<u32> = list.iter().filter_map(|offer| offer.supposition.without_weekday).collect();
        assert_eq!(days, [2, 4, 6]);
        let extra = list.iter().find_map(|offer| offer.supposition.extra.clone()).unwrap();
        assert_eq!(extra.day, "2026-03-25", "Wednesday is the next day without bench time");
        assert!(list.last().unwrap().supposition.colder_kelvin.is_some());
        assert_eq!(list.len(), 1 + 3 + 1 + 1, "what has no day cannot be late");
        // Each date is that of the same supposition asked for by itself.
        let scheduled = schedule(&made, &tuesday_noon());
        for offer in &list {
            let alone = suppose(&made, &offer.supposition, &tuesday_noon(), &scheduled).unwrap();
            assert_eq!(alone, offer.supposed);
        }
    }

    /// A coat of the typical two-part tank liner, put on so many days ago: at 12 °C it takes some three weeks.
    fn coated(days: i64) -> Bike {
        let mut made = bike(vec![job("seals", 2.0, &[])]);
        let product = typical_product("Tank liner, two-part").unwrap();
        let applied_ms = tuesday_noon().now_ms - days * DAY_MS;
        made.coats
            .insert("liner".to_owned(), Coat { title: "Tank".to_owned(), product, applied_ms, ..Coat::default() });
        made
    }

    fn cold_is_offered(bike: &Bike) -> bool {
        offered(bike).iter().any(|offer| offer.supposition.colder_kelvin.is_some())
    }

    #[test]
    fn the_cold_is_offered_only_while_a_coat_cures() {
        assert!(cold_is_offered(&coated(1)), "it cures since yesterday");
        assert!(!cold_is_offered(&coated(300)), "it has long cured");
        let mut ended = coated(1);
        ended.coats.values_mut().for_each(|coat| coat.ended_ms = Some(tuesday_noon().now_ms));
        assert!(!cold_is_offered(&ended), "its clock was ended");
    }

    #[test]
    fn the_cold_is_offered_for_the_cure_of_a_job_to_come_or_just_done() {
        let liner =
            Wait { name: "cures".to_owned(), product: Some("Tank liner, two-part".to_owned()), ..Wait::default() };
        let tank = Job { wait: Some(liner), ..job("tank", 1.0, &[]) };
        let seals = || job("seals", 2.0, &[]);
        assert!(cold_is_offered(&bike(vec![tank.clone(), seals()])), "to come");
        let done_ms = |days| tuesday_noon().now_ms - days * DAY_MS;
        assert!(cold_is_offered(&bike(vec![done(tank.clone(), done_ms(1)), seals()])), "it runs");
        assert!(!cold_is_offered(&bike(vec![done(tank, done_ms(300)), seals()])), "it is over");
        let hours = Wait { name: "dries".to_owned(), hours: Some(24.0), ..Wait::default() };
        assert!(!cold_is_offered(&bike(vec![Job { wait: Some(hours), ..seals() }])), "fixed hours know no cold");
    }

    #[test]
    fn nothing_is_offered_where_nothing_is_left_to_do() {
        assert!(offered(&bike(vec![done(job("seals", 1.0, &[]), at("2026-03-20", 600))])).is_empty());
    }
}
