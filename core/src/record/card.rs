//! The kinds of records in words, for whoever shows a fact.

use layshaft_wire::wire;

use super::list::KINDS;
use crate::message::Message;

/// A field in words.
#[wire]
pub struct FieldCard {
    /// Its name as it is stored; with a dot where it stands inside another: `wait.hours`.
    pub field: String,
    /// What a reader sees.
    pub words: Message,
}

/// A kind of record in words.
#[wire]
pub struct RecordCard {
    /// Its name as it is stored.
    pub record_kind: String,
    /// What a reader sees.
    pub words: Message,
    /// Its fields.
    pub fields: Vec<FieldCard>,
}

/// Every kind in words.
pub fn record_cards() -> Vec<RecordCard> {
    let card = |(field, words): (String, &'static str)| FieldCard { field, words: Message::new(words, Vec::new()) };
    let of = |kind: &crate::changes::RecordKind| RecordCard {
        record_kind: kind.kind.to_owned(),
        words: Message::new(kind.words, Vec::new()),
        fields: kind.words_of_fields().into_iter().map(card).collect(),
    };
    KINDS.iter().map(of).collect()
}
