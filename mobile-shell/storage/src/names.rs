//! Names of columns, taken from the types of the core so that a new field is a new column by existing.

use std::fmt;

use layshaft_core::changes::Record;
use serde::de::{Deserialize, Deserializer, IgnoredAny, MapAccess, Visitor};

/// The fields of a record in the order in which the type declares them.
pub fn field_names<R: Record>() -> Vec<String> {
    let Ok(json) = serde_json::to_string(&R::default()) else { return Vec::new() };
    serde_json::from_str::<Names>(&json).map(|names| names.0).unwrap_or_default()
}

/// `handsOnMinutes` as `hands_on_minutes`.
pub fn column_name(field: &str) -> String {
    let mut name = String::with_capacity(field.len() + 4);
    for letter in field.chars() {
        if letter.is_ascii_uppercase() {
            name.push('_');
        }
        name.push(letter.to_ascii_lowercase());
    }
    name
}

/// The keys of a JSON object in the order in which they stand.
struct Names(Vec<String>);

impl<'de> Deserialize<'de> for Names {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        struct Keys;
        impl<'de> Visitor<'de> for Keys {
            type Value = Names;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("an object")
            }

            fn visit_map<M: MapAccess<'de>>(self, mut map: M) -> Result<Names, M::Error> {
                let mut names = Vec::new();
                while let Some((name, IgnoredAny)) = map.next_entry::<String, IgnoredAny>()? {
                    names.push(name);
                }
                Ok(Names(names))
            }
        }
        from.deserialize_map(Keys)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use layshaft_core::record::Part;

    #[test]
    fn fields_stand_in_the_order_of_the_type_and_columns_are_written_with_underscores() {
        let fields = field_names::<Part>();
        assert_eq!(&fields[..3], ["title", "state", "priceMinor"]);
        assert_eq!(column_name(&fields[2]), "price_minor");
    }
}
