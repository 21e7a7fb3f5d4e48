//! The page that the app opens with, from the schedule of the bike.

use layshaft_wire::wire;

use super::message::TodayMessage;
use super::next::{NextJob, next_jobs};
use super::not_said::{NotSaid, not_said};
use crate::bounds;
use crate::coating::{CureAnswer, ProcessAnswer, running_cures, running_processes};
use crate::error::Refused;
use crate::events::{Due, since};
use crate::inspection::{InspectionAsk, Readiness, Verdict, inspection_answer};
use crate::message::Message;
use crate::plan::{Arrival, Scheduled, arrival};
use crate::record::{Bike, JobState, Part, PartState};
use crate::time::Moment;

/// What to answer for.
#[wire(lenient)]
pub struct TodayAsk {
    /// Minutes at hand; left out: 60.
    pub minutes_at_hand: Option<f64>,
    /// When the app was last open, milliseconds since 1970 (UTC); left out: nothing is said of what came about since.
    pub last_seen_ms: Option<i64>,
}

/// A part on its way.
#[wire]
pub struct PartDue {
    /// Id.
    pub id: String,
    /// The part.
    pub part: Part,
    /// When it comes.
    pub arrival: Option<Arrival>,
}

/// The page that the app opens with.
#[wire]
pub struct TodayAnswer {
    /// Name of the bike.
    pub bike: String,
    /// When everything is done and every wait is over; none when it cannot be planned.
    pub ready_ms: Option<i64>,
    /// What holds the date, in one sentence.
    pub held_by: Message,
    /// Jobs that can be done now, best first.
    pub next: Vec<NextJob>,
    /// Running cures, the next to end first.
    pub cures: Vec<CureAnswer>,
    /// Paint jobs in several coats that run.
    pub processes: Vec<ProcessAnswer>,
    /// What came about by itself since the app was last open, earliest first.
    pub while_away: Vec<Due>,
    /// Parts on their way.
    pub parts_due: Vec<PartDue>,
    /// The inspection as of today.
    pub readiness: Readiness,
    /// What nobody has said yet, in the order in which it helps.
    pub not_said: Vec<NotSaid>,
    /// Jobs done and in all.
    pub jobs_done: u32,
    /// All jobs.
    pub jobs: u32,
}

/// Minutes at hand when nothing is said.
const USUAL_MINUTES: f64 = 60.0;

/// Everything for the page that the app opens with, from the schedule of the bike.
pub fn today_answer(
    bike: &Bike,
    ask: &TodayAsk,
    moment: &Moment,
    scheduled: &Scheduled,
) -> Result<TodayAnswer, Refused> {
    let minutes_at_hand = bounds::TIME_AT_HAND.check(ask.minutes_at_hand.unwrap_or(USUAL_MINUTES))?;
    let Scheduled { rows, ready_ms, held_by, .. } = scheduled;
    Ok(TodayAnswer {
        bike: bike.identity.name.clone(),
        ready_ms: *ready_ms,
        held_by: held_by.clone(),
        next: next_jobs(bike, moment, rows, minutes_at_hand),
        cures: running_cures(bike, moment),
        processes: running_processes(bike, moment),
        while_away: ask.last_seen_ms.map(|seen_ms| since(bike, rows, seen_ms, moment)).unwrap_or_default(),
        parts_due: parts_due(bike, moment),
        readiness: readiness_today(bike),
        not_said: not_said(bike),
        jobs_done: rows.iter().map(|row| u32::from(row.state == JobState::Done)).sum(),
        jobs: u32::try_from(rows.len()).unwrap_or(u32::MAX),
    })
}

/// Parts that are ordered, the first to come first; those without a day last.
fn parts_due(bike: &Bike, moment: &Moment) -> Vec<PartDue> {
    let mut due: Vec<PartDue> = bike
        .parts
        .iter()
        .filter(|(_, part)| part.state == PartState::Ordered)
        .map(|(id, part)| PartDue { id: id.clone(), part: part.clone(), arrival: arrival(part, moment) })
        .collect();
    due.sort_by_key(|due| (due.arrival.is_none(), due.arrival.as_ref().map(|arrival| arrival.likely.clone())));
    due
}

/// Readiness against the bike's own pack. Where there is no such pack nothing is known, and that is no pass.
fn readiness_today(bike: &Bike) -> Readiness {
    match inspection_answer(bike, &InspectionAsk::default()) {
        Ok(sheet) => sheet.readiness,
        Err(refused) => Readiness {
            verdict: Verdict::Unknown,
            passes: 0,
            fails: 0,
            unknowns: 0,
            does_not_apply: 0,
            stoppers: Vec::new(),
            sentence: TodayMessage::InspectionUnknown { refused: refused.message() }.into(),
        },
    }
}
