//! How a kind of file says what stands in it: data, texts, and what tells the items of a list apart.

/// What a field holds.
#[derive(Clone, Copy)]
pub(crate) enum Part {
    /// A number, an id, a choice: the same in every language.
    Data,
    /// A text of its own.
    Text,
    /// A text that stands in several places and is translated once: its key comes from what it says.
    Word,
    /// A list of such texts.
    Words,
    /// A table with fields.
    Table(&'static [Field]),
    /// A list of tables, told apart by their ids.
    List(&'static [Field]),
    /// A list of pairs: an id, and the text for it.
    Pairs,
    /// Texts by any id.
    Names,
}

/// A field by its name.
pub(crate) struct Field {
    pub(crate) name: &'static str,
    pub(crate) part: Part,
    pub(crate) needed: bool,
}

/// A kind of file: its id, and the folder below `fixtures` in which its files stand.
pub(crate) struct Kind {
    pub(crate) id: &'static str,
    pub(crate) folder: &'static str,
    pub(crate) fields: &'static [Field],
}

/// A field that each file has.
pub(crate) const fn need(name: &'static str, part: Part) -> Field {
    Field { name, part, needed: true }
}

/// A field that may be left out.
pub(crate) const fn may(name: &'static str, part: Part) -> Field {
    Field { name, part, needed: false }
}
