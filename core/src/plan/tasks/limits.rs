//! Time limits: what follows a job may have to begin within so many hours after its work, as the next coat inside its
//! recoat window. The job is put off until what follows can begin in time (see `search::serial`).

use super::task::Task;
use super::waits::hours_ms;
use crate::bounds;
use crate::plan::message::PlanFindingMessage;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Job, JobState};
use crate::time::{Moment, Zone};

/// Within how long after the work of a job what follows must begin, milliseconds; none without a limit.
pub(crate) fn at_most_ms(job: &Job) -> Option<i64> {
    let hours = job.wait.as_ref()?.at_most_hours?;
    bounds::AT_MOST_HOURS.check(hours).ok().map(hours_ms)
}

/// Links each task to the limits of those that it follows. What is begun has kept its limit.
pub(crate) fn link_limits(tasks: &mut [Task]) {
    let limits: Vec<Option<i64>> = tasks.iter().map(|task| at_most_ms(task.job)).collect();
    let limit_of = |need: usize| limits.get(need).copied().flatten();
    let mut limiting = Vec::new();
    for task in tasks.iter_mut().filter(|task| task.job.state == JobState::Open) {
        task.within = task.after.iter().filter_map(|&need| Some((need, limit_of(need)?))).collect();
        limiting.extend(task.within.iter().map(|(need, _)| *need));
    }
    for need in limiting {
        if let Some(task) = tasks.get_mut(need) {
            task.limits = true;
        }
    }
    // Between two limits a job would otherwise have to begin early and end late: it is done in one go.
    for task in tasks.iter_mut() {
        task.in_one_go |= task.limits && (!task.within.is_empty() || task.begin_by_ms.is_some());
    }
}

/// The limit passed before what follows began.
pub(crate) fn limit_passed(job: &Job, before: &str, closes_ms: i64, zone: &Zone) -> Finding {
    let (job, before, by) = (job.title.clone(), before.to_owned(), zone.local_time(closes_ms));
    Finding::new(FindingCode::PlanLimitPassed, Weight::Care, PlanFindingMessage::LimitPassed { job, before, by })
}

/// The limit runs, and what follows finds no place in it.
pub(crate) fn limit_missed(task: &Task, moment: &Moment) -> Option<Finding> {
    let (job, by) = (task.job.title.clone(), moment.zone.local_time(task.begin_by_ms?));
    Some(Finding::new(FindingCode::PlanLimitMissed, Weight::Care, PlanFindingMessage::LimitMissed { job, by }))
}
