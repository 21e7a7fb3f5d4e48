//! The waits that run already: from jobs that are done, from coats that belong to no job, from paint jobs.

use super::Running;
use super::limits::at_most_ms;
use super::painting::{Painting, of_done};
use super::running::endless;
use super::waits::{Clockwork, WaitRule};
use crate::message::Message;
use crate::plan::message::{PlanFindingMessage, PlanWaitMessage};
use crate::quantity::{Finding, FindingCode, Weight};
use crate::record::{Bike, Coat, JobState};

/// Waits after jobs that are done, and coats that cure without a job.
pub(crate) fn running_waits(
    bike: &Bike,
    now_ms: i64,
    clockwork: &Clockwork,
    paintings: &[Painting],
    findings: &mut Vec<Finding>,
) -> Vec<Running> {
    let mut running = Vec::new();
    for (id, job) in bike.jobs.iter().filter(|(_, job)| job.state == JobState::Done) {
        let on: Vec<&Coat> = bike.coats.values().filter(|coat| coat.job.as_deref() == Some(id)).collect();
        let rule = WaitRule::of(job.wait.as_ref(), bike);
        let last_coat_ms = on.iter().map(|coat| coat.applied_ms).max();
        let ended_ms = last_coat_ms.or(job.done_ms).unwrap_or(now_ms);
        let closes_ms = at_most_ms(job).map(|at_most_ms| ended_ms.saturating_add(at_most_ms));
        let last = on.iter().max_by_key(|coat| coat.applied_ms);
        let over_ms = if last.is_some() {
            let ends: Option<Vec<i64>> = on.iter().map(|coat| clockwork.coat_over_ms(coat)).collect();
            ends.and_then(|ends| ends.into_iter().max())
        } else {
            if job.done_ms.is_none() && rule != WaitRule::None {
                let text = PlanFindingMessage::DoneWithoutDay { job: job.title.clone() };
                findings.push(Finding::new(FindingCode::PlanDoneWithoutDay, Weight::Care, text));
            }
            clockwork.over_ms(&rule, job.done_ms.unwrap_or(now_ms))
        };
        let painting = of_done(bike, id, paintings);
        let own = job.wait.as_ref().map(|wait| Message::as_entered(&wait.name));
        let name = own
            .or_else(|| last.map(|coat| cures(&coat.title)))
            .or_else(|| painting.map(|_| PlanWaitMessage::CoatsCure.into()));
        let over_ms = match painting {
            Some(painting) => painting.cured_ms.zip(over_ms).map(|(cured_ms, over_ms)| cured_ms.max(over_ms)),
            None => over_ms,
        };
        if let (None, Some(name)) = (over_ms, &name) {
            findings.push(endless(name.clone(), &job.title));
        }
        running.push(Running { id: id.clone(), name, title: job.title.clone(), over_ms, closes_ms });
    }
    let of_painting = |coat: &Coat| paintings.iter().any(|painting| coat.process.as_ref() == Some(&painting.id));
    let without_job =
        |coat: &Coat| coat.job.as_ref().is_none_or(|job| !bike.jobs.contains_key(job)) && !of_painting(coat);
    for (id, coat) in bike.coats.iter().filter(|(_, coat)| without_job(coat)) {
        let over_ms = clockwork.coat_over_ms(coat);
        if over_ms.is_none() {
            findings.push(endless(Message::as_entered(&coat.product.name), &coat.title));
        }
        let name = Some(cures(&coat.product.name));
        let (id, title) = (format!("coat {id}"), coat.title.clone());
        running.push(Running { id, name, title, over_ms, closes_ms: None });
    }
    running.extend(paintings.iter().filter_map(|painting| painting.running(findings)));
    running
}

fn cures(what: &str) -> Message {
    PlanWaitMessage::Cures { what: what.to_owned() }.into()
}
