//! A line of a page's working, made out of a formula: its equation with the numbers in it, and a result.

use std::fmt::Write as _;

use super::formula::{Definition, Evaluate, OutputDefinition};
use super::input::{Accepts, Given};
use super::working::WorkLine;
use crate::message::Message;
use crate::units::Unit;

/// A symbol whose number is known; a list has several numbers. A number becomes text only where its symbol stands.
struct Known<'a> {
    symbol: &'static str,
    given: Given<'a>,
    /// What stands close behind the number.
    sign: &'static str,
}

impl Known<'_> {
    /// The numbers; none where it is not known or is a text.
    fn numbers(&self) -> impl Iterator<Item = f64> {
        let (one, several): (Option<f64>, &[f64]) = match &self.given {
            Given::Number(number) => (Some(*number), &[]),
            Given::Numbers(numbers) => (None, numbers),
            Given::Flag(yes) => (Some(f64::from(u8::from(*yes))), &[]),
            Given::Text(_) => (None, &[]),
        };
        one.into_iter().chain(several.iter().copied()).filter(|number| number.is_finite())
    }

    /// The number in one term of a sum; what is no list is the same in each.
    fn at(&self, term: usize) -> Option<f64> {
        self.numbers().nth(term).or_else(|| self.numbers().next())
    }
}

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

    let inputs = definition.inputs.iter().zip(formula.given()).map(|(input, given)| {
        let in_degrees = matches!(input.accepts, Accepts::Within(bound) if bound.unit == Unit::Degree);
        Known { symbol: input.symbol, given, sign: if in_degrees { "°" } else { "" } }
    });
    let others = definition.outputs.iter().zip(values).filter(|(other, _)| stands_alone(definition, shown, other));
    let others = others
        .filter_map(|(other, value)| Some(Known { symbol: other.symbol, given: Given::Number(value?), sign: "" }));
    let known: Vec<Known> = inputs.chain(others).filter(|known| known.numbers().next().is_some()).collect();
    Some(WorkLine::new(label, equation(definition, shown, &known), value, shown.unit))
}

/// Whether a result may stand as a number in the equation of another: its symbol means nothing else.
fn stands_alone(definition: &Definition, shown: &OutputDefinition, other: &OutputDefinition) -> bool {
    let same = definition.outputs.iter().filter(|output| output.symbol == other.symbol).count();
    same == 1 && other.symbol != shown.symbol && !other.symbol.contains(' ')
}

/// The right side for one result, numbers in place of symbols, followed by what its open symbols are.
fn equation(definition: &Definition, shown: &OutputDefinition, known: &[Known]) -> String {
    let parts = parts(definition.equation);
    let mut text = right_side(&parts, definition, shown);
    let mut constants = Vec::new();
    for (left, right) in parts.iter().filter(|(left, _)| *left != shown.symbol) {
        if known.iter().any(|known| known.symbol == *left) || !symbols(&text).any(|symbol| symbol == *left) {
            continue;
        }
        if right.parse::<f64>().is_ok() {
            constants.push((*left, *right));
        } else {
            text.extend([", ", left, " = ", right]);
        }
    }
    let put = |text: &str, term: usize| {
        with_numbers(text, |symbol, shown| {
            if let Some((_, right)) = constants.iter().find(|(left, _)| *left == symbol) {
                shown.push_str(right);
                return true;
            }
            let known = known.iter().find(|known| known.symbol == symbol);
            let number = known.and_then(|known| Some((known.at(term)?, known.sign)));
            if let Some((number, sign)) = number {
                push_rounded(shown, number);
                shown.push_str(sign);
            }
            number.is_some()
        })
    };
    let text = match text.split_once('Σ') {
        Some((before, term)) => {
            let terms = known.iter().map(|known| known.numbers().count()).max().unwrap_or_default();
            let terms: Vec<String> = (0..terms).map(|at| put(term.trim_start(), at)).collect();
            put(before, 0) + &terms.join(" + ")
        }
        None => put(&text, 0),
    };
    text.replace('·', "×")
}

/// What stands right of the equals sign for one result.
fn right_side(parts: &[(&str, &str)], definition: &Definition, shown: &OutputDefinition) -> String {
    let named = parts.iter().find(|(left, _)| *left == shown.symbol);
    match (named, parts.first()) {
        (Some((_, right)), _) => (*right).to_owned(),
        // The symbol of such a result is an expression itself.
        (None, _) if shown.symbol.contains(' ') => shown.symbol.to_owned(),
        (None, Some((left, right))) if !left.contains(' ') => (*right).to_owned(),
        // Solved for its symbol: both sides are needed.
        (None, Some((left, right))) => format!("{left} = {right}"),
        (None, None) => definition.equation.to_owned(),
    }
}

/// The parts of an equation, `x = …, y = …`; a comma inside brackets parts nothing.
fn parts(equation: &str) -> Vec<(&str, &str)> {
    let mut parts: Vec<(&str, &str)> = Vec::new();
    let mut rest = equation;
    while let Some((left, after)) = rest.split_once('=') {
        let after = after.trim_start();
        // The part ends at the last comma before the next equals sign; the last one at the end.
        let inside = after.split_once('=').map(|(inside, _)| inside);
        let end = inside.and_then(|inside| inside.rfind(',')).unwrap_or(after.len());
        parts.push((left.trim_end(), after.get(..end).unwrap_or(after)));
        rest = after.get(end..).unwrap_or_default().trim_start_matches([',', ' ']);
    }
    parts
}

/// Whether a letter goes on with a symbol. Asked of every letter of every line, so the usual ones come first.
fn within_symbol(letter: char, begun: bool) -> bool {
    match letter {
        'a'..='z' | 'A'..='Z' | 'α'..='ω' | '_' | '′' | '₀'..='₉' => true,
        '0'..='9' => begun,
        '\0'..='\x7f' | '·' | '−' | '×' | '²' | '√' => false,
        _ => letter.is_alphabetic(),
    }
}

/// Every symbol of a text.
fn symbols(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter| !within_symbol(letter, true)).filter(|symbol| !symbol.is_empty())
}

/// An equation with numbers in place of symbols: `put` writes the number of one and says whether it has one.
fn with_numbers(equation: &str, put: impl Fn(&str, &mut String) -> bool) -> String {
    let mut shown = String::with_capacity(2 * equation.len());
    let mut begins = None;
    for (at, letter) in equation.char_indices().chain([(equation.len(), ' ')]) {
        if within_symbol(letter, begins.is_some()) {
            begins = begins.or(Some(at));
            continue;
        }
        if let Some(symbol) = begins.take().and_then(|begins| equation.get(begins..at))
            && !put(symbol, &mut shown)
        {
            shown.push_str(symbol);
        }
        shown.push(letter);
    }
    shown.truncate(shown.trim_end().len());
    shown
}

/// Writes a number with at most four decimals; what is entered has fewer, what is worked out is cut there. A small one keeps three
/// figures, a negative one stands in brackets, so that no two signs meet.
fn push_rounded(shown: &mut String, number: f64) {
    let cut = match number.abs() {
        ..1e-9 => 0.0,
        ..0.01 => format!("{number:.2e}").parse().unwrap_or(number),
        _ => (number * 1e4).round() / 1e4,
    };
    // Writing to a text cannot fail.
    let _ = if cut < 0.0 { write!(shown, "(−{})", -cut) } else { write!(shown, "{cut}") };
}

#[cfg(test)]
#[path = "line_tests.rs"]
mod tests;
