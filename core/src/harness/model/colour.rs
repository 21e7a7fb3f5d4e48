//! Colour codes of wires.
//!
//! The letters are those of IEC 60757 (from memory, unconfirmed); a tracer follows after a stroke. Makers' own colour tables
//! differ: the label of a wire is free text, the code only draws it.

use super::message::{ModelMessage, WireColour};
use crate::error::Refused;
use crate::message::Message;

/// Codes and colours.
pub const COLOUR_CODES: [(&str, WireColour); 13] = [
    ("BK", WireColour::Black),
    ("BN", WireColour::Brown),
    ("RD", WireColour::Red),
    ("OG", WireColour::Orange),
    ("YE", WireColour::Yellow),
    ("GN", WireColour::Green),
    ("BU", WireColour::Blue),
    ("VT", WireColour::Violet),
    ("GY", WireColour::Grey),
    ("WH", WireColour::White),
    ("PK", WireColour::Pink),
    ("TQ", WireColour::Turquoise),
    ("SR", WireColour::Silver),
];

/// A colour code in words, or a refusal that names the code and lists those that are known.
///
/// ```
/// use layshaft_core::harness::check_colour;
/// assert!(check_colour("GN/YE").is_ok());
/// assert!(check_colour("XY").is_err());
/// ```
pub fn check_colour(code: &str) -> Result<Message, Refused> {
    let name = |part: &str| {
        let found = COLOUR_CODES.iter().find(|(code, _)| code.eq_ignore_ascii_case(part.trim()));
        found.map(|(_, name)| Message::from(*name)).ok_or_else(|| {
            let known: Vec<&str> = COLOUR_CODES.iter().map(|(code, _)| *code).collect();
            Refused::Unreadable {
                field: "colour".to_owned(),
                label: ModelMessage::FieldColour.into(),
                reason: ModelMessage::NoColourCode { code: part.trim().to_owned(), known: known.join(" ") }.into(),
            }
        })
    };
    match code.split_once('/') {
        Some((base, tracer)) => Ok(ModelMessage::WithTracer { base: name(base)?, tracer: name(tracer)? }.into()),
        None => name(code),
    }
}

#[cfg(test)]
mod tests {
    use super::check_colour;

    #[test]
    fn a_code_is_said_with_its_tracer_and_an_unknown_one_is_refused_by_name() {
        assert_eq!(check_colour("GN/YE").unwrap(), "green with yellow tracer");
        assert!(check_colour("XY").unwrap_err().english().contains("XY is no colour code"));
    }
}
