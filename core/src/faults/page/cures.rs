//! What a search points at, as work: each cure with the job for it.

use layshaft_wire::wire;

use super::searched::{case_of, search_of};
use super::state::SearchState;
use crate::error::Refused;
use crate::faults::case::{Suspect, TroubleCase};
use crate::faults::message::FaultsMessage;
use crate::message::Message;
use crate::record::{Bike, JobLink, JobReason, job_for};

/// A cure that the answers point at.
#[wire]
pub struct CureOffer {
    /// The first suspect of the case that it puts right, by its id: it names the cure.
    pub suspect: String,
    /// What puts it right.
    pub cure: Message,
    /// The job for it, where there is one.
    pub job: Option<JobLink>,
}

/// The work on a suspect.
#[derive(Clone, Debug, PartialEq)]
pub struct CureWork {
    /// What puts it right.
    pub cure: Message,
    /// The ready-made job, by its id, that this is.
    pub ready_made: Option<String>,
    /// Hands-on time, minutes: judgement.
    pub minutes: f64,
    /// A caution at the work.
    pub caution: Option<String>,
}

/// The cures that a search points at now: the one that it has settled on, else those to try, in their order.
pub(super) fn cure_offers(bike: &Bike, search: &str, case: &TroubleCase, state: &SearchState) -> Vec<CureOffer> {
    let cures: Vec<&Message> = match &state.settled {
        Some(settled) => vec![&settled.cure],
        None => state.try_in_order.iter().collect(),
    };
    let offer = |cure: &Message| {
        let suspect = case.suspects.iter().find(|suspect| suspect.cure == *cure)?.id.clone();
        let reason = JobReason::Fault { search: search.to_owned(), suspect: suspect.clone() };
        Some(CureOffer { suspect, cure: cure.clone(), job: job_for(&bike.jobs, &reason) })
    };
    cures.into_iter().filter_map(offer).collect()
}

/// The work on a suspect of a search of the bike.
///
/// ```
/// use layshaft_core::faults::{cure_work, started};
/// use layshaft_core::record::{Bike, Trouble};
/// let mut bike = Bike::default();
/// let trouble = Trouble::Table { table: "brake-lever-spongy".to_owned() };
/// bike.searches.insert("s".to_owned(), started(&bike, &trouble, 5).unwrap());
/// assert_eq!(cure_work(&bike, "s", "air").unwrap().ready_made.as_deref(), Some("brake-bleed"));
/// assert!(cure_work(&bike, "s", "mood").is_err());
/// ```
pub fn cure_work(bike: &Bike, search: &str, suspect: &str) -> Result<CureWork, Refused> {
    let case = case_of(bike, search_of(bike, search)?)?;
    let found = case.suspects.into_iter().find(|known| known.id == suspect);
    let unknown = || Refused::Unknown { what: FaultsMessage::WhatSuspect.into(), id: suspect.to_owned() };
    let Suspect { cure, job, try_minutes, caution, .. } = found.ok_or_else(unknown)?;
    let caution = caution.and_then(|caution| caution.entered().map(str::to_owned));
    Ok(CureWork { cure, ready_made: job, minutes: try_minutes, caution })
}
