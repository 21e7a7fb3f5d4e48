//! A search for a fault that is kept with the bike: begun, answered, taken back step by step, ended.

use layshaft_wire::wire;

use super::cures::{CureOffer, cure_offers};
use super::offers::{TroubleOffer, offers};
use super::searched::{case_of, search_of, trouble_name};
use super::state::{SearchState, standing};
use crate::check;
use crate::error::Refused;
use crate::faults::message::FaultsMessage;
use crate::message::Message;
use crate::record::{Bike, Evidence, FaultClosing, FaultSearch, JobLink, JobReason, Trouble, jobs_with};

/// Which search; left out: the newest that is open.
#[wire(lenient)]
pub struct FaultAsk {
    /// Its id.
    pub search: Option<String>,
}

/// A search in a list.
#[wire]
pub struct SearchCard {
    /// Its id.
    pub search: String,
    /// What is wrong, in words.
    pub name: Message,
    /// Answers so far.
    pub answers: u32,
    /// When it began, milliseconds since 1970 (UTC), where it is known.
    pub started_ms: Option<i64>,
    /// How it ended; none while it is open.
    pub closing: Option<FaultClosing>,
    /// What was learned.
    pub learned: Option<String>,
    /// The jobs that came of it.
    pub jobs: Vec<JobLink>,
}

/// The page of the search.
#[wire]
pub struct FaultAnswer {
    /// What can be searched.
    pub offers: Vec<TroubleOffer>,
    /// The searches, newest first.
    pub searches: Vec<SearchCard>,
    /// Id of the one that is shown.
    pub search: Option<String>,
    /// Where it stands; none when no search is open.
    pub state: Option<SearchState>,
    /// What its answers point at, once it asks no more: the cure, or those to try, in their order.
    pub cures: Vec<CureOffer>,
}

/// The page: the search asked for, or the newest that is open, and everything that can be searched.
pub fn fault_answer(bike: &Bike, ask: &FaultAsk) -> Result<FaultAnswer, Refused> {
    let mut searches: Vec<SearchCard> = bike.searches.iter().map(|(id, search)| card(bike, id, search)).collect();
    searches.sort_by(|one, other| other.started_ms.cmp(&one.started_ms).then_with(|| one.search.cmp(&other.search)));
    let newest = || searches.iter().find(|card| card.closing.is_none()).map(|card| card.search.clone());
    let search = ask.search.clone().or_else(newest);
    let (state, cures) = match &search {
        None => (None, Vec::new()),
        Some(id) => {
            let search = search_of(bike, id)?;
            let case = case_of(bike, search)?;
            let state = standing(&case, &search.evidence)?;
            let cures = cure_offers(bike, id, &case, &state);
            (Some(state), cures)
        }
    };
    Ok(FaultAnswer { offers: offers(bike), searches, search, state, cures })
}

fn card(bike: &Bike, id: &str, search: &FaultSearch) -> SearchCard {
    let came_of = |reason: &JobReason| matches!(reason, JobReason::Fault { search, .. } if search == id);
    SearchCard {
        search: id.to_owned(),
        name: trouble_name(search),
        answers: u32::try_from(search.evidence.len()).unwrap_or(u32::MAX),
        started_ms: search.started_ms,
        closing: search.closing.clone(),
        learned: search.learned.clone(),
        jobs: jobs_with(&bike.jobs, came_of).collect(),
    }
}

/// A new search, if the trouble can be searched on this bike.
pub fn started(bike: &Bike, trouble: &Trouble, now_ms: i64) -> Result<FaultSearch, Refused> {
    let search = FaultSearch { trouble: Some(trouble.clone()), started_ms: Some(now_ms), ..FaultSearch::default() };
    case_of(bike, &search)?;
    Ok(search)
}

/// The search with one answer more. A check that was answered before is answered anew: its old answer goes.
pub fn answered(bike: &Bike, mut search: FaultSearch, answer: &Evidence) -> Result<FaultSearch, Refused> {
    still_open(&search)?;
    let case = case_of(bike, &search)?;
    search.evidence.retain(|old| old.check() != answer.check());
    search.evidence.push(answer.clone());
    crate::faults::belief::beliefs(&case, &search.evidence)?;
    Ok(search)
}

