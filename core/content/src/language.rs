//! The whole content in English, and in another language.

use std::collections::BTreeMap;
use std::path::Path;

use serde_json::{Map, Value};

use crate::kinds::KINDS;
use crate::part::Kind;
use crate::problem::{Problem, Written};
use crate::texts::{SHARED, visit};
use crate::translation;

/// What marks a text that a translation leaves out: as the catalogue's `in-english` does, which a test holds.
pub const STILL_ENGLISH: &str = " (EN)";

/// What the program brings along, in English: by kind, by file.
pub struct Content {
    kinds: Map<String, Value>,
    texts: BTreeMap<String, String>,
}

/// The content in another language.
#[derive(Debug)]
pub struct Merged {
    /// The content, as the core reads it.
    pub json: String,
    /// Keys of what is not translated, and stays English with a mark.
    pub missing: Vec<String>,
    /// How many texts there are.
    pub texts: usize,
}

impl Content {
    /// Reads the English files below the folder `fixtures`.
    pub fn read(fixtures: &Path) -> Result<Content, Problem> {
        let mut content = Content { kinds: Map::new(), texts: BTreeMap::new() };
        for kind in &KINDS {
            content.read_kind(kind, &fixtures.join(kind.folder))?;
        }
        Ok(content)
    }

    fn read_kind(&mut self, kind: &Kind, folder: &Path) -> Result<(), Problem> {
        let mut files = Map::new();
        for (name, path) in translation::toml_files(folder)? {
            let text = std::fs::read_to_string(&path).map_err(Problem::file(&path))?;
            let written = Written { path: &path, text: &text };
            if name == SHARED {
                return Err(written.problem(0, "this name is taken: a translation says there what several files share"));
            }
            let mut file = written.shaped(kind.fields)?;
            let mut twice = None;
            visit(kind, &name, &mut file, &mut |key, text| {
                let known = self.texts.entry(key.to_owned()).or_insert_with(|| text.clone());
                if known != text {
                    let (one, other) = (known.clone(), text.clone());
                    twice = Some(Problem::KeyTwice { key: key.to_owned(), one, other });
                }
            });
            if let Some(problem) = twice {
                return Err(problem);
            }
            files.insert(name, file);
        }
        self.kinds.insert(kind.id.to_owned(), Value::Object(files));
        Ok(())
    }

    /// The content as the core reads it.
    pub fn json(&self) -> String {
        written(&self.kinds)
    }

    /// Every text by its key.
    pub fn texts(&self) -> &BTreeMap<String, String> {
        &self.texts
    }

    /// The content with the translation that stands in the folders called `tag`.
    pub fn language(&self, fixtures: &Path, tag: &str) -> Result<Merged, Problem> {
        self.merged(&translation::read(fixtures, tag, &self.texts)?)
    }

    /// The content with these texts by their keys. What is missing stays English and is marked; a key that English does
    /// not have is refused.
    pub fn merged(&self, texts: &BTreeMap<String, String>) -> Result<Merged, Problem> {
        if let Some(key) = texts.keys().find(|key| !self.texts.contains_key(*key)) {
            return Err(Problem::UnknownKey { key: key.clone() });
        }
        let missing = self.texts.keys().filter(|key| !texts.contains_key(*key)).cloned().collect();
        let mut kinds = self.kinds.clone();
        for kind in &KINDS {
            let files = kinds.get_mut(kind.id).and_then(Value::as_object_mut);
            for (name, file) in files.into_iter().flatten() {
                visit(kind, name, file, &mut |key, text| match texts.get(key) {
                    Some(said) => text.clone_from(said),
                    None => text.push_str(STILL_ENGLISH),
                });
            }
        }
        Ok(Merged { json: written(&kinds), missing, texts: self.texts.len() })
    }
}

fn written(kinds: &Map<String, Value>) -> String {
    Value::Object(kinds.clone()).to_string()
}
