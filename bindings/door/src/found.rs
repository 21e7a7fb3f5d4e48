//! What was found and is to be put right: what it is called, and the work on it. The areas of the trade say both.

use layshaft_core::error::{Code, Refusal};
use layshaft_core::faults::{cure_work, trouble_name};
use layshaft_core::inspection::{Item, packs};
use layshaft_core::message::Message;
use layshaft_core::plan::arrival;
use layshaft_core::ready_made::{OfferState, ReadyMade, Remedy, WorkKind, end_named, job_offers, last_steps, remedy};
use layshaft_core::record::{Bike, ChangeKind, JobLink, JobReason, JobState, Part, PartState, Step, job_for};
use layshaft_core::ripple::{change_job, change_name};
use layshaft_core::time::Moment;

use crate::bench::unknown;
use crate::message::DoorMessage;
use crate::query::{FoundCard, FoundPart, PhotosOf};

/// What was found, as work.
pub(crate) struct Work {
    /// What a job for it is called, where nobody gives it a name.
    pub title: Message,
    /// The ready-made job that puts it right on this bike.
    pub ready_made: Option<ReadyMade>,
    /// Hands-on time where no ready-made job is known, minutes.
    pub minutes: Option<f64>,
    /// The steps of a plain job: how to see that it is right again.
    pub proof: Vec<Step>,
}

/// The work on what was found, or why it cannot be.
pub(crate) fn work_on(bike: &Bike, reason: &JobReason) -> Result<Work, Refusal> {
    match reason {
        JobReason::Item { pack, item } => {
            let Item { title, how, job, caution, .. } = item_of(pack, item)?;
            let proof = vec![Step { text: how, caution, ..Step::default() }];
            Ok(Work { title: Message::as_entered(title), ready_made: suiting(bike, job), minutes: None, proof })
        }
        JobReason::Fault { search, suspect } => {
            let work = cure_work(bike, search, suspect)?;
            let ready_made = suiting(bike, work.ready_made);
            let step = |cure: &str| Step { text: cure.to_owned(), caution: work.caution.clone(), ..Step::default() };
            let proof = work.cure.entered().map(step).into_iter().collect();
            Ok(Work { title: work.cure, ready_made, minutes: Some(work.minutes), proof })
        }
        JobReason::Finding { code, slot } => {
            let none = || unknown(DoorMessage::WhatFinding, code.as_str());
            let Remedy { name, ready_made, brake, .. } = remedy(*code, end_named(slot.as_deref())).ok_or_else(none)?;
            Ok(worked_on(bike, name, ready_made, brake))
        }
        JobReason::Change { change, slot } => {
            let slot = slot.as_deref();
            let none = || unknown(DoorMessage::WhatChange, slot.unwrap_or_default());
            let name = change_name(bike, *change, slot).ok_or_else(none)?;
            Ok(worked_on(bike, name, change_job(bike, *change, slot), *change == ChangeKind::Brake))
        }
    }
}

/// Work that goes by its name. A plain job on a brake ends with the tests that every job on a brake ends with.
fn worked_on(bike: &Bike, title: Message, ready_made: Option<&str>, brake: bool) -> Work {
    let proof = if brake { last_steps(&[WorkKind::Brake]) } else { Vec::new() };
    Work { title, ready_made: suiting(bike, ready_made.map(str::to_owned)), minutes: None, proof }
}

/// What was found, in words, as the job that puts it right names it.
pub(crate) fn name_of(bike: &Bike, reason: &JobReason) -> Option<Message> {
    match reason {
        JobReason::Item { pack, item } => Some(Message::as_entered(item_of(pack, item).ok()?.title)),
        JobReason::Fault { search, .. } => Some(trouble_name(bike.searches.get(search)?)),
        JobReason::Finding { code, slot } => Some(remedy(*code, end_named(slot.as_deref()))?.name),
        JobReason::Change { change, slot } => change_name(bike, *change, slot.as_deref()),
    }
}

/// The parts, by their ids, that are on the list for what was found.
pub(crate) fn parts_for(bike: &Bike, reason: &JobReason) -> Vec<String> {
    let wanted = |part: &Part| part.state != PartState::Fitted && part.reasons.iter().any(|own| own.same_as(reason));
    bike.parts.iter().filter(|(_, part)| wanted(part)).map(|(id, _)| id.clone()).collect()
}

/// What came of what was found; none where no work follows from it.
pub(crate) fn found(bike: &Bike, reason: &JobReason, moment: &Moment) -> Option<FoundCard> {
    let name = name_of(bike, reason)?;
    let job = job_for(&bike.jobs, reason);
    let again = to_be_taken_again(bike, reason, job.as_ref());
    let card = |id: String| {
        let part = bike.parts.get(&id)?;
        let Part { title, size, state, .. } = part.clone();
        Some(FoundPart { part: id, title, size, state, arrival: arrival(part, moment) })
    };
    let parts = parts_for(bike, reason).into_iter().filter_map(card).collect();
    Some(FoundCard { reason: reason.clone(), name, job, again, parts, photos: photos_of(reason) })
}

/// Whether the job on a finding is done, and nobody has taken the reading since that shows it. An item asks for itself.
fn to_be_taken_again(bike: &Bike, reason: &JobReason, job: Option<&JobLink>) -> bool {
    let JobReason::Finding { code, slot } = reason else { return false };
    let reading = remedy(*code, end_named(slot.as_deref())).and_then(|remedy| remedy.reading);
    let taken = bike.readings.values().filter(|taken| Some(taken.what.as_str()) == reading);
    let taken_ms = taken.filter_map(|reading| reading.taken_ms).max();
    let done = job.filter(|job| job.state == JobState::Done);
    done.and_then(|job| job.done_ms).is_some_and(|done_ms| taken_ms.is_none_or(|taken_ms| taken_ms < done_ms))
}

/// Under what the photos of what was found are kept: an item has its own.
fn photos_of(reason: &JobReason) -> PhotosOf {
    let with = |mark: String, slot: &Option<String>| match slot {
        Some(slot) => format!("{mark}/{slot}"),
        None => mark,
    };
    let (of_kind, of) = match reason {
        JobReason::Item { pack, item } => ("answer", format!("{pack}/{item}")),
        JobReason::Fault { search, .. } => ("faultSearch", search.clone()),
        JobReason::Finding { code, slot } => ("finding", with(code.as_str().to_owned(), slot)),
        JobReason::Change { change, slot } => ("change", with(change.wire_name().to_owned(), slot)),
    };
    PhotosOf { of_kind: of_kind.to_owned(), of }
}

/// An item of an inspection.
pub(crate) fn item_of(pack: &str, item: &str) -> Result<Item, Refusal> {
    let known = packs().into_iter().find(|known| known.id == pack);
    let items = known.ok_or_else(|| unknown(DoorMessage::WhatPack, pack))?.items;
    items.into_iter().find(|known| known.id == item).ok_or_else(|| unknown(DoorMessage::WhatItem, item))
}

/// A ready-made job, if it is known to suit the bike. What is not known is no reason to take it: it may be the wrong kind of brake.
fn suiting(bike: &Bike, id: Option<String>) -> Option<ReadyMade> {
    let id = id?;
    let offer = job_offers(bike).into_iter().find(|offer| offer.ready_made.id == id)?;
    let suits = offer.state != OfferState::Unsuited && offer.why.is_none();
    suits.then_some(offer.ready_made)
}

/// The refusal of a job that has no name of its own.
pub(crate) fn nameless() -> Refusal {
    Refusal { field: Some("title".to_owned()), ..Refusal::new(Code::Missing, DoorMessage::JobNeedsTitle) }
}