/// The search without its last answer.
pub fn taken_back(mut search: FaultSearch) -> Result<FaultSearch, Refused> {
    still_open(&search)?;
    match search.evidence.pop() {
        Some(_) => Ok(search),
        None => Err(conflict("evidence", FaultsMessage::NothingToTakeBack)),
    }
}

/// The search with its end, and what was learned. A cure that is not named is refused, and so is an end without a word where no
/// question was answered: whoever reads it later would learn nothing.
pub fn closed(
    search: FaultSearch,
    closing: &FaultClosing,
    learned: Option<&str>,
    now_ms: i64,
) -> Result<FaultSearch, Refused> {
    still_open(&search)?;
    let closing = match closing {
        FaultClosing::Cured { cure } => {
            FaultClosing::Cured { cure: check::check_text("cure", FaultsMessage::FieldCure, cure, 200)? }
        }
        FaultClosing::GivenUp => FaultClosing::GivenUp,
    };
    let learned = match learned.map(str::trim).filter(|said| !said.is_empty()) {
        Some(said) => Some(check::check_text("learned", FaultsMessage::FieldLearned, said, 600)?),
        None if search.evidence.is_empty() => {
            return Err(Refused::Missing {
                field: "learned".to_owned(),
                label: FaultsMessage::FieldLearned.into(),
                help: FaultsMessage::SayWhatWasLearned.into(),
            });
        }
        None => None,
    };
    Ok(FaultSearch { closed_ms: Some(now_ms), closing: Some(closing), learned, ..search })
}

fn still_open(search: &FaultSearch) -> Result<(), Refused> {
    match search.closing {
        None => Ok(()),
        Some(_) => Err(conflict("search", FaultsMessage::HasEnded)),
    }
}

