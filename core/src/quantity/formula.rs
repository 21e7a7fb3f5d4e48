//! A formula of the trade, said once: what it takes and gives, how, where it comes from and where it holds.
//!
//! The declaration stands beside the function that does the arithmetic. The list of all formulas
//! ([`crate::handbook`]) makes of it the dispatch, the bindings and the handbook; a page makes its working of it.

use layshaft_wire::wire;

use super::figure::{Figure, Figures};
use super::input::{Accepts, Given, InputCard, camel};
use super::source::Source;
use super::working::WorkLine;
use crate::error::Refused;
use crate::message::Message;
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

/// What is said of an input.
pub(crate) struct InputDefinition {
    /// Field.
    pub(crate) field: &'static str,
    /// In words, with its unit.
    pub(crate) label: &'static str,
    /// Symbol in the equation.
    pub(crate) symbol: &'static str,
    /// What it accepts.
    pub(crate) accepts: Accepts,
}

/// What is said of a result.
pub(crate) struct OutputDefinition {
    /// Name in the figures, with low lines.
    pub(crate) name: &'static str,
    /// In words.
    pub(crate) label: &'static str,
    /// Symbol in the equation.
    pub(crate) symbol: &'static str,
    /// Unit.
    pub(crate) unit: Unit,
}

/// All that a formula says of itself.
pub(crate) struct Definition {
    /// Name of its type.
    pub(crate) name: &'static str,
    /// Area of the trade.
    pub(crate) area: Area,
    /// What it works out.
    pub(crate) title: &'static str,
    /// The equation in symbols.
    pub(crate) equation: &'static str,
    /// What it takes, in the order of its fields.
    pub(crate) inputs: &'static [InputDefinition],
    /// What it gives, the main result first.
    pub(crate) outputs: &'static [OutputDefinition],
    /// Where it comes from.
    pub(crate) source: fn() -> Source,
    /// Where it holds.
    pub(crate) range: &'static str,
}

impl Definition {
    /// The formula as the handbook shows it.
    pub(crate) fn card(&self) -> FormulaCard {
        let mut kind = self.name.to_owned();
        kind.get_mut(..1).into_iter().for_each(str::make_ascii_lowercase);
        let outputs = self.outputs.iter().map(|output| OutputCard {
            name: camel(output.name),
            label: output.label.to_owned(),
            symbol: output.symbol.to_owned(),
            unit: output.unit,
        });
        FormulaCard {
            kind,
            area: self.area,
            title: self.title.trim().trim_end_matches('.').to_owned(),
            equation: self.equation.to_owned(),
            inputs: self
                .inputs
                .iter()
                .map(|input| input.accepts.card(input.field, input.label, input.symbol))
                .collect(),
            outputs: outputs.collect(),
            source: (self.source)(),
            range: self.range.to_owned(),
        }
    }
}

/// What every formula can do. Made by [`formula!`].
pub(crate) trait Evaluate {
    /// What the formula says of itself.
    fn definition(&self) -> &'static Definition;

    /// What stands in each input, in the order of the definition.
    fn given(&self) -> Vec<Given<'_>>;

    /// The results, inputs taken as they are, in the order of the definition. Refused where no result exists.
    fn values(&self) -> Result<Vec<Option<f64>>, Refused>;

    /// The results after every input has been checked.
    fn evaluate(&self) -> Result<Figures, Refused> {
        let definition = self.definition();
        for (input, given) in definition.inputs.iter().zip(self.given()) {
            input.accepts.check(&camel(input.field), input.label, &given)?;
        }
        let named = definition.outputs.iter().zip(self.values()?);
        let known = named.filter_map(|(output, value)| {
            value.map(|value| Figure { name: camel(output.name), value, unit: output.unit })
        });
        Ok(Figures { figures: known.collect() })
    }

    /// A line of a page's working: the equation with the numbers in it, and the main result. None where there is none.
    fn line(&self, label: impl Into<Message>) -> Option<WorkLine>
    where
        Self: Sized,
    {
        let definition = self.definition();
        let value = self.values().ok()?.first().copied().flatten()?;
        let right = definition.equation.split_once(" = ").map_or(definition.equation, |(_, right)| right);
        let symbols = definition.inputs.iter().map(|input| input.symbol);
        let numbers: Vec<(&str, f64)> = symbols
            .zip(self.given())
            .filter_map(|(symbol, given)| match given {
                Given::Number(number) => Some((symbol, number)),
                _ => None,
            })
            .collect();
        let equation = with_numbers(right, &numbers).replace('·', "×");
        Some(WorkLine::new(label, equation, value, definition.outputs.first()?.unit))
    }
}

/// An equation with numbers in place of the symbols that are known.
fn with_numbers(equation: &str, numbers: &[(&str, f64)]) -> String {
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

        impl $name {
            /// What the formula says of itself.
            pub(crate) const DEFINITION: $crate::quantity::Definition = $crate::quantity::Definition {
                name: stringify!($name),
                area: $crate::quantity::Area::$area,
                title: $title,
                equation: $equation,
                inputs: &[$($crate::quantity::InputDefinition {
                    field: stringify!($field),
                    label: $label,
                    symbol: $symbol,
                    accepts: $accepts,
                }),*],
                outputs: &[$($crate::quantity::OutputDefinition {
                    name: stringify!($result),
                    label: $result_label,
                    symbol: $result_symbol,
                    unit: $crate::units::Unit::$unit,
                }),*],
                source: || $source,
                range: $range,
            };
        }

        impl $crate::quantity::Evaluate for $name {
            fn definition(&self) -> &'static $crate::quantity::Definition {
                &Self::DEFINITION
            }

            fn given(&self) -> Vec<$crate::quantity::Given<'_>> {
                vec![$($crate::quantity::Input::given(&self.$field)),*]
            }

            fn values(&self) -> Result<Vec<Option<f64>>, $crate::error::Refused> {
                let $given = self;
                let found: Result<[_; [$(stringify!($result)),*].len()], $crate::error::Refused> = $results;
                Ok(found?.into_iter().map(Into::into).collect())
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
