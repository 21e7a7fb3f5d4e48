//! What the catalogue may ask for: `QUANTITY($x, decimals: 2, unit: "none")`, `EXACT($x)`, `WORK($time)`.

use std::borrow::Cow;

use fluent_bundle::types::FluentType;
use fluent_bundle::{FluentArgs, FluentValue};

use crate::numbers::{Decimals, Signs, number, symbol, with_symbol};

/// A quantity on its way into a message.
#[derive(Clone, Debug, PartialEq)]
pub struct Quantity {
    pub value: f64,
    pub unit: String,
    /// How the language writes its numbers.
    pub signs: Signs,
    /// The unit in words, where the language has some.
    pub in_words: Option<String>,
}

impl Quantity {
    /// As a text, with its unit or without.
    fn text(&self, decimals: Decimals, with_unit: bool) -> String {
        let number = number(self.value, &self.unit, decimals, &self.signs);
        if with_unit { with_symbol(&number, self.in_words.as_deref().unwrap_or(symbol(&self.unit))) } else { number }
    }
}

impl FluentType for Quantity {
    fn duplicate(&self) -> Box<dyn FluentType + Send> {
        Box::new(self.clone())
    }

    fn as_string(&self, _: &intl_memoizer::IntlLangMemoizer) -> Cow<'static, str> {
        self.text(Decimals::OfUnit, true).into()
    }

    fn as_string_threadsafe(&self, _: &intl_memoizer::concurrent::IntlLangMemoizer) -> Cow<'static, str> {
        self.text(Decimals::OfUnit, true).into()
    }
}

/// A length of time on its way into a message, in both ways of saying it.
#[derive(Clone, Debug, PartialEq)]
pub struct TimeSpan {
    /// As time that passes: 1.5 h.
    pub passing: String,
    /// As time of work: 1 h 30.
    pub work: String,
}

impl FluentType for TimeSpan {
    fn duplicate(&self) -> Box<dyn FluentType + Send> {
        Box::new(self.clone())
    }

    fn as_string(&self, _: &intl_memoizer::IntlLangMemoizer) -> Cow<'static, str> {
        self.passing.clone().into()
    }

    fn as_string_threadsafe(&self, _: &intl_memoizer::concurrent::IntlLangMemoizer) -> Cow<'static, str> {
        self.passing.clone().into()
    }
}

fn given<'a>(positional: &'a [FluentValue]) -> Option<&'a Quantity> {
    match positional.first() {
        Some(FluentValue::Custom(custom)) => custom.as_ref().as_any().downcast_ref(),
        _ => None,
    }
}

fn with_unit(named: &FluentArgs) -> bool {
    !matches!(named.get("unit"), Some(FluentValue::String(word)) if word == "none")
}

/// A quantity with so many decimals, with its unit or without.
pub fn quantity<'a>(positional: &[FluentValue<'a>], named: &FluentArgs) -> FluentValue<'a> {
    let decimals = match named.get("decimals") {
        Some(FluentValue::Number(decimals)) => Decimals::Fixed(decimals.value as usize),
        _ => Decimals::OfUnit,
    };
    given(positional).map_or(FluentValue::Error, |quantity| quantity.text(decimals, with_unit(named)).into())
}

/// A length of time as time of work.
pub fn work<'a>(positional: &[FluentValue<'a>], _: &FluentArgs) -> FluentValue<'a> {
    match positional.first() {
        Some(FluentValue::Custom(custom)) => match custom.as_ref().as_any().downcast_ref::<TimeSpan>() {
            Some(span) => span.work.clone().into(),
            None => FluentValue::Error,
        },
        _ => FluentValue::Error,
    }
}

/// A quantity as exact as it was given.
pub fn exact<'a>(positional: &[FluentValue<'a>], named: &FluentArgs) -> FluentValue<'a> {
    given(positional).map_or(FluentValue::Error, |quantity| quantity.text(Decimals::Exact, with_unit(named)).into())
}
