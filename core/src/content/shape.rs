//! Whether content in another language is the English one but for its texts.

use serde_json::Value;

/// The first place at which one differs from the other in more than what a text says; none where they agree.
pub(super) fn difference(english: &Value, other: &Value) -> Option<String> {
    below(english, other, "")
}

fn below(english: &Value, other: &Value, place: &str) -> Option<String> {
    let differs = match (english, other) {
        (Value::Object(one), Value::Object(two)) => {
            let within = |(name, value): (&String, &Value)| {
                let place = format!("{place}/{name}");
                match two.get(name) {
                    Some(other) => below(value, other, &place),
                    None => Some(place),
                }
            };
            return one.iter().find_map(within).or_else(|| (one.len() != two.len()).then(|| shown(place)));
        }
        (Value::Array(one), Value::Array(two)) if one.len() == two.len() => {
            let mut pairs = (0..).zip(one.iter().zip(two));
            return pairs.find_map(|(at, (one, two))| below(one, two, &format!("{place}/{at}")));
        }
        // A text says something.
        (Value::String(_), Value::String(text)) => text.trim().is_empty(),
        (one, two) => one != two,
    };
    differs.then(|| shown(place))
}

fn shown(place: &str) -> String {
    if place.is_empty() { "/".to_owned() } else { place.to_owned() }
}
