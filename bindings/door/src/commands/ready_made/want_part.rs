//! The part for what was found goes on the list, and the job for it waits for it.

use layshaft_core::changes::{Edit, edits};
use layshaft_core::check::cut_to_title;
use layshaft_core::error::{Refusal, Refused};
use layshaft_core::message::{List, ListStyle};
use layshaft_core::record::{Delivery, Job, JobState, Part, PartState, job_for};

use super::placing::with_size;
use crate::Bench;
use crate::act::{Act, Call};
use crate::command::WantPart;
use crate::commands::change;
use crate::found::{Work, nameless, parts_for, work_on};
use crate::message::DoorMessage;
use crate::write::Writing;

impl Act for WantPart {
    fn write(&self, bench: &Bench, call: &Call) -> Result<Writing, Refusal> {
        bench.open_bike_id()?;
        let work = work_on(&bench.bike, &self.reason)?;
        if let Some(there) = parts_for(&bench.bike, &self.reason).first().and_then(|id| bench.bike.parts.get(id)) {
            let reason = DoorMessage::PartWantedAlready { part: there.title.clone() }.into();
            return Err(Refused::Conflict { field: "reason".to_owned(), reason }.into());
        }
        let wanted = self.wanted(bench, call, work)?;
        let told = wanted.iter().map(|(_, part)| with_size(part)).collect();
        let mut writing: Vec<Edit> = Vec::new();
        for (id, part) in &wanted {
            writing.extend(edits(id, part, bench.record::<Part>(id).ok().as_ref()));
        }
        if let Some(open) = job_for(&bench.bike.jobs, &self.reason).filter(|job| job.state != JobState::Done) {
            let ids: Vec<String> = wanted.iter().map(|(id, _)| id.clone()).collect();
            writing.extend(change(bench, &open.job, |job: Job| {
                let new = ids.into_iter().filter(|id| !job.parts.contains(id)).collect();
                Job { parts: [job.parts, new].concat(), ..job }
            })?);
        }
        let notes = vec![DoorMessage::PartsWanted { parts: List(ListStyle::And, told) }.into()];
        let made = wanted.first().map_or(call.id, |(id, _)| id.as_str());
        Ok(Writing { notes, ..Writing::making(made, writing) })
    }
}

impl WantPart {
    /// The parts with their ids: of those on the list the one that is not fitted, else a new one.
    fn wanted(&self, bench: &Bench, call: &Call, work: Work) -> Result<Vec<(String, Part)>, Refusal> {
        let needs = work.ready_made.map(|ready| ready.needs).unwrap_or_default();
        let needs: Vec<_> = needs.into_iter().filter(|need| !need.is_idle_on(&bench.bike)).collect();
        let mut new: Vec<(String, Part)> =
            needs.iter().map(|need| (format!("{}-{}", call.id, need.id), need.part(&bench.bike))).collect();
        if new.is_empty() {
            let named = || work.title.entered().map(str::to_owned);
            let title = cut_to_title(&self.title.clone().or_else(named).ok_or_else(nameless)?);
            new.push((call.id.to_owned(), Part { title, delivery: Some(Delivery::usual()), ..Part::default() }));
        }
        let linked = |(id, part): (String, Part)| {
            let same = |there: &Part| there.title == part.title && there.state != PartState::Fitted;
            let there = bench.bike.parts.iter().find(|(_, there)| same(there));
            let (id, part) = there.map_or((id, part.clone()), |(id, there)| (id.clone(), there.clone()));
            let reasons = [part.reasons, vec![self.reason.clone()]].concat();
            Ok((id, Part { reasons, ..part }.checked()?))
        };
        new.into_iter().map(linked).collect()
    }
}
