//! What to order first: parts that are wanted and not ordered, by the last day on which ordering them still keeps the date.

use layshaft_wire::wire;

use crate::message::Message;
use crate::plan::explain::PlanRow;
use crate::plan::message::PlanOrderMessage;
use crate::record::{Bike, JobState, Part, PartState};
use crate::time::{Day, HOUR_MS, Moment};

/// A part to order.
#[wire]
pub struct ToOrder {
    /// Id of the part.
    pub part: String,
    /// What it is.
    pub title: String,
    /// Last day on which ordering it keeps the ready date even where it takes its longest, `YYYY-MM-DD`; none where its
    /// delivery or the plan is not known.
    pub by_day: Option<String>,
    /// That day is today or has passed.
    pub now: bool,
    /// Why, in one sentence.
    pub why: Message,
}

/// The parts to order, the most urgent first; those of which nothing is known come before all, as no date holds without
/// them.
pub(crate) fn order_first(bike: &Bike, rows: &[PlanRow], moment: &Moment) -> Vec<ToOrder> {
    let today = moment.zone.day_at(moment.at_ms());
    let wanted = bike.parts.iter().filter(|(_, part)| part.state == PartState::Wanted);
    let needed = wanted.filter_map(|(id, part)| Some((id, part, needing(bike, rows, id)?)));
    let mut list: Vec<(Option<Day>, ToOrder)> = needed
        .map(|(id, part, need)| {
            let by = need.latest_ms.zip(longest_days(part)).map(|(latest_ms, days)| {
                let latest = moment.zone.day_at(latest_ms);
                latest.plus(-(days.ceil() as i64))
            });
            let why = why(part, by, today, need.title);
            let now = by.is_none_or(|day| day <= today);
            let (part, title, by_day) = (id.clone(), part.title.clone(), by.map(Day::text));
            (by, ToOrder { part, title, by_day, now, why: why.into() })
        })
        .collect();
    list.sort_by(|(one, a), (other, b)| one.cmp(other).then_with(|| a.part.cmp(&b.part)));
    list.into_iter().map(|(_, to_order)| to_order).collect()
}

/// The job that needs a part first.
struct Need {
    title: String,
    /// The latest instant at which the job may begin without moving the ready date.
    latest_ms: Option<i64>,
}

fn needing(bike: &Bike, rows: &[PlanRow], part: &str) -> Option<Need> {
    let open = rows.iter().filter(|row| row.state != JobState::Done);
    let needs = open.filter(|row| bike.jobs.get(&row.job).is_some_and(|job| job.parts.iter().any(|id| id == part)));
    let latest = |row: &PlanRow| {
        let begins_ms = row.work.first()?.from_ms;
        Some(begins_ms + (row.slack_hours? * HOUR_MS as f64) as i64)
    };
    let each: Vec<Need> = needs.map(|row| Need { title: row.title.clone(), latest_ms: latest(row) }).collect();
    each.into_iter().min_by_key(|need| need.latest_ms.unwrap_or(i64::MIN))
}

/// How long the delivery takes at worst, days, where something is known of it.
fn longest_days(part: &Part) -> Option<f64> {
    part.delivery.as_ref().map(|delivery| delivery.most_days)
}

fn why(part: &Part, by: Option<Day>, today: Day, job: String) -> PlanOrderMessage {
    match by {
        None if part.delivery.is_none() => PlanOrderMessage::NothingKnown { job },
        None => PlanOrderMessage::Needed { job },
        Some(day) if day < today => PlanOrderMessage::TooLate { job },
        Some(day) if day == today => PlanOrderMessage::Today { job },
        Some(day) => PlanOrderMessage::By { job, day },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::schedule::schedule;
    use crate::plan::tests::example::{bike, job, needing as job_needing, part, tuesday_noon};
    use crate::record::Delivery;

    fn with(parts: &[(&str, Option<f64>)]) -> Bike {
        let mut made = bike(vec![
            job_needing(job("tank", 2.0, &[]), &["liner"]),
            job_needing(job("lamps", 1.0, &[]), &["bulbs"]),
            // What makes the date late, so that there is slack.
            crate::plan::tests::example::waiting(job("paint", 1.0, &[]), "hardens", 900.0),
        ]);
        for (id, most) in parts {
            let delivery =
                most.map(|most_days| Delivery { least_days: 2.0, likely_days: 3.0, most_days, ..Delivery::default() });
            made.parts.insert((*id).to_owned(), Part { delivery, ..part(id, PartState::Wanted, None) });
        }
        made
    }

    fn listed(bike: &Bike) -> Vec<ToOrder> {
        order_first(bike, &schedule(bike, &tuesday_noon()).rows, &tuesday_noon())
    }

    #[test]
    fn what_takes_longest_is_ordered_first_and_in_time_for_the_latest_begin() {
        let list = listed(&with(&[("liner", Some(30.0)), ("bulbs", Some(5.0))]));
        assert_eq!(list.iter().map(|each| each.part.as_str()).collect::<Vec<_>>(), ["liner", "bulbs"]);
        let day = |at: usize| Day::read(list[at].by_day.as_deref().unwrap()).unwrap();
        assert!(day(0) < day(1) && list[1].why.english().contains("even at its longest"), "{list:?}");
        // Ordered on that day and coming at its longest, the date still holds; three weeks later it does not.
        let ready = |ordered: Day| {
            let mut bike = with(&[("bulbs", Some(5.0)), ("liner", Some(30.0))]);
            for (id, days) in [("liner", 30), ("bulbs", 0)] {
                let part = bike.parts.get_mut(id).unwrap();
                part.expected = Some(ordered.plus(days).text());
            }
            bike.parts.get_mut("bulbs").unwrap().state = PartState::Here;
            schedule(&bike, &tuesday_noon()).ready_ms
        };
        assert_eq!(ready(day(0)), ready(day(0).plus(-5)));
        assert!(ready(day(0).plus(21)) > ready(day(0)));
    }

    #[test]
    fn a_part_of_which_nothing_is_known_comes_first_and_says_so() {
        let list = listed(&with(&[("liner", Some(4.0)), ("bulbs", None)]));
        assert_eq!((list[0].part.as_str(), list[0].by_day.clone(), list[0].now), ("bulbs", None, true));
        assert!(list[0].why.english().contains("nothing is known"));
    }

    #[test]
    fn what_no_job_needs_or_is_ordered_is_not_listed() {
        let mut bike = with(&[("liner", Some(4.0)), ("spare", Some(4.0)), ("bulbs", Some(4.0))]);
        bike.parts.get_mut("bulbs").unwrap().state = PartState::Ordered;
        assert_eq!(listed(&bike).iter().map(|each| each.part.as_str()).collect::<Vec<_>>(), ["liner"]);
    }
}
