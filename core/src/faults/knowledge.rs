//! Cases from experience: tables of suspects and checks for trouble that no circuit describes.
//!
//! Weights and likelihoods are judgement of the trade, without a source, and every sheet that uses them says so.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use serde::Deserialize;

use super::case::{Check, CheckOutcome, Cover, Suspect, TroubleCase};
use super::message::FaultsMessage;
use crate::content::Content;
use crate::error::Refused;
use crate::message::Message;

/// Ids of the tables, in the order in which they are shown.
pub const KNOWLEDGE: [&str; 6] =
    ["turns-but-does-not-start", "brake-lever-spongy", "charging-weak", "overheats", "clutch-drags", "oil-leak"];

#[derive(Deserialize)]
struct TableFile {
    name: String,
    #[serde(default)]
    cover: Vec<CoverRow>,
    suspect: Vec<SuspectRow>,
    check: Vec<CheckRow>,
}

#[derive(Deserialize)]
struct CoverRow {
    id: String,
    label: String,
    minutes: f64,
}

#[derive(Deserialize)]
struct SuspectRow {
    id: String,
    label: String,
    weight: f64,
    cure: String,
    try_minutes: f64,
    job: Option<String>,
    caution: Option<String>,
}

#[derive(Deserialize)]
struct CheckRow {
    id: String,
    label: String,
    outcomes: Vec<[String; 2]>,
    minutes: f64,
    #[serde(default)]
    danger_minutes: f64,
    #[serde(default)]
    covers: Vec<String>,
    #[serde(default)]
    free_look: bool,
    #[serde(default)]
    after: Vec<String>,
    caution: Option<String>,
    /// Likelihoods of the outcomes under every suspect that is not named.
    otherwise: Vec<f64>,
    /// Likelihoods under the suspects that are named.
    under: BTreeMap<String, Vec<f64>>,
}

/// A case of experience by its id.
///
/// ```
/// use layshaft_core::faults::knowledge_case;
/// assert!(knowledge_case("brake-lever-spongy").is_ok());
/// assert!(knowledge_case("bad-mood").is_err());
/// ```
pub fn knowledge_case(mark: &str) -> Result<TroubleCase, Refused> {
    known(mark).cloned()
}

/// What a table is about, in words.
pub(super) fn knowledge_name(mark: &str) -> Result<Message, Refused> {
    known(mark).map(|case| case.name.clone())
}

fn known(mark: &str) -> Result<&'static TroubleCase, Refused> {
    // The tables are part of the program: they are read once. That every one of them can be read is a test.
    static READ: OnceLock<Vec<(&str, Result<TroubleCase, Refused>)>> = OnceLock::new();
    let read = READ.get_or_init(|| KNOWLEDGE.iter().map(|name| (*name, named(name))).collect());
    match read.iter().find(|(name, _)| *name == mark) {
        Some((_, case)) => case.as_ref().map_err(Clone::clone),
        None => Err(Refused::Unknown { what: FaultsMessage::WhatTable.into(), id: mark.to_owned() }),
    }
}

fn named(name: &str) -> Result<TroubleCase, Refused> {
    Content::in_use().file("knowledge", name).and_then(read_table)
}

