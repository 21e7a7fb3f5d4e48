//! Each job as a row of the plan: its work on the calendar, its wait, what it waits for, and its slack.

use std::cmp::Ordering;

use super::row::PlanRow;
use super::slack::{Latest, latest};
use crate::message::Message;
use crate::plan::hours::WorkSpan;
use crate::plan::message::PlanWaitMessage;
use crate::plan::search::{Placement, Problem, Timetable};
use crate::plan::tasks::{Needs, Running, Takes, minutes_left, missing};
use crate::record::{Bike, Job, JobState};
use crate::time::HOUR_MS;

/// The rows: jobs in the order of their dates, then those that cannot be planned, then those that are done.
pub(crate) fn rows(
    bike: &Bike,
    now_ms: i64,
    needs: &Needs,
    problem: &Problem,
    plan: &Timetable,
    ready_ms: Option<i64>,
) -> Vec<PlanRow> {
    let late = ready_ms.map(|ready_ms| latest(problem, plan, ready_ms)).unwrap_or_default();
    let mut rows: Vec<(Key, PlanRow)> = bike
        .jobs
        .iter()
        .map(|(id, job)| {
            let mut row = bare(bike, id, job, needs, now_ms);
            let place = needs.tasks.iter().position(|task| task.id == id);
            let mut begins_ms = None;
            let placed = place.and_then(|place| Some((place, plan.get(place)?.as_ref()?)));
            if let Some((place, placed)) = placed {
                row.work = work(problem, place, placed);
                row.begin_by_ms = begin_by_ms(problem, place, plan);
                row.wait_until_ms = placed.over_ms.filter(|over_ms| *over_ms > placed.end_ms);
                begins_ms = Some(row.work.first().map_or(placed.end_ms, |span| span.from_ms));
            }
            if let Some(late) = place.and_then(|place| *late.get(place)?) {
                row.slack_hours = Some(late.slack_hours);
                row.critical = late.critical;
            }
            if let (Some(ready_ms), Some(running)) = (ready_ms, needs.running.iter().find(|wait| wait.id == *id)) {
                slack_of_running(&mut row, running, now_ms, problem, &late, ready_ms);
            }
            let group = if job.state == JobState::Done { 2 } else { u8::from(begins_ms.is_none()) };
            (Key { group, at_ms: begins_ms.or(job.done_ms), rank: job.rank }, row)
        })
        .collect();
    rows.sort_by(|(a, _), (b, _)| a.compare(b));
    rows.into_iter().map(|(_, row)| row).collect()
}

/// The work of a task on the calendar.
fn work(problem: &Problem, place: usize, placed: &Placement) -> Vec<WorkSpan> {
    let task = problem.tasks.get(place).filter(|task| task.work_ms > 0);
    task.map(|task| problem.axes.axis(task.kind).work_between(placed.begin_ms, placed.end_ms)).unwrap_or_default()
}

/// When a task must begin, so that no time limit after what it follows passes.
fn begin_by_ms(problem: &Problem, place: usize, plan: &Timetable) -> Option<i64> {
    let task = problem.tasks.get(place)?;
    let limits =
        task.within.iter().filter_map(|(need, at_most_ms)| Some(plan.get(*need)?.as_ref()?.end_ms + at_most_ms));
    limits.chain(task.begin_by_ms).min()
}

/// What rows are sorted by; rows that are equal in it stay in the order of their ids.
struct Key {
    group: u8,
    at_ms: Option<i64>,
    rank: f64,
}

impl Key {
    fn compare(&self, other: &Key) -> Ordering {
        (self.group, self.at_ms).cmp(&(other.group, other.at_ms)).then(self.rank.total_cmp(&other.rank))
    }
}

/// A row without dates.
fn bare(bike: &Bike, id: &str, job: &Job, needs: &Needs, now_ms: i64) -> PlanRow {
    let done = job.state == JobState::Done;
    let running = needs.running.iter().find(|wait| wait.id == id);
    PlanRow {
        job: id.to_owned(),
        title: job.title.clone(),
        stage: job.stage,
        state: job.state,
        minutes_left: minutes_left(job),
        work: Vec::new(),
        wait_until_ms: running.and_then(|wait| wait.over_ms).filter(|over_ms| Some(*over_ms) > job.done_ms),
        wait_name: job
            .wait
            .as_ref()
            .map(|wait| Message::as_entered(&wait.name))
            .or_else(|| running?.name.clone())
            .or_else(|| needs.painting_of(id).map(|_| PlanWaitMessage::CoatsCure.into())),
        critical: false,
        critical_share: None,
        slack_hours: None,
        begin_by_ms: None,
        blocked_by: if done { Vec::new() } else { blocked_by(bike, (id, job), needs, now_ms) },
        after: job.after.clone(),
    }
}

/// What a job waits for now, by name: jobs that are not done, waits that still run, parts that are not here.
fn blocked_by(bike: &Bike, (id, job): (&str, &Job), needs: &Needs, now_ms: i64) -> Vec<Message> {
    let mut names = Vec::new();
    if needs.coat_below(id).is_some_and(|next| next.from_ms > now_ms) {
        names.push(PlanWaitMessage::CoatBelowDries.into());
    }
    let takes = Takes::of(job);
    for (spot, title, _) in needs.taken.iter().filter(|(_, _, until_ms)| *until_ms > now_ms) {
        if takes.each().any(|(own, _)| own == *spot) {
            names.push(PlanWaitMessage::SpotTakenBy { spot: *spot, job: (*title).to_owned() }.into());
        }
    }
    for need in &job.after {
        match bike.jobs.get(need) {
            Some(before) if before.state != JobState::Done => names.push(Message::as_entered(&before.title)),
            Some(before) => {
                let running = needs.running.iter().find(|wait| wait.id == *need);
                if let Some(wait) = running.filter(|wait| wait.over_ms.is_none_or(|over_ms| over_ms > now_ms)) {
                    names.push(wait_after(&before.title, wait));
                }
            }
            None => {}
        }
    }
    names.extend(
        job.parts
            .iter()
            .filter_map(|id| bike.parts.get(id))
            .filter(|part| missing(part))
            .map(|part| Message::as_entered(&part.title)),
    );
    names
}

fn wait_after(job: &str, running: &Running) -> Message {
    match running.name.clone() {
        Some(wait) => PlanWaitMessage::WaitAfter { job: job.to_owned(), wait }.into(),
        None => Message::as_entered(job),
    }
}

/// A wait that runs already has slack too: until the first task that follows has to begin.
fn slack_of_running(
    row: &mut PlanRow,
    running: &Running,
    now_ms: i64,
    problem: &Problem,
    late: &[Option<Latest>],
    ready_ms: i64,
) {
    let Some(over_ms) = running.over_ms.filter(|over_ms| *over_ms > now_ms) else { return };
    let followers = problem.tasks.iter().zip(late).filter(|(task, _)| task.job.after.contains(&running.id));
    let first_ms = followers.filter_map(|(_, late)| late.map(|late| late.begin_ms)).min();
    let latest_ms = first_ms.unwrap_or(ready_ms).min(ready_ms);
    row.slack_hours = Some((latest_ms - over_ms) as f64 / HOUR_MS as f64);
    row.critical = problem.axes.whole().within_one_sitting(over_ms, latest_ms);
}
