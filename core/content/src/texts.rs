//! Every text of a file, with its key.

use serde_json::Value;

use crate::part::{Field, Kind, Part};

/// What is done with a text: its key, and the text, to be read or replaced.
type Visit<'a> = &'a mut dyn FnMut(&str, &mut String);

/// Visits the texts of one file of a kind, in the order in which the kind names its fields.
pub(crate) fn visit(kind: &Kind, name: &str, file: &mut Value, with: Visit<'_>) {
    let shared = format!("{}/{SHARED}", kind.id);
    Walk { shared, with }.fields(kind.fields, file, &format!("{}/{name}", kind.id));
}

/// The name under which texts that stand in several files are translated, once a kind. No file is called so.
pub(crate) const SHARED: &str = "shared";

struct Walk<'a> {
    shared: String,
    with: Visit<'a>,
}

impl Walk<'_> {
    fn fields(&mut self, fields: &[Field], table: &mut Value, key: &str) {
        for Field { name, part, .. } in fields {
            if let Some(value) = table.get_mut(*name) {
                self.part(part, name, value, &format!("{key}/{name}"));
            }
        }
    }

    fn part(&mut self, part: &Part, name: &str, value: &mut Value, key: &str) {
        match (part, value) {
            (Part::Text, Value::String(text)) => (self.with)(key, text),
            (Part::Word, Value::String(word)) => self.word(name, word),
            (Part::Words, Value::Array(words)) => {
                for word in words {
                    self.part(&Part::Word, name, word, key);
                }
            }
            (Part::Table(fields), table) => self.fields(fields, table, key),
            (Part::List(fields), Value::Array(items)) => {
                for item in items {
                    let key = format!("{key}/{}", item.get("id").and_then(Value::as_str).unwrap_or_default());
                    self.fields(fields, item, &key);
                }
            }
            (Part::Pairs, Value::Array(pairs)) => {
                for pair in pairs.iter_mut().filter_map(Value::as_array_mut) {
                    if let [Value::String(id), Value::String(text)] = pair.as_mut_slice() {
                        (self.with)(&format!("{key}/{id}"), text);
                    }
                }
            }
            (Part::Names, Value::Object(names)) => {
                for (id, name) in names {
                    self.part(&Part::Text, id, name, &format!("{key}/{id}"));
                }
            }
            _ => {}
        }
    }

    fn word(&mut self, field: &str, word: &mut String) {
        let key = format!("{}/{field}/{}", self.shared, slug(word));
        (self.with)(&key, word);
    }
}

/// What tells a word from others: its letters and digits, with hyphens between.
fn slug(text: &str) -> String {
    let lower = text.to_lowercase();
    let parts: Vec<&str> = lower.split(|sign: char| !sign.is_alphanumeric()).filter(|part| !part.is_empty()).collect();
    parts.join("-")
}

#[cfg(test)]
mod tests {
    use super::slug;

    #[test]
    fn a_word_is_told_apart_by_its_letters_and_digits() {
        assert_eq!(slug("helmet, gloves, boots, jacket"), "helmet-gloves-boots-jacket");
        assert_eq!(slug("rev counter or the bike's own"), "rev-counter-or-the-bike-s-own");
    }
}
