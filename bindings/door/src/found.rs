//! What was found and is to be put right: what it is called, and the work on it. The areas of the trade say both.

use layshaft_core::error::{Code, Refusal};
use layshaft_core::faults::{cure_work, trouble_name};
use layshaft_core::inspection::{Item, packs};
use layshaft_core::message::Message;
use layshaft_core::ready_made::{OfferState, ReadyMade, job_offers};
use layshaft_core::record::{Bike, JobReason, Step};

use crate::bench::unknown;
use crate::message::DoorMessage;

/// What was found, as work.
pub(crate) struct Work {
    /// What a job for it is called, where nobody gives it a name.
    pub title: Message,
    /// The ready-made job that puts it right on this bike.
    pub ready_made: Option<ReadyMade>,
    /// Hands-on time where no ready-made job is known, minutes.
    pub minutes: Option<f64>,
    /// How to see that it is right again.
    pub proof: Option<Step>,
}

/// The work on what was found, or why it cannot be.
pub(crate) fn work_on(bike: &Bike, reason: &JobReason) -> Result<Work, Refusal> {
    match reason {
        JobReason::Item { pack, item } => {
            let Item { title, how, job, caution, .. } = item_of(pack, item)?;
            let proof = Some(Step { text: how, caution, ..Step::default() });
            Ok(Work { title: Message::as_entered(title), ready_made: suiting(bike, job), minutes: None, proof })
        }
        JobReason::Fault { search, suspect } => {
            let work = cure_work(bike, search, suspect)?;
            let ready_made = suiting(bike, work.ready_made);
            Ok(Work { title: work.cure, ready_made, minutes: Some(work.minutes), proof: None })
        }
    }
}

/// What was found, in words, as the job that puts it right names it.
pub(crate) fn name_of(bike: &Bike, reason: &JobReason) -> Option<Message> {
    match reason {
        JobReason::Item { pack, item } => Some(Message::as_entered(item_of(pack, item).ok()?.title)),
        JobReason::Fault { search, .. } => Some(trouble_name(bike.searches.get(search)?)),
    }
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