fn read_table(file: TableFile) -> Result<TroubleCase, Refused> {
    let unreadable = |reason: Message| Refused::Unreadable {
        field: "table".to_owned(),
        label: FaultsMessage::FieldTable.into(),
        reason,
    };
    let suspect = |row: SuspectRow| Suspect {
        id: row.id,
        label: Message::as_entered(row.label),
        weight: row.weight,
        cure: Message::as_entered(row.cure),
        try_minutes: row.try_minutes,
        job: row.job,
        caution: row.caution.map(Message::as_entered),
    };
    let suspects: Vec<Suspect> = file.suspect.into_iter().map(suspect).collect();
    let cover = |row: CoverRow| Cover { id: row.id, label: Message::as_entered(row.label), minutes: row.minutes };
    let outcome = |[id, label]: [String; 2]| CheckOutcome { id, label: Message::as_entered(label) };
    let mut checks = Vec::with_capacity(file.check.len());
    for row in file.check {
        if let Some(unknown) = row.under.keys().find(|id| !suspects.iter().any(|suspect| suspect.id == **id)) {
            let reason = FaultsMessage::NoSuchSuspect { check: row.id, suspect: unknown.clone() };
            return Err(unreadable(reason.into()));
        }
        let line = |suspect: &Suspect| row.under.get(&suspect.id).unwrap_or(&row.otherwise).clone();
        checks.push(Check {
            likelihoods: suspects.iter().map(line).collect(),
            outcomes: row.outcomes.into_iter().map(outcome).collect(),
            id: row.id,
            label: Message::as_entered(row.label),
            place: None,
            position: None,
            minutes: row.minutes,
            danger_minutes: row.danger_minutes,
            covers: row.covers,
            free_look: row.free_look,
            after: row.after,
            caution: row.caution.map(Message::as_entered),
            metering: None,
        });
    }
    let case = TroubleCase {
        name: Message::as_entered(file.name),
        suspects,
        covers: file.cover.into_iter().map(cover).collect(),
        checks,
    };
    super::case::check_case(&case)?;
    Ok(case)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::faults::page::standing;
    use crate::record::Evidence;

    #[test]
    fn every_table_reads_and_every_suspect_can_be_told_from_the_others_or_shares_their_cure() {
        for mark in KNOWLEDGE {
            let case = knowledge_case(mark).unwrap();
            for (at, one) in case.suspects.iter().enumerate() {
                for (further, other) in case.suspects.iter().enumerate().skip(at + 1) {
                    let told = case.checks.iter().any(|check| {
                        let lines = check.likelihoods[at].iter().zip(&check.likelihoods[further]);
                        lines.map(|(a, b)| (a - b).abs()).fold(0.0, f64::max) > 0.3
                    });
                    assert!(told || one.cure == other.cure, "{mark}: {} and {}", one.id, other.id);
                }
            }
        }
    }

    #[test]
    fn whoever_answers_as_a_fault_would_is_led_to_its_cure_or_to_a_short_list_with_it() {
        for mark in KNOWLEDGE {
            let case = knowledge_case(mark).unwrap();
            for (at, suspect) in case.suspects.iter().enumerate() {
                let mut evidence = Vec::new();
                let sheet = loop {
                    let sheet = standing(&case, &evidence).unwrap();
                    let Some(next) = &sheet.next else { break sheet };
                    let check = case.check(&next.check).unwrap();
                    let line = &check.likelihoods[at];
                    let most = (0..line.len()).max_by(|a, b| line[*a].total_cmp(&line[*b])).unwrap();
                    let outcome = check.outcomes[most].id.clone();
                    evidence.push(Evidence::Seen { check: check.id.clone(), outcome });
                    assert!(evidence.len() <= case.checks.len());
                };
                let found = match &sheet.settled {
                    Some(settled) => settled.cure == suspect.cure,
                    None => sheet.try_in_order.iter().take(3).any(|cure| *cure == suspect.cure),
                };
                assert!(found, "{mark}, {}: {:?} {:?}", suspect.id, sheet.settled, sheet.try_in_order);
            }
        }
    }

    #[test]
    fn a_table_that_names_a_suspect_of_another_is_refused() {
        let mut table: TableFile = Content::english().file("knowledge", KNOWLEDGE[0]).unwrap();
        table.check[0].under.insert("ghost".to_owned(), vec![1.0, 0.0]);
        assert!(read_table(table).unwrap_err().english().contains("ghost"));
    }

    #[test]
    fn every_table_in_the_folder_is_listed() {
        let mut listed = KNOWLEDGE.to_vec();
        listed.sort_unstable();
        assert_eq!(Content::english().files("knowledge"), listed);
    }

    #[test]
    fn what_can_hurt_carries_a_caution() {
        for (mark, id) in [
            ("turns-but-does-not-start", "spark"),
            ("turns-but-does-not-start", "float-bowl"),
            ("charging-weak", "stator-ohms"),
        ] {
            assert!(knowledge_case(mark).unwrap().check(id).unwrap().caution.is_some(), "{id}");
        }
        let brakes = knowledge_case("brake-lever-spongy").unwrap();
        assert!(
            brakes
                .checks
                .iter()
                .any(|check| check.caution.as_ref().is_some_and(|text| text.english().contains("manual")))
        );
    }
}
