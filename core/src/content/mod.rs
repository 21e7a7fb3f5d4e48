//! What the program brings along, in the language in use: jobs, packs, tables of faults, product sheets, paint jobs, names.
//!
//! The files stand in TOML under `fixtures`. The build makes one JSON of them (`core/content`, `core/build.rs`) and includes
//! it, in English. A host may hand over the same JSON with its texts in another language before anything is read. What each
//! kind of file means is known to the area that reads it.

mod message;
mod shape;

use std::sync::OnceLock;

use serde::de::DeserializeOwned;
use serde_json::Value;

pub(crate) use message::ContentMessage;

use crate::error::Refused;
use crate::message::Message;

const ENGLISH: &str = include_str!(concat!(env!("OUT_DIR"), "/content.json"));

/// The language that was chosen; none is English.
static IN_USE: OnceLock<Option<Content>> = OnceLock::new();

/// All files of all kinds, in one language.
#[derive(Clone, Debug, PartialEq)]
pub struct Content(Value);

impl Content {
    /// Reads the content of a language. It may differ from English in its texts and in nothing else.
    ///
    /// ```
    /// use layshaft_core::content::Content;
    /// assert!(Content::read("{}").is_err());
    /// ```
    pub fn read(json: &str) -> Result<Content, Refused> {
        let refused = |reason: Message| Refused::Unreadable {
            field: "content".to_owned(),
            label: ContentMessage::Language.into(),
            reason,
        };
        let read = serde_json::from_str(json).map_err(|error| refused(Message::as_entered(error.to_string())))?;
        match shape::difference(&Content::english().0, &read) {
            Some(place) => Err(refused(ContentMessage::Differs { place }.into())),
            None => Ok(Content(read)),
        }
    }

    /// The content in English.
    pub fn english() -> &'static Content {
        // The build wrote it, so it can be read; a test holds that.
        static READ: OnceLock<Content> = OnceLock::new();
        READ.get_or_init(|| Content(serde_json::from_str(ENGLISH).unwrap_or_default()))
    }

    /// The content in the language in use: English, unless the host chose another before.
    pub fn in_use() -> &'static Content {
        IN_USE.get_or_init(|| None).as_ref().unwrap_or_else(|| Content::english())
    }

    /// One file as its reader wants it.
    pub(crate) fn file<T: DeserializeOwned>(&self, kind: &str, name: &str) -> Result<T, Refused> {
        let file = self.0.get(kind).and_then(|files| files.get(name)).cloned().unwrap_or_default();
        serde_json::from_value(file).map_err(|error| Refused::Unreadable {
            field: kind.to_owned(),
            label: ContentMessage::File { file: format!("{kind}/{name}") }.into(),
            reason: Message::as_entered(error.to_string()),
        })
    }

    /// The name of something in the circuits, by the list in which it stands; its id where it has none.
    pub(crate) fn circuit_name<'a>(&'a self, list: &str, id: &'a str) -> &'a str {
        let lists = self.0.get("circuits").and_then(|files| files.get("names"));
        lists.and_then(|lists| lists.get(list)?.get(id)?.as_str()).unwrap_or(id)
    }

    /// The names of the files of a kind.
    #[cfg(test)]
    pub(crate) fn files(&self, kind: &str) -> Vec<&str> {
        let files = self.0.get(kind).and_then(Value::as_object);
        files.into_iter().flatten().map(|(name, _)| name.as_str()).collect()
    }
}

/// Takes a language into use, by its content as JSON. It holds until the program ends; another one, or one that comes after
/// the first text was read, is refused.
pub fn use_language(json: &str) -> Result<(), Refused> {
    let chosen = Content::read(json)?;
    let in_use = IN_USE.get_or_init(|| Some(chosen.clone())).as_ref().unwrap_or_else(|| Content::english());
    if *in_use == chosen {
        return Ok(());
    }
    Err(Refused::Conflict { field: "content".to_owned(), reason: ContentMessage::InUse.into() })
}

#[cfg(test)]
mod tests;
