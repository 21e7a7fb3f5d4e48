//! The starter set of product sheets: generic, invented, and marked “typical, read your can”.

use std::sync::OnceLock;

use serde::Deserialize;

use super::message::ReadyMadeSource;
use crate::message::Message;
use crate::quantity::{Source, Standing};
use crate::record::Product;

/// A product sheet of the starter set.
struct Card {
    id: &'static str,
    product: Product,
    source: Source,
}

/// A sheet as it stands in its file.
#[derive(Deserialize)]
struct SheetFile {
    source: String,
    standing: Standing,
    sheet: Product,
}

/// Ids and texts of the sheets, in the order in which they are shown.
const SHEETS: [(&str, &str); 13] = [
    ("tank-liner", include_str!("../../../fixtures/products/tank-liner.toml")),
    ("gasket-silicone", include_str!("../../../fixtures/products/gasket-silicone.toml")),
    ("rust-paint", include_str!("../../../fixtures/products/rust-paint.toml")),
    ("rust-converter", include_str!("../../../fixtures/products/rust-converter.toml")),
    ("epoxy-primer", include_str!("../../../fixtures/products/epoxy-primer.toml")),
    ("primer", include_str!("../../../fixtures/products/primer.toml")),
    ("colour", include_str!("../../../fixtures/products/colour.toml")),
    ("clear", include_str!("../../../fixtures/products/clear.toml")),
    ("two-part-clear", include_str!("../../../fixtures/products/two-part-clear.toml")),
    ("wheel-paint", include_str!("../../../fixtures/products/wheel-paint.toml")),
    ("epoxy", include_str!("../../../fixtures/products/epoxy.toml")),
    ("adhesive", include_str!("../../../fixtures/products/adhesive.toml")),
    ("thread-lock", include_str!("../../../fixtures/products/thread-lock.toml")),
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
    found.map(|card| card.product.clone())
}

/// Where the figures of a product come from: its typical sheet, or the owner's own can.
pub fn source_of(product: &Product) -> Source {
    let typical = cards().iter().find(|card| card.product == *product).map(|card| card.source.clone());
    match typical {
        Some(source) => source,
        None if product.typical => Source::new(ReadyMadeSource::ChangedSheet, Standing::Entered),
        None => Source::new(ReadyMadeSource::OwnCan, Standing::Entered),
    }
}

/// The sheets, read once. A file that cannot be read is left out; a test holds that all of them can.
fn cards() -> &'static [Card] {
    static CARDS: OnceLock<Vec<Card>> = OnceLock::new();
    CARDS.get_or_init(|| SHEETS.iter().filter_map(|(id, text)| read(id, text)).collect())
}

fn read(id: &'static str, text: &str) -> Option<Card> {
    let file: SheetFile = toml::from_str(text).ok()?;
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