fn conflict(field: &str, reason: FaultsMessage) -> Refused {
    Refused::Conflict { field: field.to_owned(), reason: reason.into() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::faults::knowledge::knowledge_case;
    use crate::faults::page::state::SearchStop;
    use crate::record::{FaultClosing, FaultSearch, Trouble};

    fn table() -> Trouble {
        Trouble::Table { table: "turns-but-does-not-start".to_owned() }
    }

    fn seen(check: &str, outcome: &str) -> Evidence {
        Evidence::Seen { check: check.to_owned(), outcome: outcome.to_owned() }
    }

    fn bike_with(search: FaultSearch) -> Bike {
        let mut bike = Bike::default();
        bike.searches.insert("s".to_owned(), search);
        bike
    }

    #[test]
    fn a_search_is_begun_answered_and_taken_back_step_by_step() {
        let bike = Bike::default();
        let empty = started(&bike, &table(), 5).unwrap();
        let one = answered(&bike, empty.clone(), &seen("spark", "strong")).unwrap();
        let state = fault_answer(&bike_with(one.clone()), &FaultAsk::default()).unwrap().state.unwrap();
        assert_eq!((state.answers.len(), state.stop), (1, SearchStop::GoesOn));
        assert!(state.question.unwrap().why.english().contains(" means "));
        assert_eq!(taken_back(one).unwrap(), empty);
        assert!(taken_back(empty).unwrap_err().english().contains("nothing to take back"));
    }

    #[test]
    fn a_check_answered_again_replaces_its_old_answer() {
        let bike = Bike::default();
        let one = answered(&bike, started(&bike, &table(), 5).unwrap(), &seen("spark", "strong")).unwrap();
        let outcomes = knowledge_case("turns-but-does-not-start").unwrap().check("spark").unwrap().outcomes.clone();
        let other = outcomes.iter().find(|outcome| outcome.id != "strong").unwrap();
        let again = answered(&bike, one, &seen("spark", &other.id)).unwrap();
        assert_eq!(again.evidence, [seen("spark", &other.id)]);
    }

    #[test]
    fn a_check_that_nobody_can_tell_moves_no_suspect_and_another_one_is_asked() {
        let bike = Bike::default();
        let empty = started(&bike, &table(), 5).unwrap();
        let shown = |search: &FaultSearch| {
            fault_answer(&bike_with(search.clone()), &FaultAsk::default()).unwrap().state.unwrap()
        };
        let before = shown(&empty);
        let check = before.question.unwrap().check;
        let skipped = answered(&bike, empty, &Evidence::Skipped { check: check.clone() }).unwrap();
        let after = shown(&skipped);
        assert_eq!((after.beliefs, after.spent_minutes), (before.beliefs, 0.0));
        assert_ne!(after.question.unwrap().check, check);
        assert_eq!(after.answers[0].answer, "not sure");
    }

    #[test]
    fn a_reading_below_nothing_keeps_its_sign_and_says_what_that_means() {
        let bike = Bike::default();
        let trouble = Trouble::Wiring { circuit: "lighting".to_owned(), reworked: None };
        let search = started(&bike, &trouble, 5).unwrap();
        let case = case_of(&bike, &search).unwrap();
        let metered = case.checks.iter().find(|check| check.metering.is_some()).unwrap();
        let read = Evidence::Read { check: metered.id.clone(), volts: -6.1 };
        let search = answered(&bike, search, &read).unwrap();
        let state = fault_answer(&bike_with(search), &FaultAsk::default()).unwrap().state.unwrap();
        assert_eq!(state.answers[0].answer, "reversed: −6.1 V");
    }

    #[test]
    fn what_cannot_be_is_refused_and_an_ended_search_stays_ended() {
        let bike = Bike::default();
        let refused = |trouble: Trouble| started(&bike, &trouble, 5).unwrap_err().english();
        assert!(refused(Trouble::Table { table: "hiccups".to_owned() }).contains("hiccups"));
        assert!(refused(Trouble::Wiring { circuit: "toaster".to_owned(), reworked: None }).contains("toaster"));
        let search = started(&bike, &table(), 5).unwrap();
        assert!(answered(&bike, search.clone(), &seen("spark", "purple")).is_err());
        let cured = |cure: &str| FaultClosing::Cured { cure: cure.to_owned() };
        let unnamed = closed(search.clone(), &cured("  "), None, 9).unwrap_err();
        assert!(unnamed.english().starts_with("What put it right"), "{}", unnamed.english());
        let done = closed(search, &cured(" New plug "), Some(" Gap first. "), 9).unwrap();
        assert_eq!((done.closing.clone(), done.learned.as_deref()), (Some(cured("New plug")), Some("Gap first.")));
        assert!(answered(&bike, done.clone(), &seen("spark", "strong")).unwrap_err().english().contains("has ended"));
        let sheet = fault_answer(&bike_with(done), &FaultAsk::default()).unwrap();
        assert_eq!((sheet.search, sheet.state), (None, None), "only open searches come up by themselves");
        let ask = FaultAsk { search: Some("nobody".to_owned()) };
        assert!(fault_answer(&bike, &ask).unwrap_err().english().contains("no search with the id nobody"));
    }

    #[test]
    fn a_harness_is_taken_for_old_where_nobody_knows_when_the_search_began() {
        let trouble = Trouble::Wiring { circuit: "lighting".to_owned(), reworked: None };
        let case = |model_year, started_ms| {
            let identity = crate::record::Identity { model_year, ..Default::default() };
            let search = FaultSearch { trouble: Some(trouble.clone()), started_ms, ..FaultSearch::default() };
            case_of(&Bike { identity, ..Bike::default() }, &search).unwrap()
        };
        assert_eq!(case(Some(2020), None), case(None, Some(1_775_000_000_000)));
        assert_ne!(case(Some(2020), None), case(Some(2020), Some(1_775_000_000_000)), "six years are not old");
    }

    #[test]
    fn every_offer_can_be_begun_and_asks_a_first_question() {
        let bike = Bike::default();
        for offer in fault_answer(&bike, &FaultAsk::default()).unwrap().offers {
            let search = started(&bike, &offer.trouble, 5).unwrap();
            let state = fault_answer(&bike_with(search), &FaultAsk::default()).unwrap().state.unwrap();
            assert!(state.question.is_some(), "{}", offer.name);
        }
    }
}
