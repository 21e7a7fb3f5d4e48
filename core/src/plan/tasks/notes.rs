//! What is worth saying of the needs of jobs: what is assumed, what is late, what is not known.

use super::task::Task;
use super::waits::WaitRule;
use crate::plan::message::PlanFindingMessage;
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{BenchTime, Bike, Job, JobState, Part, PartState};
use crate::time::{Day, Moment};

pub(crate) fn note_part_day(part: &Part, day: Day, moment: &Moment, findings: &mut Vec<Finding>) {
    let today = moment.zone.day_at(moment.at_ms());
    let title = || part.title.clone();
    let mut add = |code: FindingCode, text: PlanFindingMessage| {
        let finding = Finding::new(code, Weight::Care, text);
        if !findings.contains(&finding) {
            findings.push(finding);
        }
    };
    if day < today {
        add(FindingCode::PlanPartLate, PlanFindingMessage::PartLate { part: title(), day });
    }
    if part.state == PartState::Wanted {
        add(FindingCode::PlanPartNotOrdered, PlanFindingMessage::PartNotOrdered { part: title(), day });
    }
}

pub(crate) fn assumed_bench_time(bench_time: &BenchTime, findings: &mut Vec<Finding>) {
    if !bench_time.said() {
        findings.push(Finding::new(
            FindingCode::PlanAssumedBenchTime,
            Weight::Note,
            PlanFindingMessage::AssumedBenchTime,
        ));
    }
}

pub(crate) fn assumed_helper(bike: &Bike, findings: &mut Vec<Finding>) {
    let asks = |job: &&Job| job.state != JobState::Done && job.helper == Some(true);
    if bike.bench_time.helper.is_none()
        && let Some(job) = bike.jobs.values().find(asks)
    {
        let text = PlanFindingMessage::AssumedHelper { job: job.title.clone() };
        findings.push(Finding::new(FindingCode::PlanAssumedHelper, Weight::Note, text));
    }
}

pub(crate) fn unknown_wait(task: &Task, findings: &mut Vec<Finding>) {
    if let (WaitRule::Unknown, Some(wait)) = (&task.wait, &task.job.wait) {
        let text = PlanFindingMessage::WaitUnknown { wait: wait.name.clone(), job: task.job.title.clone() };
        findings.push(Finding::new(FindingCode::PlanWaitUnknown, Weight::Care, text));
    }
}
