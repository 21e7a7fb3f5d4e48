//! A formula of the trade, said once: what it takes and gives, how, where it comes from and where it holds.
//!
//! The declaration stands beside the function that does the arithmetic. The list of all formulas
//! ([`crate::handbook`]) makes of it the dispatch, the bindings and the handbook; a page makes its working of it.

use layshaft_wire::wire;

use super::figure::{Figure, Figures};
use super::input::InputCard;
use super::source::Source;
use super::working::WorkLine;
use crate::error::Refused;
use crate::units::Unit;

/// The area of the trade that a formula belongs to.
#[wire]
pub enum Area {
    /// Gears, chain, thrust.
    Drive,
    /// Brakes.
    Brakes,
    /// Tyres.
    Tyres,
    /// Lamps, battery, wire.
    Electrics,
    /// Coats, cures, painted areas.
    Paint,
    /// Fillings and mixtures.
    Fluids,
    /// Screws and threads.
    Fasteners,
    /// Deliveries and dates.
    Plan,
}

/// A result as the handbook shows it.
#[wire]
pub struct OutputCard {
    /// Name in the figures.
    pub name: String,
    /// In words.
    pub label: String,
    /// Symbol in the equation.
    pub symbol: String,
    /// Unit.
    pub unit: Unit,
}

/// A formula as the handbook shows it.
#[wire]
pub struct FormulaCard {
    /// Name by which it is asked for.
    pub kind: String,
    /// Area of the trade.
    pub area: Area,
    /// What it works out.
    pub title: String,
    /// The equation in symbols.
    pub equation: String,
    /// What it takes.
    pub inputs: Vec<InputCard>,
    /// What it gives, the main result first.
    pub outputs: Vec<OutputCard>,
    /// Where it comes from.
    pub source: Source,
    /// Where it holds.
    pub range: String,
}

/// What every formula can do. Made by [`formula!`].
pub(crate) trait Evaluate {
    /// The formula as the handbook shows it.
    fn card() -> FormulaCard
    where
        Self: Sized;

    /// Checks every input against what it accepts.
    fn check(&self) -> Result<(), Refused>;

    /// The results, inputs taken as they are. Refused where no result exists.
    fn results(&self) -> Result<Vec<Figure>, Refused>;

