//! What a record is made of: the names of its fields as they are stored, and the messages that name them.

use super::fold::GONE;

/// A field of a stored type.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Its name in the table of changes.
    pub name: &'static str,
    /// Id of the message that names it to a reader.
    pub words: &'static str,
    /// The fields of what it holds, where that has any.
    pub within: &'static [Field],
}

/// A type that is kept in a record: the record itself, or what one of its fields holds. `#[wire(stored)]` implements it.
#[diagnostic::on_unimplemented(
    message = "`{Self}` stands in a record and does not say what it is made of",
    note = "mark it #[wire(stored)]"
)]
pub trait Stored {
    /// Its fields in their order; none where it is a plain value.
    const FIELDS: &'static [Field];
}

macro_rules! plain_values {
    ($($plain:ty)*) => { $(impl Stored for $plain { const FIELDS: &'static [Field] = &[]; })* };
}
plain_values!(String bool f64 i32 i64 u32);

impl<T: Stored> Stored for Option<T> {
    const FIELDS: &'static [Field] = T::FIELDS;
}

impl<T: Stored> Stored for Vec<T> {
    const FIELDS: &'static [Field] = T::FIELDS;
}

/// A kind of record, as data: for whoever keeps or shows records without knowing what they are about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RecordKind {
    /// Its name in the table of changes.
    pub kind: &'static str,
    /// Id of the message that names it to a reader.
    pub words: &'static str,
    /// Its fields in their order.
    pub fields: &'static [Field],
}

/// The message for [`GONE`], which every record may have.
const GONE_WORDS: &str = "record-gone";

impl RecordKind {
    /// Every name under which a value stands in a record of this kind, with the id of its message: `wait`, `wait.hours`, and last
    /// [`GONE`].
    pub fn words_of_fields(&self) -> Vec<(String, &'static str)> {
        let mut found = Vec::new();
        add("", self.fields, &mut found);
        found.push((GONE.to_owned(), GONE_WORDS));
        found
    }
}

fn add(above: &str, fields: &[Field], found: &mut Vec<(String, &'static str)>) {
    for field in fields {
        let name = if above.is_empty() { field.name.to_owned() } else { format!("{above}.{}", field.name) };
        found.push((name.clone(), field.words));
        add(&name, field.within, found);
    }
}
