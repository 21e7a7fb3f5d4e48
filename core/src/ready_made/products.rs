//! The starter set of product sheets: generic, invented, and marked “typical, read your can”.

use std::sync::OnceLock;

use serde::Deserialize;

use super::message::ReadyMadeSource;
use crate::content::Content;
use crate::message::Message;
use crate::quantity::{Source, Standing};
use crate::record::Product;

/// A product sheet of the starter set.
pub(super) struct Card {
    id: &'static str,
    pub(super) product: Product,
    pub(super) source: Source,
}

/// A sheet as it stands in its file.
#[derive(Deserialize)]
struct SheetFile {
    source: String,
    standing: Standing,
    sheet: Product,
}

/// The files of the sheets, in the order in which they are shown.
const SHEETS: [&str; 13] = [
    "tank-liner",
    "gasket-silicone",
    "rust-paint",
    "rust-converter",
    "epoxy-primer",
    "primer",
    "colour",
    "clear",
    "two-part-clear",
    "wheel-paint",
    "epoxy",
    "adhesive",
    "thread-lock",
];

/// The starter set of generic sheets, in the order in which they are shown.
///
/// ```
/// let liner = &layshaft_core::ready_made::products()[0];
/// assert_eq!((liner.name.as_str(), liner.full_cure_hours), ("Tank liner, two-part", Some(96.0)));
/// assert!(liner.typical);
/// ```
pub fn products() -> Vec<Product> {
    cards().iter().map(|card| card.product.clone()).collect()
}

/// A sheet of the starter set by its id or its name.
///
/// ```
/// use layshaft_core::ready_made::typical_product;
/// assert_eq!(typical_product("gasket-silicone"), typical_product("Gasket silicone"));
/// assert!(typical_product("yoghurt").is_none());
/// ```
pub fn typical_product(id_or_name: &str) -> Option<Product> {
    let wanted = id_or_name.trim();
    let found = cards().iter().find(|card| card.id == wanted || card.product.name.eq_ignore_ascii_case(wanted));
    // A bike that was written down in English still means the same sheet.
    let found = found.or_else(|| {
        let english = english_cards().iter().find(|card| card.product.name.eq_ignore_ascii_case(wanted))?;
        cards().iter().find(|card| card.id == english.id)
    });
    found.map(|card| card.product.clone())
}

/// Where the figures of a product come from: its typical sheet, or the owner's own can.
pub fn source_of(product: &Product) -> Source {
    let mut known = cards().iter().chain(english_cards());
    match known.find(|card| card.product == *product) {
        Some(card) => card.source.clone(),
        None if product.typical => Source::new(ReadyMadeSource::ChangedSheet, Standing::Entered),
        None => Source::new(ReadyMadeSource::OwnCan, Standing::Entered),
    }
}

/// The sheets in the language in use, read once. A file that cannot be read is left out; a test holds that all of them can.
fn cards() -> &'static [Card] {
    static CARDS: OnceLock<Vec<Card>> = OnceLock::new();
    CARDS.get_or_init(|| read_all(Content::in_use()))
}

fn english_cards() -> &'static [Card] {
    static CARDS: OnceLock<Vec<Card>> = OnceLock::new();
    CARDS.get_or_init(|| read_all(Content::english()))
}

fn read_all(content: &Content) -> Vec<Card> {
    SHEETS.into_iter().filter_map(|id| card(content, id)).collect()
}

/// One sheet of a language by its id.
pub(super) fn card(content: &Content, id: &str) -> Option<Card> {
    let id = SHEETS.into_iter().find(|known| *known == id)?;
    let file: SheetFile = content.file("products", id).ok()?;
    let product = Product { typical: true, ..file.sheet };
    Some(Card { id, product, source: Source::new(Message::as_entered(file.source), file.standing) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_sheet_of_the_starter_set_is_read_accepted_and_says_that_it_is_typical() {
        assert_eq!(cards().len(), SHEETS.len());
        for card in cards() {
            assert_eq!(card.product.clone().checked(), Ok(card.product.clone()), "{}", card.id);
            assert!(card.product.full_cure_hours.is_some() && card.product.at_celsius.is_some(), "{}", card.id);
            assert!(matches!(card.source.standing, Standing::CommonPractice | Standing::Invented));
            assert!(card.source.text.english().contains("typical"), "{}", card.id);
        }
    }

    #[test]
    fn a_sheet_is_found_by_its_mark_and_by_its_name() {
        for card in cards() {
            assert_eq!(typical_product(card.id).as_ref(), Some(&card.product));
            assert_eq!(typical_product(&card.product.name.to_uppercase()).as_ref(), Some(&card.product));
        }
    }

    #[test]
    fn a_typical_sheet_names_its_source_until_the_owner_changes_it() {
        let liner = typical_product("tank-liner").unwrap();
        assert_eq!(source_of(&liner).standing, Standing::CommonPractice);
        assert_eq!(source_of(&Product { full_cure_hours: Some(72.0), ..liner }).standing, Standing::Entered);
    }
}
