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
    let mut text = right_side(&parts, definition, shown);
    let mut constants = Vec::new();
    for (left, right) in parts.iter().filter(|(left, _)| *left != shown.symbol) {
        if known.iter().any(|(symbol, _)| symbol == left) || !symbols(&text).any(|symbol| symbol == *left) {
            continue;
        }
        if right.parse::<f64>().is_ok() {
            constants.push((*left, *right));
        } else {
            text.extend([", ", left, " = ", right]);
        }
    }
    let put = |text: &str, at: usize| {
        with_numbers(text, |symbol| {
            let constant = constants.iter().find(|(left, _)| *left == symbol).map(|(_, right)| *right);
            let listed = known.iter().find(|(left, _)| *left == symbol);
            constant.or_else(|| listed.and_then(|(_, each)| each.get(at).or(each.first()).map(String::as_str)))
        })
    };
    let text = match text.split_once("Σ ") {
        Some((before, term)) => {
            let terms = known.iter().map(|(_, each)| each.len()).max().unwrap_or_default();
            let terms: Vec<String> = (0..terms).map(|at| put(term, at)).collect();
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
    while let Some((left, after)) = rest.split_once(" = ") {
        // The part ends at the last comma before the next equals sign; the last one at the end.
        let next = after.find(" = ").unwrap_or(after.len());
        let inside = after.get(..next).unwrap_or(after);
        let end = if next == after.len() { after.len() } else { inside.rfind(", ").unwrap_or(after.len()) };
        parts.push((left, after.get(..end).unwrap_or(after)));
        rest = after.get(end..).unwrap_or_default().trim_start_matches(", ");
    }
    parts
}

/// Whether a letter goes on with a symbol. Asked of every letter of every line, so the usual ones come first.
fn within_symbol(letter: char, begun: bool) -> bool {
    match letter {
        'a'..='z' | 'A'..='Z' | '_' | '′' | '₀'..='₉' => true,
        '0'..='9' => begun,
        '\0'..='\x7f' | '·' | '−' | '×' | '²' | '√' => false,
        _ => letter.is_alphabetic(),
    }
}

/// Every symbol of a text.
fn symbols(text: &str) -> impl Iterator<Item = &str> {
    text.split(|letter| !within_symbol(letter, true)).filter(|symbol| !symbol.is_empty())
}

/// An equation with numbers in place of the symbols that are known.
fn with_numbers<'a>(equation: &'a str, known: impl Fn(&str) -> Option<&'a str>) -> String {
    let mut shown = String::with_capacity(2 * equation.len());
    let mut begins = None;
    for (at, letter) in equation.char_indices().chain([(equation.len(), ' ')]) {
        if within_symbol(letter, begins.is_some()) {
            begins = begins.or(Some(at));
            continue;
        }
        if let Some(symbol) = begins.take().and_then(|begins| equation.get(begins..at)) {
            shown.push_str(known(symbol).unwrap_or(symbol));
        }
        shown.push(letter);
    }
    shown.truncate(shown.trim_end().len());
    shown
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
