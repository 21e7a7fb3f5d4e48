//! What comes about by itself: coats that come to a state, waits that end, parts that should arrive.
//!
//! One list serves both sides of now: what is still to come becomes alarms, what has passed is said on return.

use layshaft_wire::wire;

use super::message::{EventMessage, EventsMessage};
use crate::changes::Record;
use crate::coating::{CureAnswer, CureAsk, cure_answer};
use crate::message::Message;
use crate::plan::PlanRow;
use crate::record::{Bike, Coat, CureState, Job, JobState, Part, PartState};
use crate::time::Moment;

/// What comes about.
#[wire]
pub enum DueKind {
    /// A coat is dry to the touch.
    TouchDry,
    /// A coat may be recoated.
    RecoatOpen,
    /// A recoat window closes unused.
    RecoatShut,
    /// A coat may be handled.
    Handle,
    /// A coat is fully cured.
    Cured,
    /// A wait after a job is over.
    WaitOver,
    /// A part should arrive.
    PartExpected,
}

/// Something that comes about by itself.
#[wire]
pub struct Due {
    /// When, milliseconds since 1970 (UTC).
    pub at_ms: i64,
    /// What.
    pub due: DueKind,
    /// What tells it from every other, also in a calendar that took it in before.
    pub id: String,
    /// On what: the title of the coat, the job or the part.
    pub title: String,
    /// On what and what, in a few words.
    pub summary: Message,
    /// What holds from then on.
    pub text: Message,
    /// Kind of the record: `coat`, `job` or `part`.
    pub record_kind: String,
    /// The record's id.
    pub record: String,
}

/// The record that something comes about on: its kind, its id, its title.
type On<'a> = (&'static str, &'a str, &'a str);

impl Due {
    fn new(bike: &Bike, (kind, record, title): On<'_>, (at_ms, due): (i64, DueKind), text: EventsMessage) -> Self {
        Self {
            at_ms,
            due,
            id: format!("{kind}-{record}-{}@{}.layshaft.invalid", due.code(), bike.id),
            title: title.to_owned(),
            summary: due.summary(title.to_owned()),
            text: text.into(),
            record_kind: kind.to_owned(),
            record: record.to_owned(),
        }
    }
}

impl DueKind {
    /// As it stands in the id. A calendar that took an event in knows it again by this, so none may ever change.
    fn code(self) -> &'static str {
        match self {
            Self::TouchDry => "touchdry",
            Self::RecoatOpen => "recoatopen",
            Self::RecoatShut => "recoatshut",
            Self::Handle => "handle",
            Self::Cured => "cured",
            Self::WaitOver => "waitover",
            Self::PartExpected => "partexpected",
        }
    }

    fn summary(self, title: String) -> Message {
        let said = match self {
            Self::TouchDry => EventMessage::TouchDry { title },
            Self::RecoatOpen => EventMessage::RecoatOpen { title },
            Self::RecoatShut => EventMessage::RecoatShut { title },
            Self::Handle => EventMessage::Handle { title },
            Self::Cured => EventMessage::Cured { title },
            Self::WaitOver => EventMessage::WaitOver { title },
            Self::PartExpected => EventMessage::PartExpected { title },
        };
        said.into()
    }
}

/// Local time of day at which a part is said to be expected: 8 in the morning, minutes after midnight.
const MORNING: u32 = 8 * 60;

/// Everything that comes about by itself, past and to come, earliest first.
pub fn dues(bike: &Bike, rows: &[PlanRow], moment: &Moment) -> Vec<Due> {
    let mut dues = of_coats(bike, moment);
    dues.extend(of_waits(bike, rows));
    dues.extend(of_parts(bike, moment));
    dues.sort_by(|one, two| (one.at_ms, &one.record, one.due).cmp(&(two.at_ms, &two.record, two.due)));
    dues
}

/// What came about after one moment and up to now, earliest first.
pub fn since(bike: &Bike, rows: &[PlanRow], seen_ms: i64, moment: &Moment) -> Vec<Due> {
    dues(bike, rows, moment).into_iter().filter(|due| due.at_ms > seen_ms && due.at_ms <= moment.now_ms).collect()
}

