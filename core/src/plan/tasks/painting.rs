//! Paint jobs that run coat by coat, as the plan sees them: the next coat has its window, the coats after it need their
//! time, and what follows waits for the last of them. Where the window closes unused, the plan sands first.

use super::running::{Running, endless};
use super::task::{ReleaseCause, SANDING_MS, Task};
use super::waits::WaitRule;
use crate::coating::{CoatsToCome, ProcessAnswer, ProcessState, unfinished_processes};
use crate::message::{Duration, ListStyle, Message};
use crate::plan::message::{PlanFindingMessage, PlanWaitMessage};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Bike, JobState};
use crate::time::Moment;

/// A paint job that runs, or that waits for its job to begin.
#[derive(Clone, Debug)]
pub(crate) struct Painting {
    /// Id of the process.
    pub(crate) id: String,
    /// On what.
    pub(crate) title: String,
    /// The job that it belongs to, where the bike has it.
    pub(crate) job: Option<String>,
    /// When all of it is cured, each coat laid as early as it may; none when that cannot be known.
    pub(crate) cured_ms: Option<i64>,
    /// What is still to be laid; none when everything is on.
    pub(crate) next: Option<NextCoat>,
    /// It waits for its job to begin.
    stands_by: bool,
}

/// The coats that are to come.
#[derive(Clone, Debug)]
pub(crate) struct NextCoat {
    /// From when on the next may go on: not before now.
    pub(crate) from_ms: i64,
    /// When its window opens or has opened; none when nothing is below it.
    opens_ms: Option<i64>,
    /// Until when, without sanding.
    pub(crate) until_ms: Option<i64>,
    /// Its window closed unused, and the coat below is not sanded yet.
    pub(crate) sand_first: bool,
    /// All that are to come.
    coats: CoatsToCome,
}

/// The paint jobs that are not cured yet.
pub(crate) fn paintings(bike: &Bike, moment: &Moment) -> Vec<Painting> {
    let open = unfinished_processes(bike, moment).into_iter();
    open.filter_map(|sheet| Painting::of(sheet, bike, moment.at_ms())).collect()
}

impl Painting {
    fn of(sheet: ProcessAnswer, bike: &Bike, now_ms: i64) -> Option<Painting> {
        let id = sheet.id.clone()?;
        let next = sheet.steps.iter().find(|step| step.next).map(|step| NextCoat {
            from_ms: step.from_ms.unwrap_or(now_ms).max(now_ms),
            opens_ms: step.from_ms,
            until_ms: step.until_ms,
            sand_first: sheet.state == ProcessState::SandFirst,
            coats: CoatsToCome::of(bike, &id, &sheet.process),
        });
        let stands_by = sheet.stands_by(bike);
        let job = sheet.process.job.filter(|job| bike.jobs.contains_key(job));
        // A job that was put away took its coats along.
        let away = stands_by && job.is_none();
        let painting = Painting { id, title: sheet.process.title, job, cured_ms: sheet.cured_ms, next, stands_by };
        Some(painting).filter(|_| !away)
    }

    /// Its name among the waits that run.
    pub(crate) fn running_id(&self) -> String {
        format!("process {}", self.id)
    }

    /// As a wait that runs: the ready date never comes before it. None while it waits for its job.
    pub(crate) fn running(&self, findings: &mut Vec<Finding>) -> Option<Running> {
        if self.stands_by {
            return None;
        }
        let name =
            Message::from(if self.next.is_some() { PlanWaitMessage::CoatsToCome } else { PlanWaitMessage::CoatsCure });
        if self.cured_ms.is_none() {
            findings.push(endless(name.clone(), &self.title));
        }
        let (id, title, over_ms) = (self.running_id(), self.title.clone(), self.cured_ms);
        Some(Running { id, name: Some(name), title, over_ms, closes_ms: None })
    }

    /// What it asks of its job that is not done: the next coat in its window, the last one cured.
    pub(crate) fn holds(&self, task: &mut Task, moment: &Moment, findings: &mut Vec<Finding>) {
        let Some(next) = &self.next else {
            task.wait = self.cured_ms.map_or(WaitRule::Unknown, WaitRule::Until);
            return;
        };
        task.fixed_ms = task.fixed_ms.max(next.from_ms);
        if let Some(opens_ms) = next.opens_ms {
            task.wait_for(opens_ms, ReleaseCause::Coat(self.title.clone()));
        }
        let never = self.cured_ms.is_none() && !self.stands_by;
        task.wait = if never { WaitRule::Unknown } else { WaitRule::Coats(Box::new(next.coats.clone()), task.work_ms) };
        let still_open = next.until_ms.filter(|until_ms| *until_ms >= moment.at_ms());
        if let Some(until_ms) = still_open {
            task.begin_by_ms = Some(task.begin_by_ms.map_or(until_ms, |by_ms| by_ms.min(until_ms)));
        }
        if next.sand_first {
            task.sands();
            findings.push(sand_first(PlanFindingMessage::WindowClosed { painting: self.title.clone() }, task));
        }
    }
}

/// Lets the plan sand first where no plan reaches the window of the next coat; whether there is such a task.
pub(crate) fn give_up_windows(
    tasks: &mut [Task],
    missed: &[bool],
    paintings: &[Painting],
    moment: &Moment,
    findings: &mut Vec<Finding>,
) -> bool {
    let mut given_up = false;
    for (task, _) in tasks.iter_mut().zip(missed).filter(|(_, missed)| **missed) {
        let own = paintings.iter().find(|painting| painting.job.as_deref() == Some(task.id));
        let Some((painting, until_ms)) = own.zip(own.and_then(|own| own.next.as_ref()?.until_ms)) else { continue };
        // A time limit of another job that runs out earlier is no window of paint.
        if task.begin_by_ms != Some(until_ms) {
            continue;
        }
        task.begin_by_ms = None;
        task.sands();
        let (painting, closes) = (painting.title.clone(), moment.zone.local_time(until_ms));
        findings.push(sand_first(PlanFindingMessage::WindowNotReached { painting, closes }, task));
        given_up = true;
    }
    given_up
}

fn sand_first(why: PlanFindingMessage, task: &Task) -> Finding {
    let what = PlanFindingMessage::SandFirst { job: task.job.title.clone(), more: Duration::ms(SANDING_MS) };
    let text = Message::joined(ListStyle::Sentences, vec![why.into(), what.into()]);
    Finding::new(FindingCode::PlanSandFirst, Weight::Care, text)
}

/// The paint job that belongs to a job that is done, though coats are still to come or to cure.
pub(crate) fn of_done<'a>(bike: &Bike, job: &str, paintings: &'a [Painting]) -> Option<&'a Painting> {
    let done = bike.jobs.get(job).is_some_and(|job| job.state == JobState::Done);
    paintings.iter().find(|painting| done && painting.job.as_deref() == Some(job))
}
