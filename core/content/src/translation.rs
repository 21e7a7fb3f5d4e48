//! Translations as they stand beside the English files: texts only, at the path of their key.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use toml::de::DeTable;

use crate::kinds::KINDS;
use crate::problem::{Problem, Written};

/// The texts of one language by their keys. A key that English does not have is refused with its line.
pub(crate) fn read(
    fixtures: &Path,
    tag: &str,
    english: &BTreeMap<String, String>,
) -> Result<BTreeMap<String, String>, Problem> {
    let mut texts = BTreeMap::new();
    let mut found = false;
    for kind in &KINDS {
        let folder = fixtures.join(kind.folder).join(tag);
        // A kind of which nothing is translated yet has no folder.
        if !folder.is_dir() {
            continue;
        }
        for (name, path) in toml_files(&folder)? {
            found = true;
            let text = std::fs::read_to_string(&path).map_err(Problem::file(&path))?;
            let file = Written { path: &path, text: &text };
            let table = file.parsed()?;
            file.translated(table.get_ref(), &format!("{}/{name}", kind.id), english, &mut texts)?;
        }
    }
    if found { Ok(texts) } else { Err(Problem::NoTranslation { tag: tag.to_owned() }) }
}

impl Written<'_> {
    fn translated(
        &self,
        table: &DeTable<'_>,
        above: &str,
        english: &BTreeMap<String, String>,
        texts: &mut BTreeMap<String, String>,
    ) -> Result<(), Problem> {
        for (name, node) in table {
            let key = format!("{above}/{}", name.get_ref());
            if let Some(table) = node.get_ref().as_table() {
                self.translated(table, &key, english, texts)?;
                continue;
            }
            if !english.contains_key(&key) {
                return Err(self.problem(name.span().start, format!("there is no text with the key {key}")));
            }
            let text = self.text(node)?;
            texts.insert(key, text.as_str().unwrap_or_default().to_owned());
        }
        Ok(())
    }
}

/// The TOML files of a folder by their names without the ending, in the order of the names.
pub(crate) fn toml_files(folder: &Path) -> Result<BTreeMap<String, PathBuf>, Problem> {
    let mut files = BTreeMap::new();
    for entry in std::fs::read_dir(folder).map_err(Problem::file(folder))? {
        let path = entry.map_err(Problem::file(folder))?.path();
        if path.extension().is_some_and(|end| end == "toml")
            && let Some(name) = path.file_stem()
        {
            files.insert(name.to_string_lossy().into_owned(), path);
        }
    }
    Ok(files)
}
