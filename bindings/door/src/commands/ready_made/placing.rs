//! Where a ready-made job stands among the jobs of a bike: behind what must come first, before what must come later.

use std::collections::BTreeMap;

use layshaft_core::changes::{Edit, edits};
use layshaft_core::coating::process_plan;
use layshaft_core::error::Refusal;
use layshaft_core::message::{List, ListStyle, Message};
use layshaft_core::ready_made::ReadyMade;
use layshaft_core::record::{Bike, Job, JobState, Part, PartState, Process};

use crate::Bench;
use crate::commands::change;
use crate::commands::jobs::{follows, last_rank};
use crate::message::DoorMessage;

/// The jobs of a bike with those that are being added.
pub(super) struct Placing<'a> {
    bike: &'a Bike,
    known: &'a [ReadyMade],
    /// Parts that the new jobs ask for and that the bike has not.
    parts: Vec<(String, Part)>,
    jobs: BTreeMap<String, Job>,
    /// The coats of the new jobs, each with its id and that of its job.
    coats: Vec<(String, Process)>,
    added: Vec<String>,
    /// What each job that was there comes to follow.
    behind: BTreeMap<String, Vec<String>>,
}

impl<'a> Placing<'a> {
    pub(super) fn among(bike: &'a Bike, known: &'a [ReadyMade]) -> Self {
        let (jobs, parts) = (bike.jobs.clone(), Vec::new());
        Self { bike, known, parts, jobs, coats: Vec::new(), added: Vec::new(), behind: BTreeMap::new() }
    }

    /// Adds a job. What has to come later follows it from now on, unless the owner turned the order round: nothing comes
    /// to follow itself.
    pub(super) fn add(&mut self, id: String, found: &ReadyMade) {
        let after = self.made_from(|other| other.comes_before(found));
        let later = self.made_from(|other| found.comes_before(other)).into_iter().filter(|mark| {
            let open = self.jobs.get(mark).is_some_and(|job| job.state == JobState::Open);
            open && !after.iter().any(|before| follows(&self.jobs, before, mark))
        });
        for mark in later.collect::<Vec<_>>() {
            if let Some(job) = self.jobs.get_mut(&mark) {
                job.after.push(id.clone());
            }
            if !self.added.contains(&mark) {
                self.behind.entry(mark).or_default().push(id.clone());
            }
        }
        let mut parts = found.job.parts.clone();
        parts.extend(self.parts_for(&id, found));
        let job = Job { rank: last_rank(&self.jobs), after, parts, ..found.job.clone() };
        self.jobs.insert(id.clone(), job);
        if let Some(plan) = found.coats.first().and_then(|plan| process_plan(plan)) {
            self.lay(format!("{id}-coats"), Process { job: Some(id.clone()), ..plan });
        }
        self.added.push(id);
    }

    /// Says in which coats a new job is done; those that came with it go.
    pub(super) fn lay(&mut self, id: String, process: Process) {
        self.coats.retain(|(_, other)| other.job != process.job);
        self.coats.push((id, process));
    }

    /// The parts that a job asks for, by their ids: one that is on the list and not fitted yet, else a new one.
    fn parts_for(&mut self, id: &str, found: &ReadyMade) -> Vec<String> {
        let mut ids = Vec::new();
        for need in found.needs.iter().filter(|need| !need.is_idle_on(self.bike)) {
            let same = |part: &Part| part.title == need.title && part.state != PartState::Fitted;
            let listed = self.bike.parts.iter().chain(self.parts.iter().map(|(id, part)| (id, part)));
            let there = { listed }.find(|(_, part)| same(part)).map(|(id, _)| id.clone());
            if there.as_ref().is_some_and(|there| found.job.parts.contains(there)) {
                continue;
            }
            ids.push(there.unwrap_or_else(|| {
                let new = format!("{id}-{}", need.id);
                let reasons = found.job.reasons.clone();
                self.parts.push((new.clone(), Part { reasons, ..need.part(self.bike) }));
                new
            }));
        }
        ids
    }

    /// The jobs of the bike that were made from such ready-made ones.
    fn made_from(&self, such: impl Fn(&ReadyMade) -> bool) -> Vec<String> {
        let origin = |job: &Job| self.known.iter().find(|ready| job.ready_made.as_ref() == Some(&ready.id));
        let found = self.jobs.iter().filter(|(_, job)| origin(job).is_some_and(&such));
        found.map(|(id, _)| id.clone()).collect()
    }

    /// What was linked to jobs that were there before, in words.
    pub(super) fn notes(&self) -> Vec<Message> {
        let mut notes: Vec<Message> = Vec::new();
        let there = |id: &&String| !self.added.contains(id);
        if let [only] = self.added.as_slice() {
            let before: Vec<&String> =
                self.jobs.get(only).into_iter().flat_map(|job| &job.after).filter(there).collect();
            notes.extend(self.now_follows(only, &before));
        } else {
            let mut before: Vec<&String> =
                self.added.iter().filter_map(|id| self.jobs.get(id)).flat_map(|job| &job.after).filter(there).collect();
            before.sort();
            before.dedup();
            if !before.is_empty() {
                notes.push(DoorMessage::PackageFollows { before: self.titles(&before) }.into());
            }
        }
        let behind = self.behind.iter();
        notes.extend(behind.filter_map(|(id, before)| self.now_follows(id, &before.iter().collect::<Vec<_>>())));
        if !self.parts.is_empty() {
            let titles = self.parts.iter().map(|(_, part)| with_size(part));
            notes.push(DoorMessage::PartsWanted { parts: List(ListStyle::And, titles.collect()) }.into());
        }
        notes
    }

    fn now_follows(&self, id: &str, before: &[&String]) -> Option<Message> {
        let job = self.jobs.get(id).filter(|_| !before.is_empty())?;
        Some(DoorMessage::FollowsNow { job: job.title.clone(), before: self.titles(before) }.into())
    }

    fn titles(&self, ids: &[&String]) -> List {
        let titles = ids.iter().filter_map(|id| self.jobs.get(*id)).map(|job| Message::as_entered(&job.title));
        List(ListStyle::And, titles.collect())
    }

    /// The facts: each new job, and the order of those that were there.
    pub(super) fn edits(self, bench: &Bench) -> Result<Vec<Edit>, Refusal> {
        let new = self.added.iter().filter_map(|id| Some((id, self.jobs.get(id)?)));
        let mut writing: Vec<Edit> = new.flat_map(|(id, job)| edits(id, job, None)).collect();
        for (id, process) in &self.coats {
            writing.extend(edits(id, &process.clone().checked()?, None));
        }
        for (id, part) in &self.parts {
            writing.extend(edits(id, &part.clone().checked()?, None));
        }
        for (id, before) in self.behind {
            writing.extend(change(bench, &id, |job: Job| Job { after: [job.after, before].concat(), ..job })?);
        }
        Ok(writing)
    }
}

/// A part as a note names it, with its size where that is known.
pub(super) fn with_size(part: &Part) -> Message {
    match &part.size {
        Some(size) => DoorMessage::PartWithSize { part: part.title.clone(), size: size.clone() }.into(),
        None => Message::as_entered(&part.title),
    }
}