    /// Symbols of the numbers that were given, with the numbers.
    fn numbers(&self) -> Vec<(&'static str, f64)>;

    /// The results after every input has been checked.
    fn evaluate(&self) -> Result<Figures, Refused> {
        self.check()?;
        Ok(Figures { figures: self.results()? })
    }

    /// A line of a page's working: the equation with the numbers in it, and the main result. None where there is none.
    fn line(&self, label: &str) -> Option<WorkLine>
    where
        Self: Sized,
    {
        let card = Self::card();
        let result = self.results().ok()?.into_iter().next()?;
        let right = card.equation.split_once(" = ").map_or(card.equation.as_str(), |(_, right)| right);
        let equation = with_numbers(right, &self.numbers()).replace('·', "×");
        Some(WorkLine::new(label, equation, result.value, result.unit))
    }
}

/// An equation with numbers in place of the symbols that are known.
fn with_numbers(equation: &str, numbers: &[(&'static str, f64)]) -> String {
    let mut shown = String::new();
    let mut symbol = String::new();
    for letter in equation.chars().chain(['\n']) {
        let inside = letter.is_alphabetic() || letter == '_' || letter == '′' || ('₀'..='₉').contains(&letter);
        if inside || (!symbol.is_empty() && letter.is_ascii_digit()) {
            symbol.push(letter);
            continue;
        }
        match numbers.iter().find(|(known, _)| *known == symbol) {
            Some((_, number)) => shown.push_str(&rounded(*number)),
            None => shown.push_str(&symbol),
        }
        symbol.clear();
        shown.push(letter);
    }
    shown.trim_end().to_owned()
}

/// A number with at most four decimals; what is entered has fewer, what is worked out is cut there. A negative one stands in
/// brackets, so that no two signs meet.
fn rounded(number: f64) -> String {
    let cut = (number * 1e4).round() / 1e4;
    if cut < 0.0 { format!("(−{})", -cut) } else { cut.to_string() }
}

/// Declares a formula.
///
/// Doc comment: what it works out. In order: the area, the equation in symbols; each input with its doc comment (label, unit),
/// symbol, field, type and what it accepts; each result with label, symbol, name and unit; source; where it holds; how.
macro_rules! formula {
    (
        #[doc = $title:literal]
        $name:ident in $area:ident, $equation:literal
        takes { $(#[doc = $label:literal] $symbol:literal $field:ident: $type:ty = $accepts:expr;)* }
        gives { $($result:ident $result_label:literal $result_symbol:literal $unit:ident;)* }
        from $source:expr;
        holds $range:literal;
        $given:ident => $results:expr
    ) => {
        #[doc = $title]
        #[layshaft_wire::wire]
        pub struct $name {
            $(#[doc = $label] pub $field: $type,)*
        }

        impl $crate::quantity::Evaluate for $name {
            fn card() -> $crate::quantity::FormulaCard {
                let mut kind = stringify!($name).to_owned();
                kind.get_mut(..1).into_iter().for_each(str::make_ascii_lowercase);
                $crate::quantity::FormulaCard {
                    kind,
                    area: $crate::quantity::Area::$area,
                    title: $title.trim().trim_end_matches('.').to_owned(),
                    equation: $equation.to_owned(),
                    inputs: vec![$($accepts.card(stringify!($field), $label, $symbol)),*],
                    outputs: vec![$($crate::quantity::OutputCard {
                        name: $crate::quantity::camel(stringify!($result)),
                        label: $result_label.to_owned(),
                        symbol: $result_symbol.to_owned(),
                        unit: $crate::units::Unit::$unit,
                    }),*],
                    source: $source,
                    range: $range.to_owned(),
                }
            }

            fn check(&self) -> Result<(), $crate::error::Refused> {
                $({
                    let given = $crate::quantity::Input::given(&self.$field);
                    $accepts.check(&$crate::quantity::camel(stringify!($field)), $label, &given)?;
                })*
                Ok(())
            }

            fn results(&self) -> Result<Vec<$crate::quantity::Figure>, $crate::error::Refused> {
                let $given = self;
                let found: Result<[_; [$(stringify!($result)),*].len()], $crate::error::Refused> = $results;
                let values: [Option<f64>; [$(stringify!($result)),*].len()] = found?.map(Into::into);
                let named = [$((stringify!($result), $crate::units::Unit::$unit)),*];
                let known = named.into_iter().zip(values).filter_map(|((name, unit), value)| {
                    value.map(|value| $crate::quantity::Figure { name: $crate::quantity::camel(name), value, unit })
                });
                Ok(known.collect())
            }

            fn numbers(&self) -> Vec<(&'static str, f64)> {
                let given = [$(($symbol, $crate::quantity::Input::given(&self.$field))),*];
                given
                    .into_iter()
                    .filter_map(|(symbol, given)| match given {
                        $crate::quantity::Given::Number(number) => Some((symbol, number)),
                        _ => None,
                    })
                    .collect()
            }
        }
    };
}
pub(crate) use formula;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_take_the_place_of_their_symbols_and_of_nothing_else() {
        let numbers = [("d", 8.0), ("d₂", 7.18801), ("P", 1.25)];
        assert_eq!(
            with_numbers("π/4 · ((d₂ + d₃) / 2)² + d · sin(P)", &numbers),
            "π/4 · ((7.188 + d₃) / 2)² + 8 · sin(1.25)"
        );
        assert_eq!(with_numbers("d", &numbers), "8");
        assert_eq!(with_numbers("d_x + dP", &numbers), "d_x + dP");
        assert_eq!(with_numbers("243.12 + T", &[("T", -5.0)]), "243.12 + (−5)");
    }
}
