//! Numbers as they are written: in groups, with a real minus, decimals by unit.
//!
//! The same rules stand in `mobile-shell/ui/src/words/numbers.ts`; a test compares both over a thousand values. What a unit
//! shows is in `bindings/generated/units.json`, which the core writes.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;

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

/// The signs of a language.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Signs {
    /// Before the decimals.
    pub decimal: String,
    /// Between groups of three digits.
    pub group: String,
}

/// A number with the signs of the language.
pub fn number(value: f64, unit: &str, decimals: Decimals, signs: &Signs) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    // A year is a name, not an amount.
    if unit == "year" {
        return format!("{}{}", if value < 0.0 { "-" } else { "" }, fixed(value, 0));
    }
    let of_unit = UNITS.get(unit).map_or(2, |card| card.decimals);
    let digits = match decimals {
        Decimals::OfUnit => trimmed(&fixed(value, of_unit)),
        Decimals::Fixed(decimals) => fixed(value, decimals),
        Decimals::AtMost(decimals) => trimmed(&fixed(value, decimals)),
        Decimals::Exact => trimmed(&fixed(value, EXACT)),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((&digits, ""));
    let whole = grouped(whole, &signs.group);
    let text = if part.is_empty() { whole } else { format!("{whole}{}{part}", signs.decimal) };
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

/// So many decimals, without a sign. Exactly half is rounded up, as JavaScript does; the compiler's own rounding takes the even
/// neighbour there.
fn fixed(value: f64, decimals: usize) -> String {
    let value = value.abs();
    // Long enough for every digit of a number that the trade has.
    let whole = format!("{value:.80}");
    let rest = whole.split_once('.').and_then(|(_, part)| part.get(decimals..)).unwrap_or_default();
    let half = rest.strip_prefix('5').is_some_and(|rest| rest.bytes().all(|digit| digit == b'0'));
    let value = if half { value.next_up() } else { value };
    format!("{value:.decimals$}")
}

fn trimmed(digits: &str) -> String {
    if digits.contains('.') { digits.trim_end_matches('0').trim_end_matches('.').to_owned() } else { digits.to_owned() }
}

/// Groups of three, parted by a sign.
fn grouped(whole: &str, sign: &str) -> String {
    let mut text = String::new();
    for (place, digit) in whole.chars().enumerate() {
        if place > 0 && (whole.len() - place).is_multiple_of(3) {
            text.push_str(sign);
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;

    const FIGURES: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../fixtures/words/figures.json");

    fn read(decimals: &Value) -> Decimals {
        match decimals.as_u64() {
            Some(decimals) => Decimals::Fixed(usize::try_from(decimals).unwrap()),
            None if decimals == "exact" => Decimals::Exact,
            None => Decimals::OfUnit,
        }
    }

    fn signs(decimal: &str, group: &str) -> Signs {
        Signs { decimal: decimal.to_owned(), group: group.to_owned() }
    }

    fn english() -> Signs {
        signs(".", "\u{202f}")
    }

    fn written(value: f64, unit: &str, decimals: &Value, signs: &Signs) -> String {
        with_symbol(&number(value, unit, read(decimals), signs), symbol(unit))
    }

    /// Values of every size, halves among them, in every unit; the same ones each time.
    fn figures() -> Vec<Value> {
        let mut state = 7_u64;
        let mut dice = move |most: u64| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) % most
        };
        let mut figures = Vec::new();
        for round in 0..21_u64 {
            for unit in UNITS.keys() {
                let size = 10_f64.powi(i32::try_from(dice(8)).unwrap() - 3);
                let value = match dice(4) {
                    0 => dice(200_000) as f64 / 8.0,
                    1 => dice(2_000) as f64 - 1_000.0,
                    _ => (dice(2_000_001) as f64 - 1_000_000.0) / 1_000_000.0 * size,
                };
                let decimals =
                    [json!("of unit"), json!("exact"), json!(dice(4))][usize::try_from(round % 3).unwrap()].clone();
                let text = written(value, unit, &decimals, &english());
                figures.push(json!({ "text": text, "value": value, "unit": unit, "decimals": decimals }));
            }
        }
        figures
    }

    /// The other renderer reads the same file. With `WRITE_FIGURES` set it is written anew, for a rule that is meant to change.
    #[test]
    fn a_thousand_figures_are_written_as_the_other_renderer_writes_them_with_the_signs_of_any_language() {
        if std::env::var_os("WRITE_FIGURES").is_some() {
            let lines: Vec<String> = figures().iter().map(Value::to_string).collect();
            std::fs::write(FIGURES, format!("[\n{}\n]\n", lines.join(",\n"))).unwrap();
        }
        let figures: Vec<Value> = serde_json::from_str(&std::fs::read_to_string(FIGURES).unwrap()).unwrap();
        assert!(figures.len() > 1000);
        for figure in figures {
            let (value, unit) = (figure["value"].as_f64().unwrap(), figure["unit"].as_str().unwrap());
            let (decimals, text) = (&figure["decimals"], figure["text"].as_str().unwrap());
            assert_eq!(written(value, unit, decimals, &english()), text, "{figure}");
            let with_commas = text.replacen('.', ",", 1).replace('\u{202f}', ".");
            assert_eq!(written(value, unit, decimals, &signs(",", ".")), with_commas, "{figure}");
        }
    }

    #[test]
    fn figures_are_grouped_rounded_and_signed_as_people_write_them() {
        let say = |value, unit, decimals| number(value, unit, decimals, &english());
        assert_eq!(say(12_345.0, "rpm", Decimals::OfUnit), "12\u{202f}345");
        assert_eq!(say(-0.04, "millimetre", Decimals::OfUnit), "0");
        assert_eq!(say(-3.25, "millimetre", Decimals::Fixed(1)), "\u{2212}3.3");
        assert_eq!(say(2.5, "watt", Decimals::OfUnit), "3");
        assert_eq!(say(1_979.0, "year", Decimals::OfUnit), "1979");
        assert_eq!(say(f64::NAN, "volt", Decimals::OfUnit), "–");
        assert_eq!(number(0.5, "millimetre", Decimals::Exact, &signs(",", ".")), "0,5");
        assert_eq!(with_symbol("12", "°"), "12°");
        assert_eq!(with_symbol("12", "mm"), "12\u{a0}mm");
    }
}
