//! What holds the ready date: the way back from the date, through all that each step had to wait for.

use super::critical_chain::Ended;
use crate::message::{Duration, Message};
use crate::plan::hours::HoursAsked;
use crate::plan::message::{PlanDateMessage, PlanWaitMessage};
use crate::plan::search::{Placement, Problem, Timetable, last_over};
use crate::plan::tasks::{Needs, ReleaseCause, Running, Task, missing};
use crate::quantity::FindingCode;
use crate::record::{Bike, JobState, WorkSpot};
use crate::time::{Moment, Zone};

/// A stretch of the way from now to the ready date.
#[derive(Clone, Debug, PartialEq)]
enum Stretch {
    /// Something passes without hands.
    Wait { name: Message, title: String, until_ms: i64, long_ms: i64 },
    /// A part is on its way.
    Parcel { title: String, until_ms: i64, long_ms: i64 },
    /// A job waits for hours of its kind, while there is other bench time.
    Hours { title: String, kind: HoursAsked, long_ms: i64 },
}

/// When waits, parcels and hours of a kind on the way take this share of it, the longest of them is named; else bench time
/// is. A choice of ours.
const TELLING_SHARE: f64 = 1.0 / 3.0;

/// What holds the date, in one or two sentences.
pub(crate) fn held_by(
    bike: &Bike,
    moment: &Moment,
    needs: &Needs,
    problem: &Problem,
    plan: &Timetable,
    ready_ms: Option<i64>,
) -> Message {
    let now_ms = moment.at_ms();
    if bike.jobs.is_empty() {
        return PlanDateMessage::NoJobs.into();
    }
    let Some(ready_ms) = ready_ms else { return no_date(needs, plan) };
    if needs.tasks.is_empty() && ready_ms <= now_ms {
        return PlanDateMessage::AllDone.into();
    }
    let way = way_back(needs, problem, plan, now_ms);
    let waited_ms: i64 = way.iter().map(Stretch::long_ms).sum();
    let longest = way.iter().max_by_key(|stretch| stretch.long_ms());
    match longest {
        Some(longest) if waited_ms as f64 >= TELLING_SHARE * (ready_ms - now_ms) as f64 => {
            longest.said(&moment.zone, waits_for_parcel(bike), waits_for_cure(needs, now_ms))
        }
        _ => {
            let work = Duration::ms(needs.tasks.iter().map(|task| task.work_ms).sum());
            let week = Duration::hours(bike.bench_time.weekly_hours());
            PlanDateMessage::BenchTimeHolds { work, week }.into()
        }
    }
}

fn no_date(needs: &Needs, plan: &Timetable) -> Message {
    if let Some(finding) = needs.findings.iter().find(|finding| BARS_THE_DATE.contains(&finding.code)) {
        return PlanDateMessage::NoDateBecause { finding: finding.text.clone() }.into();
    }
    match plan.iter().filter(|placed| placed.is_none()).count() {
        0 => PlanDateMessage::NoDate.into(),
        jobs => PlanDateMessage::NoDateNoRoom { jobs }.into(),
    }
}

/// Findings for which there is no date.
const BARS_THE_DATE: [FindingCode; 8] = [
    FindingCode::PlanCircle,
    FindingCode::PlanPartWithoutDay,
    FindingCode::PlanWaitUnknown,
    FindingCode::PlanWaitWithoutEnd,
    FindingCode::PlanNoOwnTime,
    FindingCode::PlanNoStretch,
    FindingCode::PlanLimitNeverKept,
    FindingCode::PlanLimitMissed,
];

impl Stretch {
    fn long_ms(&self) -> i64 {
        match self {
            Stretch::Wait { long_ms, .. } | Stretch::Parcel { long_ms, .. } | Stretch::Hours { long_ms, .. } => {
                *long_ms
            }
        }
    }

    /// What it is; whether a parcel is waited for as well, and whether anything cures.
    fn said(&self, zone: &Zone, parcels: bool, waits: bool) -> Message {
        let said = match self {
            Stretch::Wait { name, title, until_ms, .. } => {
                let (title, wait, until) = (title.clone(), name.clone(), zone.local_time(*until_ms));
                PlanDateMessage::WaitHolds { title, wait, until, parcels }
            }
            Stretch::Parcel { title, until_ms, .. } => {
                PlanDateMessage::ParcelHolds { part: title.clone(), day: zone.day_at(*until_ms), waits }
            }
            Stretch::Hours { title, kind, .. } => {
                PlanDateMessage::HoursHold { job: title.clone(), asked: kind.asked() }
            }
        };
        said.into()
    }
}

