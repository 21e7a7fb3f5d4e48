//! A search of the bike: what it is about in words, and the case that it asks from.

use crate::bounds;
use crate::error::Refused;
use crate::faults::case::TroubleCase;
use crate::faults::circuit::wiring_case;
use crate::faults::knowledge::{knowledge_case, knowledge_name};
use crate::faults::message::{FaultsMessage, FaultsNotice};
use crate::faults::reach::circuit_checks;
use crate::harness::{TEMPLATES, circuit_of};
use crate::message::Message;
use crate::record::{Bike, FaultSearch, Trouble};

/// Milliseconds in a mean year.
const YEAR_MS: f64 = 31_556_952_000.0;
/// Age of a harness when the model year is not known, years: old enough that joints count. Our assumption.
const OLD: f64 = 30.0;

/// A search of the bike by its id.
pub(super) fn search_of<'a>(bike: &'a Bike, id: &str) -> Result<&'a FaultSearch, Refused> {
    let unknown = || Refused::Unknown { what: FaultsMessage::WhatSearch.into(), id: id.to_owned() };
    bike.searches.get(id).ok_or_else(unknown)
}

/// What is wrong, in words.
pub fn trouble_name(search: &FaultSearch) -> Message {
    match &search.trouble {
        Some(Trouble::Wiring { circuit, .. }) => name_of_circuit(circuit),
        Some(Trouble::Table { table }) => name_of_table(table),
        None => FaultsMessage::NotSaid.into(),
    }
}

/// A fault in a circuit is called by what somebody notices, not by the drawing.
pub(super) fn name_of_circuit(id: &str) -> Message {
    if let Some(notice) = FaultsNotice::of_circuit(id) {
        return notice.into();
    }
    Message::as_entered(TEMPLATES.iter().find(|template| template.id == id).map_or(id, |template| template.name()))
}

pub(super) fn name_of_table(id: &str) -> Message {
    knowledge_name(id).unwrap_or_else(|_| Message::as_entered(id))
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
            Ok(TroubleCase { name: name_of_circuit(circuit), ..wiring_case(&ask)? })
        }
    }
}
