//! The handbook: every formula that is declared is listed, has a vector, and says what a reader needs.

use std::collections::BTreeSet;

use layshaft_core::handbook::handbook;

use crate::vectors::{cases, files};
use crate::{English, root};

/// Names of the formulas that the source of `core` declares.
fn declared() -> BTreeSet<String> {
    let mut found = Vec::new();
    files(&root().join("core/src"), "rs", &mut found);
    let mut names = BTreeSet::new();
    for path in found {
        let text = std::fs::read_to_string(path).unwrap();
        let mut lines = text.lines().map(str::trim);
        while let Some(line) = lines.next() {
            if line == "formula! {" {
                let head = lines.find(|line| !line.starts_with("///")).unwrap();
                names.insert(head.split(" in ").next().unwrap().to_owned());
            }
        }
    }
    names
}

#[test]
fn every_formula_that_is_declared_is_listed() {
    let listed: BTreeSet<String> = handbook()
        .iter()
        .map(|card| {
            let (first, rest) = card.kind.split_at(1);
            format!("{}{rest}", first.to_uppercase())
        })
        .collect();
    assert_eq!(declared(), listed);
    assert!(listed.len() > 70, "only {} formulas", listed.len());
}

#[test]
fn every_formula_has_a_vector() {
    let proved: BTreeSet<String> = cases()
        .iter()
        .filter(|(_, case)| case.get("gives").is_some())
        .map(|(_, case)| case["formula"]["kind"].as_str().unwrap().to_owned())
        .collect();
    let bare: Vec<String> =
        handbook().into_iter().map(|card| card.kind).filter(|kind| !proved.contains(kind)).collect();
    assert!(bare.is_empty(), "no vector: {bare:?}");
}

#[test]
fn a_card_says_what_is_what() {
    let mut kinds = BTreeSet::new();
    for card in handbook() {
        let named = format!("{}: {card:?}", card.kind);
        assert!(kinds.insert(card.kind.clone()), "twice: {named}");
        assert!(
            !card.title.english().is_empty()
                && !card.range.english().is_empty()
                && !card.source.text.english().is_empty(),
            "{named}"
        );
        assert!(!card.inputs.is_empty() && !card.outputs.is_empty(), "{named}");
        let fields: BTreeSet<&String> = card.inputs.iter().map(|input| &input.name).collect();
        assert_eq!(fields.len(), card.inputs.len(), "two inputs of one name: {named}");
        let symbols: BTreeSet<&String> = card.inputs.iter().map(|input| &input.symbol).collect();
        assert_eq!(symbols.len(), card.inputs.len(), "two inputs of one symbol: {named}");
        for input in &card.inputs {
            assert!(!input.label.english().is_empty() && !input.symbol.is_empty(), "{named}");
            if let Some(range) = &input.range {
                assert!(range.min < range.max, "{named}");
            }
        }
    }
}
