//! What is refused of a language file.

use layshaft_wire::message;

/// Why a language is refused, and what is named.
#[message("content")]
pub(crate) enum ContentMessage {
    /// Field: the file of a language.
    Language,
    /// Field: one file of what is brought along.
    File { file: String },
    /// Something beside the texts is not as in English.
    Differs { place: String },
    /// Texts were read already, in a language that is not this one.
    InUse,
}
