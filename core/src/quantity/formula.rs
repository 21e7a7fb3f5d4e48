//! A formula of the trade, said once: what it takes and gives, how, where it comes from and where it holds.
//!
//! The declaration stands beside the function that does the arithmetic. The list of all formulas
//! ([`crate::handbook`]) makes of it the dispatch, the bindings and the handbook; a page makes its working of it.

use layshaft_wire::wire;

use super::figure::{Figure, Figures};
use super::input::{Accepts, Given, InputCard, camel};
use super::source::Source;
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
    /// What every area uses.
    General,
}

/// A result as the handbook shows it.
#[wire]
pub struct OutputCard {
    /// Name in the figures.
    pub name: String,
    /// In words.
    pub label: Message,
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
    pub title: Message,
    /// The equation in symbols.
    pub equation: String,
    /// What it takes.
    pub inputs: Vec<InputCard>,
    /// What it gives, the main result first.
    pub outputs: Vec<OutputCard>,
    /// Where it comes from.
    pub source: Source,
    /// Where it holds.
    pub range: Message,
}

/// What is said of an input.
pub(crate) struct InputDefinition {
    /// Field.
    pub(crate) field: &'static str,
    /// Symbol in the equation.
    pub(crate) symbol: &'static str,
    /// What it accepts.
    pub(crate) accepts: Accepts,
}

/// What is said of a result.
pub(crate) struct OutputDefinition {
    /// Name in the figures, with low lines.
    pub(crate) name: &'static str,
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
    /// The equation in symbols.
    pub(crate) equation: &'static str,
    /// What it takes, in the order of its fields.
    pub(crate) inputs: &'static [InputDefinition],
    /// What it gives, the main result first.
    pub(crate) outputs: &'static [OutputDefinition],
    /// Where it comes from.
    pub(crate) source: fn() -> Source,
}

impl Definition {
    /// Its name as it crosses the door.
    fn kind(&self) -> String {
        let mut kind = self.name.to_owned();
        kind.get_mut(..1).into_iter().for_each(str::make_ascii_lowercase);
        kind
    }

    /// The message with the words for a part of it: `formula-dewPoint`, `formula-dewPoint-celsius`.
    fn said(&self, part: &str) -> Message {
        Message::new(format!("formula-{}{part}", self.kind()), Vec::new())
    }

    fn label(&self, input: &InputDefinition) -> Message {
        self.said(&format!("-{}", camel(input.field)))
    }

    /// The formula as the handbook shows it.
    pub(crate) fn card(&self) -> FormulaCard {
        let inputs = self.inputs.iter().map(|input| input.accepts.card(input.field, self.label(input), input.symbol));
        let outputs = self.outputs.iter().map(|output| OutputCard {
            name: camel(output.name),
            label: self.said(&format!("-gives-{}", camel(output.name))),
            symbol: output.symbol.to_owned(),
            unit: output.unit,
        });
        FormulaCard {
            kind: self.kind(),
            area: self.area,
            title: self.said(""),
            equation: self.equation.to_owned(),
            inputs: inputs.collect(),
            outputs: outputs.collect(),
            source: (self.source)(),
            range: self.said("-holds"),
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
            input.accepts.check(&camel(input.field), || definition.label(input), &given)?;
        }
        let named = definition.outputs.iter().zip(self.values()?);
        let known = named.filter_map(|(output, value)| {
            value.map(|value| Figure { name: camel(output.name), value, unit: output.unit })
        });
        Ok(Figures { figures: known.collect() })
    }
}

/// Declares a formula.
///
/// Doc comment: what it works out. In order: the area, the equation in symbols; each input with its doc comment (meaning, unit),
/// symbol, field, type and what it accepts; each result with its meaning, symbol, name and unit; source; how. What a reader sees of
/// it, and where it holds, stands in the catalogue under `formula-<name>`.
macro_rules! formula {
    (
        #[doc = $title:literal]
        $name:ident in $area:ident, $equation:literal
        takes { $(#[doc = $label:literal] $symbol:literal $field:ident: $type:ty = $accepts:expr;)* }
        gives { $($(#[doc = $result_label:literal])? $result:ident $result_symbol:literal $unit:ident;)* }
        from $source:expr;
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
                equation: $equation,
                inputs: &[$($crate::quantity::InputDefinition {
                    field: stringify!($field),
                    symbol: $symbol,
                    accepts: $accepts,
                }),*],
                outputs: &[$($crate::quantity::OutputDefinition {
                    name: stringify!($result),
                    symbol: $result_symbol,
                    unit: $crate::units::Unit::$unit,
                }),*],
                source: || $source,
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
