//! A line of a page's working, made out of a formula: its equation with the numbers in it, and a result.

use super::formula::{Definition, Evaluate, OutputDefinition};
use super::input::{Accepts, Given};
use super::working::WorkLine;
use crate::message::Message;
use crate::units::Unit;

/// A symbol with its number as it is shown; a list has several.
type Known = (&'static str, Vec<String>);

/// What a page makes of a formula.
pub(crate) trait Line {
    /// The line of the main result. None where the formula does not give it.
    fn line(&self, label: impl Into<Message>) -> Option<WorkLine>;

    /// The line of one result. None where the formula does not give it.
    ///
    /// A result that goes into it shows as its number. A symbol that is not known stays a symbol, with the part of the equation
    /// that says what it is behind it: a number that is not known is none ([`f64::NAN`]).
    fn line_of(&self, output: &str, label: impl Into<Message>) -> Option<WorkLine>;
}

impl<F: Evaluate> Line for F {
    fn line(&self, label: impl Into<Message>) -> Option<WorkLine> {
        made(self, self.definition().outputs.first()?.name, label.into())
    }

    fn line_of(&self, output: &str, label: impl Into<Message>) -> Option<WorkLine> {
        made(self, output, label.into())
    }
}

/// The line of a result, once for all formulas.
fn made(formula: &dyn Evaluate, output: &str, label: Message) -> Option<WorkLine> {
    let definition = formula.definition();
    let values = formula.values().ok()?;
    let at = definition.outputs.iter().position(|known| known.name == output)?;
    let shown = definition.outputs.get(at)?;
    let value = values.get(at).copied().flatten().filter(|value| value.is_finite())?;

    let inputs = definition.inputs.iter().zip(formula.given());
    let mut known: Vec<Known> = inputs
        .filter_map(|(input, given)| {
            let sign =
                if matches!(input.accepts, Accepts::Within(bound) if bound.unit == Unit::Degree) { "°" } else { "" };
            let numbers: Vec<String> =
                numbers(&given).into_iter().map(|number| format!("{}{sign}", rounded(number))).collect();
            (!numbers.is_empty()).then_some((input.symbol, numbers))
        })
        .collect();
    let others = definition.outputs.iter().zip(values).filter(|(other, _)| stands_alone(definition, shown, other));
    known.extend(others.filter_map(|(other, value)| {
        let value = value.filter(|value| value.is_finite())?;
        Some((other.symbol, vec![rounded(value)]))
    }));
    Some(WorkLine::new(label, equation(definition, shown, &known), value, shown.unit))
}

/// Numbers that stand in an input; none where it is not known or is a text.
fn numbers(given: &Given) -> Vec<f64> {
    let numbers = match given {
        Given::Number(number) => vec![*number],
        Given::Numbers(numbers) => numbers.to_vec(),
        Given::Flag(yes) => vec![f64::from(u8::from(*yes))],
        Given::Text(_) => Vec::new(),
    };
    numbers.into_iter().filter(|number| number.is_finite()).collect()
}

/// Whether a result may stand as a number in the equation of another: its symbol means nothing else.
fn stands_alone(definition: &Definition, shown: &OutputDefinition, other: &OutputDefinition) -> bool {
    let same = definition.outputs.iter().filter(|output| output.symbol == other.symbol).count();
    same == 1 && other.symbol != shown.symbol && !other.symbol.contains(' ')
}

/// The right side for one result, numbers in place of symbols, followed by what its open symbols are.
fn equation(definition: &Definition, shown: &OutputDefinition, known: &[Known]) -> String {
    let parts = parts(definition.equation);
    let named = parts.iter().find(|(left, _)| left == shown.symbol).map(|(_, right)| right.clone());
    let whole = || match parts.first() {
        Some((left, right)) if !left.contains(' ') => right.clone(),
        // Solved for its symbol: both sides are needed.
        Some((left, right)) => format!("{left} = {right}"),
        None => definition.equation.to_owned(),
    };
    let mut text = match named {
        Some(right) => right,
        None if shown.symbol.contains(' ') => shown.symbol.to_owned(),
        None => whole(),
    };
    let mut constants = Vec::new();
    for (left, right) in parts.iter().filter(|(left, _)| left != shown.symbol) {
        if known.iter().any(|(symbol, _)| symbol == left) || !symbols(&text).any(|symbol| symbol == *left) {
            continue;
        }
        if right.parse::<f64>().is_ok() {
            constants.push((left.as_str(), right.as_str()));
        } else {
            text = format!("{text}, {left} = {right}");
        }
    }
    let put = |text: &str, at: usize| {
        with_numbers(text, |symbol| {
            let constant = constants.iter().find(|(left, _)| *left == symbol).map(|(_, right)| (*right).to_owned());
            let listed = known.iter().find(|(left, _)| *left == symbol);
            constant.or_else(|| listed.and_then(|(_, each)| each.get(at).or(each.first()).cloned()))
        })
    };
    let text = match text.split_once("Σ ") {
        Some((before, term)) => {
            let terms = known.iter().map(|(_, each)| each.len()).max().unwrap_or_default();
            let terms: Vec<String> = (0..terms).map(|at| put(term, at)).collect();
            format!("{}{}", put(before, 0), terms.join(" + "))
        }
        None => put(&text, 0),
    };
    text.replace('·', "×")
}

/// The parts of an equation, `x = …, y = …`; a comma inside brackets parts nothing.
fn parts(equation: &str) -> Vec<(String, String)> {
    let mut parts: Vec<(String, String)> = Vec::new();
    for piece in equation.split(", ") {
        match (piece.split_once(" = "), parts.last_mut()) {
            (Some((left, right)), _) => parts.push((left.to_owned(), right.to_owned())),
            (None, Some((_, right))) => *right = format!("{right}, {piece}"),
            (None, None) => {}
        }
    }
    parts
}

/// Whether a letter goes on with a symbol.
fn within_symbol(letter: char, begun: bool) -> bool {
    let mark = letter == '_' || letter == '′' || ('₀'..='₉').contains(&letter);
    letter.is_alphabetic() || mark || (begun && letter.is_ascii_digit())
}

/// Every symbol of a text.
fn symbols(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter| !within_symbol(letter, true)).filter(|symbol| !symbol.is_empty())
}

/// An equation with numbers in place of the symbols that are known.
fn with_numbers(equation: &str, known: impl Fn(&str) -> Option<String>) -> String {
    let mut shown = String::new();
    let mut symbol = String::new();
    for letter in equation.chars().chain(['\n']) {
        if within_symbol(letter, !symbol.is_empty()) {
            symbol.push(letter);
            continue;
        }
        shown.push_str(&known(&symbol).unwrap_or_else(|| symbol.clone()));
        symbol.clear();
        shown.push(letter);
    }
    shown.trim_end().to_owned()
}

/// A number with at most four decimals; what is entered has fewer, what is worked out is cut there. A small one keeps three
/// figures, a negative one stands in brackets, so that no two signs meet.
fn rounded(number: f64) -> String {
    let cut = match number.abs() {
        ..1e-9 => 0.0,
        ..0.01 => format!("{number:.2e}").parse().unwrap_or(number),
        _ => (number * 1e4).round() / 1e4,
    };
    if cut < 0.0 { format!("(−{})", -cut) } else { cut.to_string() }
}

#[cfg(test)]
#[path = "line_tests.rs"]
mod tests;