fn of_coats(bike: &Bike, moment: &Moment) -> Vec<Due> {
    let sheet = |id: &String| cure_answer(bike, &CureAsk { coat: Some(id.clone()), ..CureAsk::default() }, moment).ok();
    let coats = bike.coats.iter().filter_map(|(id, coat)| Some((id, coat, sheet(id)?)));
    coats
        .flat_map(|(id, coat, sheet)| {
            let topmost = is_topmost(bike, coat.process.as_deref(), coat.step);
            let ended_ms = coat.ended_ms.unwrap_or(i64::MAX);
            milestones(&sheet, topmost)
                .into_iter()
                .filter(move |(when, _)| when.0 < ended_ms)
                .map(move |(when, text)| Due::new(bike, (Coat::KIND, id, &coat.title), when, text))
        })
        .collect()
}

/// Whether nothing is painted over this coat any more, so that its window is nobody's business.
fn is_topmost(bike: &Bike, process: Option<&str>, step: Option<u32>) -> bool {
    let process = process.and_then(|id| bike.processes.get(id));
    process.zip(step).is_some_and(|(process, step)| !process.paint_follows(step))
}

fn milestones(sheet: &CureAnswer, topmost: bool) -> Vec<((i64, DueKind), EventsMessage)> {
    let of = |state| {
        let product = sheet.product.name.clone();
        match state {
            CureState::Wet => None,
            CureState::TouchDry => Some((DueKind::TouchDry, EventsMessage::TouchDry { product })),
            CureState::RecoatOpen => Some((DueKind::RecoatOpen, EventsMessage::RecoatOpen { product })),
            CureState::RecoatShut => Some((DueKind::RecoatShut, EventsMessage::RecoatShut { product })),
            CureState::Handle => Some((DueKind::Handle, EventsMessage::Handle { product })),
            CureState::Cured => Some((DueKind::Cured, EventsMessage::Cured { product })),
        }
    };
    let matters = |due: DueKind| !topmost || !matches!(due, DueKind::RecoatOpen | DueKind::RecoatShut);
    let milestones = sheet.milestones.iter().filter_map(|milestone| of(milestone.state).zip(milestone.due_ms));
    milestones.filter(|((due, _), _)| matters(*due)).map(|((due, text), at_ms)| ((at_ms, due), text)).collect()
}

/// Waits of jobs that are done. Where a coat belongs to the job, the coat says it.
fn of_waits(bike: &Bike, rows: &[PlanRow]) -> Vec<Due> {
    let has_coat = |job: &str| bike.coats.values().any(|coat| coat.job.as_deref() == Some(job));
    let done = rows.iter().filter(|row| row.state == JobState::Done && !has_coat(&row.job));
    done.filter_map(|row| {
        let text = match row.wait_name.clone() {
            Some(wait) => EventsMessage::WaitOver { wait },
            None => EventsMessage::AWaitOver,
        };
        Some(Due::new(bike, (Job::KIND, &row.job, &row.title), (row.wait_until_ms?, DueKind::WaitOver), text))
    })
    .collect()
}

