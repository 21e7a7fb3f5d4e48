//! A search for a fault that is kept with the bike: begun, answered, taken back step by step, ended.

use layshaft_wire::wire;

use super::state::{SearchState, standing};
use crate::bounds;
use crate::check;
use crate::error::Refused;
use crate::faults::case::TroubleCase;
use crate::faults::circuit::wiring_case;
use crate::faults::knowledge::{KNOWLEDGE, knowledge_case, knowledge_name};
use crate::faults::message::FaultsMessage;
use crate::faults::reach::{circuit_checks, searchable};
use crate::harness::{TEMPLATES, circuit_of};
use crate::message::Message;
use crate::record::{Bike, Evidence, FaultClosing, FaultSearch, Trouble};

/// Milliseconds in a mean year.
const YEAR_MS: f64 = 31_556_952_000.0;
/// Age of a harness when the model year is not known, years: old enough that joints count. Our assumption.
const OLD: f64 = 30.0;

/// Which search; left out: the newest that is open.
#[wire(lenient)]
pub struct FaultAsk {
    /// Its id.
    pub search: Option<String>,
}

/// Trouble that can be searched.
#[wire]
pub struct TroubleOffer {
    /// The trouble.
    pub trouble: Trouble,
    /// In words.
    pub name: Message,
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
}

/// The page: the search asked for, or the newest that is open, and everything that can be searched.
pub fn fault_answer(bike: &Bike, ask: &FaultAsk) -> Result<FaultAnswer, Refused> {
    let mut searches: Vec<SearchCard> = bike.searches.iter().map(|(id, search)| card(id, search)).collect();
    searches.sort_by(|one, other| other.started_ms.cmp(&one.started_ms).then_with(|| one.search.cmp(&other.search)));
    let newest = || searches.iter().find(|card| card.closing.is_none()).map(|card| card.search.clone());
    let search = ask.search.clone().or_else(newest);
    let state = match &search {
        None => None,
        Some(id) => {
            let unknown = || Refused::Unknown { what: FaultsMessage::WhatSearch.into(), id: id.clone() };
            let search = bike.searches.get(id).ok_or_else(unknown)?;
            Some(standing(&case_of(bike, search)?, &search.evidence)?)
        }
    };
    Ok(FaultAnswer { offers: offers(), searches, search, state })
}

fn offers() -> Vec<TroubleOffer> {
    let table =
        |id: &&str| TroubleOffer { trouble: Trouble::Table { table: (*id).to_owned() }, name: name_of_table(id) };
    let circuit = |id: &str| TroubleOffer {
        trouble: Trouble::Wiring { circuit: id.to_owned(), reworked: None },
        name: name_of_circuit(id),
    };
    KNOWLEDGE.iter().map(table).chain(searchable().map(circuit)).collect()
}

fn name_of_circuit(id: &str) -> Message {
    Message::as_entered(TEMPLATES.iter().find(|template| template.id == id).map_or(id, |template| template.name()))
}

fn name_of_table(id: &str) -> Message {
    knowledge_name(id).unwrap_or_else(|_| Message::as_entered(id))
}

fn card(id: &str, search: &FaultSearch) -> SearchCard {
    SearchCard {
        search: id.to_owned(),
        name: match &search.trouble {
            Some(Trouble::Wiring { circuit, .. }) => name_of_circuit(circuit),
            Some(Trouble::Table { table }) => name_of_table(table),
            None => FaultsMessage::NotSaid.into(),
        },
        answers: u32::try_from(search.evidence.len()).unwrap_or(u32::MAX),
        started_ms: search.started_ms,
        closing: search.closing.clone(),
    }
}

/// The case of a search, made anew from the bike: what is changed on the bike changes the predictions.
pub fn case_of(bike: &Bike, search: &FaultSearch) -> Result<TroubleCase, Refused> {
    match &search.trouble {
        None => Err(Refused::Missing {
            field: "trouble".to_owned(),
            label: FaultsMessage::FieldTrouble.into(),
            help: FaultsMessage::BeginSearch.into(),
        }),
        Some(Trouble::Table { table }) => knowledge_case(table),
        Some(Trouble::Wiring { circuit, reworked }) => {
            let begun = search.started_ms.map(|at_ms| 1970.0 + at_ms as f64 / YEAR_MS);
            let age = bike.identity.model_year.zip(begun).map_or(OLD, |(year, begun)| begun - f64::from(year));
            let age = age.clamp(bounds::HARNESS_AGE.min, bounds::HARNESS_AGE.max);
            let unknown = || Refused::Unknown { what: FaultsMessage::WhatCircuit.into(), id: circuit.clone() };
            let harness = circuit_of(bike, circuit)?;
            let ask = circuit_checks(circuit, harness, age, reworked.unwrap_or(false)).ok_or_else(unknown)?;
            wiring_case(&ask)
        }
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

/// The search with its end.
pub fn closed(search: FaultSearch, closing: &FaultClosing, now_ms: i64) -> Result<FaultSearch, Refused> {
    still_open(&search)?;
    if let FaultClosing::Cured { cure } = closing {
        check::check_text("cure", FaultsMessage::FieldCure, cure, 200)?;
    }
    Ok(FaultSearch { closed_ms: Some(now_ms), closing: Some(closing.clone()), ..search })
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
    fn what_cannot_be_is_refused_and_an_ended_search_stays_ended() {
        let bike = Bike::default();
        let refused = |trouble: Trouble| started(&bike, &trouble, 5).unwrap_err().english();
        assert!(refused(Trouble::Table { table: "hiccups".to_owned() }).contains("hiccups"));
        assert!(refused(Trouble::Wiring { circuit: "toaster".to_owned(), reworked: None }).contains("toaster"));
        let search = started(&bike, &table(), 5).unwrap();
        assert!(answered(&bike, search.clone(), &seen("spark", "purple")).is_err());
        let done = closed(search, &FaultClosing::Cured { cure: "New plug".to_owned() }, 9).unwrap();
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
