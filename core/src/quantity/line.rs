//! A line of a page's working, made out of a formula: its equation with the numbers in it, and a result.

use std::fmt::Write as _;

use super::equation::{Piece, template};
use super::formula::Evaluate;
use super::input::{Accepts, Given};
use super::working::WorkLine;
use crate::message::Message;
use crate::units::Unit;

/// What may stand in the place of a symbol; a list has several numbers.
struct Stands<'a> {
    given: Given<'a>,
    /// What stands close behind the number.
    sign: &'static str,
}

impl Stands<'_> {
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
        Stands { given, sign: if in_degrees { "°" } else { "" } }
    });
    let others = values.iter().map(|value| Stands { given: Given::Number(value.unwrap_or(f64::NAN)), sign: "" });
    let stand: Vec<Stands> = inputs.chain(others).collect();
    let known = stand.iter().map(|each| each.numbers().next().is_some()).collect();
    let template = template(definition, at, known)?;

    let mut equation = String::with_capacity(2 * definition.equation.len());
    write(&mut equation, &template.once, &stand, 0);
    if let Some(pieces) = &template.term {
        let terms = stand.iter().map(|each| each.numbers().count()).max().unwrap_or_default();
        for term in 0..terms {
            equation.push_str(if term == 0 { "" } else { " + " });
            write(&mut equation, pieces, &stand, term);
        }
    }
    Some(WorkLine::new(label, equation, value, shown.unit))
}

/// Writes the pieces of an equation with the numbers of one term in them.
fn write(equation: &mut String, pieces: &[Piece], stand: &[Stands], term: usize) {
    for piece in pieces {
        match piece {
            Piece::Text(text) => equation.push_str(text),
            Piece::Number(place) => {
                let Some(each) = stand.get(*place) else { continue };
                if let Some(number) = each.at(term) {
                    push_rounded(equation, number);
                    equation.push_str(each.sign);
                }
            }
        }
    }
}

/// Writes a number with at most four decimals; what is entered has fewer, what is worked out is cut there. A small one keeps three
/// figures, a negative one stands in brackets, so that no two signs meet.
fn push_rounded(shown: &mut String, number: f64) {
    let size = number.abs();
    let is_negative = number < 0.0 && size >= 1e-9;
    shown.push_str(if is_negative { "(−" } else { "" });
    // Writing to a text cannot fail.
    let _ = match size {
        ..1e-9 => write!(shown, "0"),
        ..0.01 => write!(shown, "{}", format!("{size:.2e}").parse().unwrap_or(size)),
        // Whole ten-thousandths are told exactly, and in half the time of the shortest decimals of a binary fraction.
        ..1e11 => push_decimals(shown, (size * 1e4).round() as u64),
        _ => write!(shown, "{size}"),
    };
    shown.push_str(if is_negative { ")" } else { "" });
}

/// Writes a number of ten-thousandths as a decimal without closing zeros.
fn push_decimals(shown: &mut String, number: u64) -> std::fmt::Result {
    write!(shown, "{}", number / 10_000)?;
    let (mut rest, mut places) = (number % 10_000, 4);
    if rest == 0 {
        return Ok(());
    }
    while rest % 10 == 0 {
        (rest, places) = (rest / 10, places - 1);
    }
    write!(shown, ".{rest:0places$}")
}

#[cfg(test)]
#[path = "line_tests.rs"]
mod tests;
