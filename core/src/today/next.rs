//! The jobs that can be done now, the best first, each with why.

use std::cmp::Reverse;

use layshaft_wire::wire;

use super::message::TodayMessage;
use crate::message::{List, ListStyle, Message};
use crate::plan::{PlanRow, air_needed};
use crate::record::{Bike, Job, JobPlace, JobState};
use crate::time::Moment;

/// A job that can be done now.
#[wire]
pub struct NextJob {
    /// Id of the job.
    pub job: String,
    /// Title.
    pub title: String,
    /// Hands-on minutes left.
    pub minutes_left: f64,
    /// It fits into the time at hand.
    pub fits: bool,
    /// Why this one, in a few words.
    pub why: Message,
    /// Jobs that it frees.
    pub frees: u32,
    /// It holds the ready date: left undone at the next bench time, it would move it.
    pub critical: bool,
}

/// Jobs that nothing stands in the way of, best first: those that fit the time before those that do not; of these the
/// ones that hold the date, then those that free most others, then as planned.
pub(crate) fn next_jobs(bike: &Bike, moment: &Moment, rows: &[PlanRow], minutes_at_hand: f64) -> Vec<NextJob> {
    let sitting_ends_ms = bike.bench_time.next_ends_ms(moment);
    let planned_next = |row: &PlanRow| row.work.first().is_none_or(|span| Some(span.from_ms) < sitting_ends_ms);
    let free = rows.iter().filter(|row| row.state != JobState::Done && row.blocked_by.is_empty());
    let mut next: Vec<NextJob> = free
        .map(|row| {
            let (fits, frees) = (row.minutes_left <= minutes_at_hand, frees(rows, &row.job));
            let critical = row.critical && planned_next(row);
            let why = why(bike, row, fits, frees, critical);
            let (job, title, minutes_left) = (row.job.clone(), row.title.clone(), row.minutes_left);
            NextJob { job, title, minutes_left, fits, why, frees, critical }
        })
        .collect();
    next.sort_by_key(|job| Reverse((job.fits, job.critical, job.frees)));
    next
}

/// How many jobs have this one as the last that is not done before them.
fn frees(rows: &[PlanRow], mark: &str) -> u32 {
    let open = |need: &str| rows.iter().any(|row| row.job == need && row.state != JobState::Done);
    let freed = rows.iter().filter(|row| row.state != JobState::Done && row.after.iter().any(|need| need == mark));
    freed.map(|row| u32::from(row.after.iter().all(|need| need == mark || !open(need)))).sum()
}

/// Why this job, in a few words: at most two reasons.
fn why(bike: &Bike, row: &PlanRow, fits: bool, frees: u32, critical: bool) -> Message {
    let mut reasons: Vec<TodayMessage> = Vec::new();
    let mut add = |reason, holds: bool| reasons.extend(holds.then_some(reason));
    let job = bike.jobs.get(&row.job);
    add(TodayMessage::LongerThanTime, !fits);
    if let Some(asked) = job.and_then(asks) {
        add(TodayMessage::Needs { asked }, true);
    }
    add(TodayMessage::HoldsDate, critical);
    add(TodayMessage::Frees { jobs: frees }, frees > 0);
    add(TodayMessage::BegunAlready, row.state == JobState::Begun);
    if let Some(wait) = row.wait_name.clone() {
        add(TodayMessage::ThenTimeWorks { wait }, true);
    }
    let parts = job.is_some_and(|job| job.parts.iter().any(|part| bike.parts.contains_key(part)));
    add(TodayMessage::PartsHere, parts);
    if reasons.is_empty() {
        reasons.push(TodayMessage::NothingInTheWay);
    }
    reasons.truncate(2);
    Message::joined(ListStyle::Comma, reasons.into_iter().map(Message::from).collect())
}

/// What a job asks of the hour in which it is done.
fn asks(job: &Job) -> Option<List> {
    let place = match job.place {
        Some(JobPlace::Daylight) => Some(TodayMessage::Daylight),
        Some(JobPlace::SprayPlace) => Some(TodayMessage::SprayPlaceInDaylight),
        Some(JobPlace::Bench) | None => None,
    };
    let helper = job.helper.filter(|asks| *asks).map(|_| TodayMessage::Helper);
    let of_hour = place.into_iter().chain(helper).map(Message::from);
    let asked: Vec<Message> = of_hour.chain(air_needed(job.air.as_ref())).collect();
    (!asked.is_empty()).then_some(List(ListStyle::And, asked))
}
