//! Everything that is said, and where the catalogue is out of step with it.

use std::collections::{BTreeMap, BTreeSet};

use layshaft_core::catalogue::{MESSAGES, made_ids};
use layshaft_core::message::{ArgumentKind, Declared};
use layshaft_core::record::record_cards;

use crate::Used;

/// What the catalogue says for itself: parts of lists, days, lengths of time, units, the signs of a language.
const OWN: [&str; 13] = [
    "day",
    "day-of-year",
    "duration-",
    "in-english",
    "language-name",
    "list-",
    "local-time",
    "month-short-",
    "number-",
    "unit-",
    "weekday-short-",
    "work-",
    "term-",
];

/// Whether the catalogue needs these words for itself, whatever the core says.
pub fn not_of_the_core(id: &str) -> bool {
    OWN.iter().any(|own| id == *own || (own.ends_with('-') && id.starts_with(own)))
}

/// Everything that is said: by the core, the door and the storage, and what names the records and their fields.
pub fn declared() -> impl Iterator<Item = Declared> {
    let said = [MESSAGES, layshaft_door::MESSAGES, layshaft_storage::MESSAGES];
    said.into_iter().flatten().copied().flatten().copied().chain(of_records())
}

fn of_records() -> Vec<Declared> {
    let mut ids = BTreeSet::new();
    for kind in record_cards() {
        ids.insert(format!("kind-{}", kind.record_kind));
        ids.insert(kind.words.message_id.into());
        ids.extend(kind.fields.into_iter().map(|field| String::from(field.words.message_id)));
    }
    ids.into_iter().map(|id| Declared { id: id.leak(), arguments: &[] }).collect()
}

/// The ids that are said and have no words.
pub fn without_words(catalogue: &BTreeMap<String, Used>) -> Vec<String> {
    let said = declared().map(|declared| declared.id.to_owned()).chain(made_ids());
    said.filter(|id| !catalogue.contains_key(id)).collect()
}

/// Words that use what a message does not bring, that show what has no words, or that leave out what it brings.
pub fn unknown(catalogue: &BTreeMap<String, Used>) -> Vec<String> {
    let mut wrong = Vec::new();
    for declared in declared() {
        let Some(used) = catalogue.get(declared.id) else { continue };
        let named: BTreeSet<&str> = declared.arguments.iter().map(|(name, _)| *name).collect();
        for name in used.shown.union(&used.chosen).filter(|name| !named.contains(name.as_str())) {
            wrong.push(format!("{}: there is no ${name}", declared.id));
        }
        for (name, kind) in declared.arguments {
            let (shown, chosen) = (used.shown.contains(*name), used.chosen.contains(*name));
            match kind {
                ArgumentKind::Choice if shown => {
                    wrong.push(format!("{}: ${name} chooses, and has no words", declared.id))
                }
                _ if !shown && !chosen => wrong.push(format!("{}: ${name} is not used", declared.id)),
                _ => {}
            }
        }
    }
    wrong
}

/// Words that nobody says.
pub fn unused(catalogue: &BTreeMap<String, Used>) -> Vec<String> {
    let ids: BTreeSet<&str> = declared().map(|declared| declared.id).collect();
    let made: BTreeSet<String> = made_ids().into_iter().collect();
    let said = |id: &str| ids.contains(id) || made.contains(id) || not_of_the_core(id);
    catalogue.keys().filter(|id| !said(id)).cloned().collect()
}
