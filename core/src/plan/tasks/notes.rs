//! What is worth saying of the needs of jobs: what is assumed, what is late, what is not known.

use super::task::Task;
use super::waits::WaitRule;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{BenchTime, Bike, Job, JobState, Part, PartState};
use crate::time::{Day, Moment};

pub(crate) fn note_part_day(part: &Part, day: Day, moment: &Moment, findings: &mut Vec<Finding>) {
    let today = moment.zone.day_at(moment.at_ms());
    let mut add = |code: FindingCode, text: String| {
        let finding = Finding::new(code, Weight::Care, text);
        if !findings.contains(&finding) {
            findings.push(finding);
        }
    };
    if day < today {
        add(
            FindingCode::PlanPartLate,
            format!(
                "“{}” should have come on {} and is not here. The plan counts on tomorrow; ask the seller.",
                part.title,
                day.spoken()
            ),
        );
    }
    if part.state == PartState::Wanted {
        add(
            FindingCode::PlanPartNotOrdered,
            format!("“{}” is counted on for {} but is not ordered yet.", part.title, day.spoken()),
        );
    }
}

pub(crate) fn assumed_bench_time(bench_time: &BenchTime, findings: &mut Vec<Finding>) {
    if !bench_time.said() {
        findings.push(Finding::new(
            FindingCode::PlanAssumedBenchTime,
            Weight::Note,
            format!("No bench time is set. The plan assumes {}.", crate::record::ASSUMED_WORDS),
        ));
    }
}

pub(crate) fn assumed_helper(bike: &Bike, findings: &mut Vec<Finding>) {
    let asks = |job: &&Job| job.state != JobState::Done && job.helper == Some(true);
    if bike.bench_time.helper.is_none()
        && let Some(job) = bike.jobs.values().find(asks)
    {
        let text = format!(
            "“{}” takes two pairs of hands, and when a helper comes is not set: the plan assumes that one comes when wanted.",
            job.title
        );
        findings.push(Finding::new(FindingCode::PlanAssumedHelper, Weight::Note, text));
    }
}

pub(crate) fn unknown_wait(task: &Task, findings: &mut Vec<Finding>) {
    if let (WaitRule::Unknown, Some(wait)) = (&task.wait, &task.job.wait) {
        findings.push(Finding::new(
            FindingCode::PlanWaitUnknown,
            Weight::Care,
            format!(
                "How long “{}” takes after “{}” is not known: give its hours, or a product with its full cure. What \
                 follows cannot be planned.",
                wait.name, task.job.title
            ),
        ));
    }
}
