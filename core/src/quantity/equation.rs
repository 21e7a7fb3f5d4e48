//! The equation of a formula, made ready for the numbers of a line of a page's working.
//!
//! What stands where depends on the formula, the result and which symbols are known, never on the numbers. So it is read once
//! and kept: a page asks for the same dozen lines at every key that is pressed.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use super::formula::{Definition, OutputDefinition};

/// A piece of an equation.
pub(super) enum Piece {
    /// Shown as it is.
    Text(String),
    /// The number of a symbol: its place among the inputs, then the outputs, of the formula.
    Number(usize),
}

/// The right side of an equation, cut where numbers go.
pub(super) struct Template {
    /// The whole of it, or what stands before a sum.
    pub(super) once: Vec<Piece>,
    /// One term of the sum.
    pub(super) term: Option<Vec<Piece>>,
}

/// Which formula, which of its results, which symbols are known.
type Key = (*const Definition, usize, Vec<bool>);

thread_local! {
    static READ: RefCell<HashMap<Key, Rc<Template>>> = RefCell::new(HashMap::new());
}

/// The right side for the result at a place; `known` says of every input, then every output, whether its number is known.
pub(super) fn template(definition: &'static Definition, at: usize, known: Vec<bool>) -> Option<Rc<Template>> {
    let key = (std::ptr::from_ref(definition), at, known);
    if let Some(template) = READ.with_borrow(|read| read.get(&key).cloned()) {
        return Some(template);
    }
    let template = Rc::new(read(definition, definition.outputs.get(at)?, &key.2));
    READ.with_borrow_mut(|read| read.insert(key, Rc::clone(&template)));
    Some(template)
}

/// The right side for one result, with places for numbers, followed by what its open symbols are.
fn read(definition: &Definition, shown: &OutputDefinition, known: &[bool]) -> Template {
    let inputs = definition.inputs.iter().map(|input| Some(input.symbol));
    let outputs = definition.outputs.iter();
    let outputs = outputs.map(|other| stands_alone(definition, shown, other).then_some(other.symbol));
    let symbols_known: Vec<Option<&str>> =
        inputs.chain(outputs).zip(known).map(|(symbol, known)| symbol.filter(|_| *known)).collect();
    let place = |symbol: &str| symbols_known.iter().position(|known| *known == Some(symbol));

    let parts = parts(definition.equation);
    let mut text = right_side(&parts, definition, shown);
    let mut constants = Vec::new();
    for (left, right) in parts.iter().filter(|(left, _)| *left != shown.symbol) {
        if place(left).is_some() || !symbols(&text).any(|symbol| symbol == *left) {
            continue;
        }
        if right.parse::<f64>().is_ok() {
            constants.push((*left, *right));
        } else {
            text.extend([", ", left, " = ", right]);
        }
    }
    let cut = |text: &str| {
        pieces(text, |symbol| match constants.iter().find(|(left, _)| *left == symbol) {
            Some((_, right)) => Piece::Text((*right).to_owned()),
            None => place(symbol).map_or_else(|| Piece::Text(symbol.to_owned()), Piece::Number),
        })
    };
    match text.split_once('Σ') {
        Some((before, term)) => Template { once: cut(before), term: Some(cut(term.trim_start())) },
        None => Template { once: cut(&text), term: None },
    }
}

/// Whether a result may stand as a number in the equation of another: its symbol means nothing else.
fn stands_alone(definition: &Definition, shown: &OutputDefinition, other: &OutputDefinition) -> bool {
    let same = definition.outputs.iter().filter(|output| output.symbol == other.symbol).count();
    same == 1 && other.symbol != shown.symbol && !other.symbol.contains(' ')
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
pub(super) fn parts(equation: &str) -> Vec<(&str, &str)> {
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

/// A text cut at its symbols, each replaced by what `put` makes of it.
pub(super) fn pieces(text: &str, put: impl Fn(&str) -> Piece) -> Vec<Piece> {
    let mut pieces = Vec::new();
    let mut open = String::new();
    let mut begins = None;
    let text = text.trim_end();
    for (at, letter) in text.char_indices().map(|(at, letter)| (at, Some(letter))).chain([(text.len(), None)]) {
        if letter.is_some_and(|letter| within_symbol(letter, begins.is_some())) {
            begins = begins.or(Some(at));
            continue;
        }
        match begins.take().and_then(|begins| text.get(begins..at)).map(&put) {
            Some(Piece::Text(text)) => open.push_str(&text),
            Some(number) => pieces.extend([Piece::Text(std::mem::take(&mut open)), number]),
            None => {}
        }
        // A page shows the sign that a reader writes by hand.
        open.extend(letter.map(|letter| if letter == '·' { '×' } else { letter }));
    }
    pieces.push(Piece::Text(open));
    pieces.retain(|piece| !matches!(piece, Piece::Text(text) if text.is_empty()));
    pieces
}
