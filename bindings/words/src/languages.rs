//! The languages that come along: those of the catalogue when this was built.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use crate::words::Words;

/// The files of a language, each with its text.
type Files = &'static [(&'static str, &'static str)];

static LANGUAGES: &[(&str, Files)] = include!(concat!(env!("OUT_DIR"), "/languages.rs"));

/// The language that has words for everything.
pub const ENGLISH: &str = "en";

static IN_ENGLISH: LazyLock<Words> = LazyLock::new(|| Words::of_english(texts(ENGLISH)));

static OTHERS: LazyLock<BTreeMap<&str, Words>> = LazyLock::new(|| {
    let tags = tags().filter(|tag| *tag != ENGLISH);
    tags.map(|tag| (tag, Words::over_english(tag, texts(tag)))).collect()
});

/// The tags of the languages that come along (BCP 47).
pub fn tags() -> impl Iterator<Item = &'static str> {
    LANGUAGES.iter().map(|(tag, _)| *tag)
}

/// The files of a language that hold what the core says, by name, each with its text.
pub fn files(tag: &str) -> Files {
    LANGUAGES.iter().find(|(each, _)| *each == tag).map_or(&[], |(_, files)| files)
}

fn texts(tag: &str) -> impl Iterator<Item = String> {
    files(tag).iter().map(|(_, text)| (*text).to_owned())
}

impl Words {
    /// The English words.
    pub fn english() -> &'static Words {
        &IN_ENGLISH
    }

    /// The words of a language by its tag; nothing where it does not come along.
    pub fn in_language(tag: &str) -> Option<&'static Words> {
        if tag == ENGLISH { Some(Words::english()) } else { OTHERS.get(tag) }
    }
}
