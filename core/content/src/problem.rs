//! Why a file cannot be taken: the build prints it and stops.

use std::path::{Path, PathBuf};

/// What is wrong with the files, said to their author.
#[derive(Debug, thiserror::Error)]
pub enum Problem {
    /// A file or folder cannot be read.
    #[error("{}: {reason}", path.display())]
    File {
        /// Which.
        path: PathBuf,
        /// What the system says.
        reason: std::io::Error,
    },
    /// A place in a file is not as it has to be.
    #[error("{}, line {line}: {reason}", path.display())]
    Line {
        /// Which file.
        path: PathBuf,
        /// Which line, from 1.
        line: usize,
        /// What is wrong there.
        reason: String,
    },
    /// Two texts would have the same key.
    #[error("{key} stands for two texts: “{one}” and “{other}”; word one of them otherwise")]
    KeyTwice {
        /// The key.
        key: String,
        /// The one.
        one: String,
        /// The other.
        other: String,
    },
    /// A map of texts names a key that English does not have.
    #[error("there is no text with the key {key}")]
    UnknownKey {
        /// The key.
        key: String,
    },
    /// A language without a single file.
    #[error("no folder holds a translation for “{tag}”")]
    NoTranslation {
        /// The language.
        tag: String,
    },
}

impl Problem {
    /// What the system says of a path.
    pub(crate) fn file(path: &Path) -> impl FnOnce(std::io::Error) -> Problem {
        let path = path.to_path_buf();
        move |reason| Problem::File { path, reason }
    }
}

/// A file that is being read, so that what is wrong in it can be named with its line.
pub(crate) struct Written<'a> {
    pub(crate) path: &'a Path,
    pub(crate) text: &'a str,
}

impl Written<'_> {
    /// The problem at a byte of the file.
    pub(crate) fn problem(&self, at: usize, reason: impl Into<String>) -> Problem {
        let before = self.text.get(..at).unwrap_or(self.text);
        let line = before.matches('\n').count() + 1;
        Problem::Line { path: self.path.to_path_buf(), line, reason: reason.into() }
    }
}