/// The waits and parcels that the date hangs on, from the last to the first.
fn way_back(needs: &Needs, problem: &Problem, plan: &Timetable, now_ms: i64) -> Vec<Stretch> {
    let mut way = Vec::new();
    let last = last_over(plan);
    let last_ms = last.and_then(|place| plan.get(place)?.as_ref()?.over_ms);
    if let Some(running) = needs.running.iter().filter(|wait| wait.over_ms > last_ms).max_by_key(|wait| wait.over_ms) {
        way.extend(of_running(running, now_ms));
        return way;
    }
    let ended = Ended::of(plan);
    let mut at = last;
    while let Some((place, placed)) = at.and_then(|place| Some((place, plan.get(place)?.as_ref()?))) {
        let Some(task) = problem.tasks.get(place) else { break };
        if let (Some(over_ms), Some(wait)) = (placed.over_ms.filter(|over_ms| *over_ms > placed.end_ms), &task.job.wait)
        {
            way.push(Stretch::Wait {
                name: Message::as_entered(&wait.name),
                title: task.job.title.clone(),
                until_ms: over_ms,
                long_ms: over_ms - placed.end_ms,
            });
        }
        let release_ms = problem.release_ms(place, plan).unwrap_or(now_ms);
        let bench = problem.axes.axis(task.kind);
        let idle = bench.place_of(release_ms) < bench.place_of(placed.begin_ms);
        let left = problem.spot_left_by(place, plan).filter(|(left_ms, _)| *left_ms > release_ms);
        let left = left.filter(|(left_ms, _)| problem.begins_at(plan, place, *left_ms));
        if let Some((spot, (left_ms, other))) = left.and_then(|left| Some((problem.spot_shared(place, left.1)?, left)))
        {
            way.extend(of_spot(problem, plan, spot, other, left_ms));
            at = Some(other);
            continue;
        }
        let before = problem.done_just_before(plan, &ended, place).filter(|_| idle);
        let before_ms = before.and_then(|before| plan.get(before)?.as_ref()).map(|before| before.end_ms);
        way.extend(of_hours(problem, task, placed, before_ms.unwrap_or(release_ms)));
        if before.is_some() {
            at = before;
            continue;
        }
        let over_of = |need: usize| plan.get(need).and_then(Option::as_ref).and_then(|placed| placed.over_ms);
        at = task.after.iter().copied().find(|need| over_of(*need) == Some(release_ms));
        if at.is_none() {
            way.extend(of_holder(&task.set_by, needs, release_ms, now_ms));
        }
    }
    way
}

/// How much later the task ends than it would from an instant on, if all bench time did for it.
fn of_hours(problem: &Problem, task: &Task, placed: &Placement, from_ms: i64) -> Option<Stretch> {
    let whole = problem.axes.whole();
    let long_ms = placed.end_ms - whole.end_ms(whole.place_of(from_ms) + task.work_ms)?;
    let waits = !task.kind.asks_nothing() && task.work_ms > 0 && long_ms > 0;
    waits.then(|| Stretch::Hours { title: task.job.title.clone(), kind: task.kind, long_ms })
}

/// How long a spot stays taken after the work of the task that took it before.
fn of_spot(problem: &Problem, plan: &Timetable, spot: WorkSpot, other: usize, left_ms: i64) -> Option<Stretch> {
    let (task, placed) = (problem.tasks.get(other)?, plan.get(other)?.as_ref()?);
    let (name, title) = (PlanWaitMessage::SpotIsTaken { spot }.into(), task.job.title.clone());
    Some(Stretch::Wait { name, title, until_ms: left_ms, long_ms: left_ms - placed.end_ms })
}

fn of_holder(holder: &ReleaseCause, needs: &Needs, until_ms: i64, now_ms: i64) -> Option<Stretch> {
    match holder {
        ReleaseCause::Now => None,
        ReleaseCause::Part(title) => {
            Some(Stretch::Parcel { title: title.clone(), until_ms, long_ms: until_ms - now_ms })
        }
        ReleaseCause::Spot(spot, title) => Some(Stretch::Wait {
            name: PlanWaitMessage::SpotIsTaken { spot: *spot }.into(),
            title: title.clone(),
            until_ms,
            long_ms: until_ms - now_ms,
        }),
        ReleaseCause::Coat(title) => Some(Stretch::Wait {
            name: PlanWaitMessage::NextCoatWaits.into(),
            title: title.clone(),
            until_ms,
            long_ms: until_ms - now_ms,
        }),
        ReleaseCause::Wait(id) => of_running(needs.running.iter().find(|wait| wait.id == *id)?, now_ms),
    }
}

fn of_running(running: &Running, now_ms: i64) -> Option<Stretch> {
    let until_ms = running.over_ms?;
    let (name, title) = (running.name.clone()?, running.title.clone());
    Some(Stretch::Wait { name, title, until_ms, long_ms: until_ms - now_ms })
}

fn waits_for_parcel(bike: &Bike) -> bool {
    let open = bike.jobs.values().filter(|job| job.state != JobState::Done);
    open.flat_map(|job| &job.parts).filter_map(|id| bike.parts.get(id)).any(missing)
}

fn waits_for_cure(needs: &Needs, now_ms: i64) -> bool {
    needs.tasks.iter().any(|task| task.job.wait.is_some())
        || needs.running.iter().any(|wait| wait.over_ms.is_some_and(|over_ms| over_ms > now_ms))
}
