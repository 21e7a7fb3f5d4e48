//! Numbers as they are written: grouped by thin spaces, with a real minus, decimals by unit.
//!
//! The same rules stand in `mobile-shell/ui/src/words/numbers.ts`; a test compares both over a thousand values. What a unit
//! shows is in `bindings/generated/units.json`, which the core writes.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;

const THIN: char = '\u{202f}';
const MINUS: char = '\u{2212}';
const NO_BREAK: char = '\u{a0}';

/// Most decimals of a number that is shown as exact as it was given.
const EXACT: usize = 6;

/// A unit as it is shown.
#[derive(Debug, Deserialize)]
struct Card {
    unit: String,
    symbol: String,
    decimals: usize,
}

static UNITS: LazyLock<BTreeMap<String, Card>> = LazyLock::new(|| {
    let cards: Vec<Card> = serde_json::from_str(include_str!("../../generated/units.json")).unwrap_or_default();
    cards.into_iter().map(|card| (card.unit.clone(), card)).collect()
});

/// How many decimals a number gets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Decimals {
    /// As many as its unit shows, without zeros at the end.
    OfUnit,
    /// So many.
    Fixed(usize),
    /// So many, without zeros at the end.
    AtMost(usize),
    /// As many as it has.
    Exact,
}

/// A number, its decimals after the sign of the language.
pub fn number(value: f64, unit: &str, decimals: Decimals, sign: char) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let of_unit = UNITS.get(unit).map_or(2, |card| card.decimals);
    let digits = match decimals {
        Decimals::OfUnit => trimmed(&fixed(value, of_unit)),
        Decimals::Fixed(decimals) => fixed(value, decimals),
        Decimals::AtMost(decimals) => trimmed(&fixed(value, decimals)),
        Decimals::Exact => trimmed(&fixed(value, EXACT)),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((&digits, ""));
    // A year is a name, not an amount.
    let whole = if unit == "year" { whole.to_owned() } else { grouped(whole) };
    let text = if part.is_empty() { whole } else { format!("{whole}{sign}{part}") };
    // What rounds to nothing has no sign.
    let nothing = digits.chars().all(|digit| digit == '0' || digit == '.');
    if value < 0.0 && !nothing { format!("{MINUS}{text}") } else { text }
}

/// The amount with its symbol behind it, never parted by the end of a line.
pub fn with_symbol(number: &str, symbol: &str) -> String {
    match symbol {
        "" => number.to_owned(),
        // The sign of an angle alone stands close to its number.
        "°" => format!("{number}°"),
        _ => format!("{number}{NO_BREAK}{symbol}"),
    }
}

/// The symbol of a unit.
pub fn symbol(unit: &str) -> &'static str {
    UNITS.get(unit).map_or("", |card| &card.symbol)
}

/// So many decimals, rounded half away from zero as far as the binary number allows, without a sign.
pub fn fixed(value: f64, decimals: usize) -> String {
    format!("{:.decimals$}", value.abs())
}

fn trimmed(digits: &str) -> String {
    if digits.contains('.') { digits.trim_end_matches('0').trim_end_matches('.').to_owned() } else { digits.to_owned() }
}

/// Groups of three, parted by thin spaces.
fn grouped(whole: &str) -> String {
    let mut text = String::new();
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && (whole.len() - place).is_multiple_of(3) {
            text.push(THIN);
        }
        text.push(digit);
    }
    text
}