/// Parts that are ordered and have a day.
fn of_parts(bike: &Bike, moment: &Moment) -> Vec<Due> {
    let ordered = bike.parts.iter().filter(|(_, part)| part.state == PartState::Ordered);
    ordered
        .filter_map(|(id, part)| {
            let at_ms = moment.zone.instant_on(part.expected.as_deref()?, MORNING)?;
            let when = (at_ms, DueKind::PartExpected);
            Some(Due::new(bike, (Part::KIND, id, &part.title), when, EventsMessage::PartExpected))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::schedule;
    use crate::plan::tests::example::{bike, done, job, part, tuesday_noon, waiting};
    use crate::ready_made::typical_product;
    use crate::record::Place;

    const HOUR: i64 = 3_600_000;

    fn example() -> Bike {
        let noon_ms = tuesday_noon().now_ms;
        let mut bike = bike(vec![done(waiting(job("Charge", 0.5, &[]), "battery rests", 15.0), noon_ms - 2 * HOUR)]);
        bike.place = Place { night_celsius: Some(20.0), day_celsius: Some(20.0), humidity: None };
        bike.parts.insert("kit".to_owned(), part("Chain kit", PartState::Ordered, Some("2026-03-26")));
        bike.parts.insert("here".to_owned(), part("Seal kit", PartState::Here, Some("2026-03-26")));
        let coat = |id: &str| Coat {
            title: "Side panel".to_owned(),
            product: typical_product(id).unwrap(),
            applied_ms: noon_ms,
            ..Coat::default()
        };
        bike.coats.insert("panel".to_owned(), coat("colour"));
        bike
    }

    fn later(hours: i64) -> Moment {
        Moment { now_ms: tuesday_noon().now_ms + hours * HOUR, ..tuesday_noon() }
    }

    fn kinds(dues: &[Due]) -> Vec<DueKind> {
        dues.iter().map(|due| due.due).collect()
    }

    fn came(bike: &Bike, seen: i64, now: i64) -> Vec<Due> {
        let moment = later(now);
        since(bike, &schedule(bike, &moment).rows, later(seen).now_ms, &moment)
    }

    #[test]
    fn what_came_about_while_away_is_told_once_in_order() {
        let bike = example();
        use DueKind::{Handle, PartExpected, RecoatOpen, RecoatShut, TouchDry, WaitOver};
        assert_eq!(kinds(&came(&bike, 0, 48)), [TouchDry, RecoatOpen, Handle, WaitOver, RecoatShut, PartExpected]);
        let halves = [came(&bike, 0, 12), came(&bike, 12, 48)].concat();
        assert_eq!(kinds(&halves), kinds(&came(&bike, 0, 48)));
        assert!(came(&bike, 48, 48).is_empty());
        assert!(came(&bike, 0, 1).iter().all(|due| due.at_ms <= later(1).now_ms));
    }

    #[test]
    fn a_calendar_knows_an_event_again_by_the_id_that_it_always_had() {
        let bike = Bike { id: "orrin".to_owned(), ..Bike::default() };
        let ids = [
            (DueKind::TouchDry, "coat-mark-1-touchdry@orrin.layshaft.invalid"),
            (DueKind::RecoatOpen, "coat-mark-1-recoatopen@orrin.layshaft.invalid"),
            (DueKind::RecoatShut, "coat-mark-1-recoatshut@orrin.layshaft.invalid"),
            (DueKind::Handle, "coat-mark-1-handle@orrin.layshaft.invalid"),
            (DueKind::Cured, "coat-mark-1-cured@orrin.layshaft.invalid"),
            (DueKind::WaitOver, "coat-mark-1-waitover@orrin.layshaft.invalid"),
            (DueKind::PartExpected, "coat-mark-1-partexpected@orrin.layshaft.invalid"),
        ];
        for (kind, id) in ids {
            let due = Due::new(&bike, (Coat::KIND, "mark-1", "x"), (1, kind), EventsMessage::PartExpected);
            assert_eq!(due.id, id);
        }
    }

    #[test]
    fn a_coat_that_was_recoated_has_no_more_to_say_from_then_on() {
        let mut bike = example();
        bike.coats.get_mut("panel").unwrap().ended_ms = Some(later(2).now_ms);
        let of_coat: Vec<Due> = came(&bike, 0, 500).into_iter().filter(|due| due.record_kind == "coat").collect();
        assert_eq!(kinds(&of_coat), [DueKind::TouchDry, DueKind::RecoatOpen]);
    }

    #[test]
    fn a_wait_whose_coat_speaks_for_it_is_not_said_twice() {
        let mut bike = example();
        bike.coats.get_mut("panel").unwrap().job = Some("Charge".to_owned());
        assert!(!kinds(&came(&bike, 0, 500)).contains(&DueKind::WaitOver));
    }
}
