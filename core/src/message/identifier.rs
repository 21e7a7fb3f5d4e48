//! The names that the program itself gives: ids of messages, names of arguments, forms to choose from.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

/// A name from the program. It stands in the program's text, so that a message takes no copy of it; one that came through the door is
/// a text of its own.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "ts", derive(ts_rs::TS), ts(type = "string"))]
pub struct Identifier(Cow<'static, str>);

impl Identifier {
    /// The name as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl From<&'static str> for Identifier {
    fn from(name: &'static str) -> Self {
        Self(Cow::Borrowed(name))
    }
}

impl From<String> for Identifier {
    fn from(name: String) -> Self {
        Self(Cow::Owned(name))
    }
}

impl From<Identifier> for String {
    fn from(name: Identifier) -> Self {
        name.0.into_owned()
    }
}

impl PartialEq<&str> for Identifier {
    fn eq(&self, name: &&str) -> bool {
        self.as_str() == *name
    }
}

// Scripts see a plain text.
#[cfg(feature = "uniffi")]
uniffi::custom_type!(Identifier, String, {
    lower: |name| name.into(),
    try_lift: |name| Ok(name.into()),
});
