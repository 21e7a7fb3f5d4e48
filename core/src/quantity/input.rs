//! What a formula takes: numbers inside their ranges, words, choices.

use heck::ToLowerCamelCase as _;
use layshaft_wire::wire;

use crate::bounds::{Bound, BoundCard};
use crate::error::{Refused, none_of};
use crate::message::Message;

/// What an input of a formula accepts.
#[derive(Clone, Copy, Debug)]
pub enum Accepts {
    /// A number inside a range.
    Within(&'static Bound),
    /// A text that the formula reads itself.
    Text,
    /// One of these words.
    OneOf(&'static [&'static str]),
    /// Yes or no.
    YesOrNo,
}

/// A number inside a range.
pub(crate) const fn within(bound: &'static Bound) -> Accepts {
    Accepts::Within(bound)
}

/// An input as the handbook shows it.
#[wire]
pub struct InputCard {
    /// Field name as it crosses the door.
    pub name: String,
    /// In words.
    pub label: Message,
    /// Symbol in the equation.
    pub symbol: String,
    /// Accepted range, for a number.
    pub range: Option<BoundCard>,
    /// Accepted words, for a choice.
    pub one_of: Vec<String>,
}

/// What stands in an input.
pub(crate) enum Given<'a> {
    /// A number.
    Number(f64),
    /// Several numbers.
    Numbers(&'a [f64]),
    /// A text.
    Text(&'a str),
    /// Yes or no.
    Flag(bool),
}

/// A type that an input may have.
pub(crate) trait Input {
    /// What stands there.
    fn given(&self) -> Given<'_>;
}

impl Input for f64 {
    fn given(&self) -> Given<'_> {
        Given::Number(*self)
    }
}

impl Input for u32 {
    fn given(&self) -> Given<'_> {
        Given::Number(f64::from(*self))
    }
}

impl Input for Vec<f64> {
    fn given(&self) -> Given<'_> {
        Given::Numbers(self)
    }
}

impl Input for String {
    fn given(&self) -> Given<'_> {
        Given::Text(self)
    }
}

impl Input for bool {
    fn given(&self) -> Given<'_> {
        Given::Flag(*self)
    }
}

impl Accepts {
    /// Checks what stands in an input. A refusal names it by its label.
    pub(crate) fn check(self, field: &str, label: impl Fn() -> Message, given: &Given) -> Result<(), Refused> {
        let within = |bound: &Bound, number: f64| {
            bound.check(number).map(|_| ()).map_err(|refused| refused.named(field, label()))
        };
        match (self, given) {
            (Self::Within(bound), Given::Number(number)) => within(bound, *number),
            (Self::Within(bound), Given::Numbers(numbers)) => {
                numbers.iter().try_for_each(|number| within(bound, *number))
            }
            (Self::OneOf(words), Given::Text(text)) if !words.contains(text) => Err(Refused::Unreadable {
                field: field.to_owned(),
                label: label(),
                reason: none_of(text, words.iter().copied()),
            }),
            _ => Ok(()),
        }
    }

    /// The input as the handbook shows it.
    pub(crate) fn card(self, name: &str, label: Message, symbol: &str) -> InputCard {
        let (range, one_of) = match self {
            Self::Within(bound) => (Some(bound.card()), Vec::new()),
            Self::OneOf(words) => (None, words.iter().map(|word| (*word).to_owned()).collect()),
            Self::YesOrNo => (None, vec!["false".to_owned(), "true".to_owned()]),
            Self::Text => (None, Vec::new()),
        };
        InputCard { name: camel(name), label, symbol: symbol.to_owned(), range, one_of }
    }
}

/// A field as it crosses the door: `front_teeth` as `frontTeeth`.
pub(crate) fn camel(snake: &str) -> String {
    snake.to_lower_camel_case()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bounds;

    #[test]
    fn a_field_goes_by_the_name_that_crosses_the_door() {
        assert_eq!(camel("front_teeth"), "frontTeeth");
        assert_eq!(camel("section_mm2"), "sectionMm2");
        assert_eq!(camel("teeth"), "teeth");
    }

    #[test]
    fn a_refusal_names_the_input_and_not_the_range() {
        let refused = within(&bounds::CIRCUMFERENCE)
            .check("newCircumferenceMm", || Message::as_entered("Circumference after"), &Given::Number(1.0))
            .unwrap_err();
        assert_eq!(refused.english(), "Circumference after: 1 mm is outside 500 to 3 000 mm");
        assert!(matches!(refused, Refused::OutOfRange { field, .. } if field == "newCircumferenceMm"));
    }

    #[test]
    fn a_word_that_is_no_choice_is_refused_with_the_choices() {
        let made = Accepts::OneOf(&["solid", "tinned"]);
        assert!(made.check("conductor", || Message::as_entered("Conductor"), &Given::Text("solid")).is_ok());
        let refused = made.check("conductor", || Message::as_entered("Conductor"), &Given::Text("wet")).unwrap_err();
        assert_eq!(refused.english(), "Conductor: “wet” is none of solid, tinned");
    }
}
