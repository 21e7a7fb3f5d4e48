//! Colour codes of wires.
//!
//! The letters are those of IEC 60757 (from memory, unconfirmed); a tracer follows after a stroke. Makers' own colour tables
//! differ: the label of a wire is free text, the code only draws it.

use crate::error::Refused;

/// Codes and colours.
pub const COLOUR_CODES: [(&str, &str); 13] = [
    ("BK", "black"),
    ("BN", "brown"),
    ("RD", "red"),
    ("OG", "orange"),
    ("YE", "yellow"),
    ("GN", "green"),
    ("BU", "blue"),
    ("VT", "violet"),
    ("GY", "grey"),
    ("WH", "white"),
    ("PK", "pink"),
    ("TQ", "turquoise"),
    ("SR", "silver"),
];

/// A colour code in words, or a refusal that names the code and lists those that are known.
///
/// ```
/// use layshaft_core::harness::check_colour;
/// assert_eq!(check_colour("GN/YE").unwrap(), "green with yellow tracer");
/// assert!(check_colour("XY").unwrap_err().english().contains("XY is no colour code"));
/// ```
pub fn check_colour(code: &str) -> Result<String, Refused> {
    let name = |part: &str| {
        let found = COLOUR_CODES.iter().find(|(code, _)| code.eq_ignore_ascii_case(part.trim()));
        found.map(|(_, name)| *name).ok_or_else(|| {
            let known: Vec<&str> = COLOUR_CODES.iter().map(|(code, _)| *code).collect();
            Refused::Unreadable {
                field: "colour".to_owned(),
                label: "Colour of a wire".into(),
                reason: format!(
                    "{} is no colour code; use {}, with a stroke before the tracer",
                    part.trim(),
                    known.join(" ")
                )
                .into(),
            }
        })
    };
    match code.split_once('/') {
        Some((base, tracer)) => Ok(format!("{} with {} tracer", name(base)?, name(tracer)?)),
        None => name(code).map(str::to_owned),
    }
}
