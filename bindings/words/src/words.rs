//! The messages of a language, and how one is said.

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::types::{FluentNumber, FluentNumberOptions};
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use serde::Serialize;
use serde_json::Value;
use unic_langid::LanguageIdentifier;

use crate::functions::{Quantity, TimeSpan, exact, quantity, work};
use crate::numbers::{Decimals, Signs, number};
use crate::raw_message::{Argument, ListStyle, RawMessage};
use crate::times::{self, TimeForm, clock, day};

/// The messages of one language. What it has no words for is said in English, and marked.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
    signs: Signs,
    /// What lies below; nothing for English itself.
    english: Option<&'static Words>,
}

impl Words {
    /// English, from the texts of its files. What cannot be read in them is left out; the tests read every file strictly.
    pub(crate) fn of_english(files: impl Iterator<Item = String>) -> Self {
        Self::new("en", files, None)
    }

    /// Another language, from the texts of its files, over English.
    pub fn over_english(tag: &str, files: impl Iterator<Item = String>) -> Self {
        Self::new(tag, files, Some(Words::english()))
    }

    fn new(tag: &str, files: impl Iterator<Item = String>, english: Option<&'static Words>) -> Self {
        let language: LanguageIdentifier = tag.parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![language]);
        bundle.set_use_isolating(false);
        for text in files {
            let resource = FluentResource::try_new(text).unwrap_or_else(|(resource, _)| resource);
            bundle.add_resource_overriding(resource);
        }
        for (name, function) in [("QUANTITY", quantity as Function), ("EXACT", exact), ("WORK", work)] {
            // Refused only where the name is taken.
            let _ = bundle.add_function(name, function);
        }
        let mut words = Self { bundle, signs: Signs::default(), english };
        words.signs = Signs { decimal: words.sign("number-decimal"), group: words.sign("number-group") };
        words
    }

    /// Whether there is such a message.
    fn has(&self, id: &str) -> bool {
        self.bundle.has_message(id) || self.english.is_some_and(|english| english.has(id))
    }

    /// A message of the core, or whatever has its shape in JSON. What is no message is said so, with what stands there.
    pub fn say(&self, message: &impl Serialize) -> String {
        serde_json::to_value(message).map_or_else(|error| error.to_string(), |message| self.say_json(message))
    }

    fn say_json(&self, message: Value) -> String {
        match serde_json::from_value::<RawMessage>(message.clone()) {
            Ok(said) => self.in_words(&said),
            Err(error) => format!("{message} is no message: {error}"),
        }
    }

    fn in_words(&self, said: &RawMessage) -> String {
        let named = said.arguments.iter().map(|argument| (argument.name.clone(), self.value(&argument.value)));
        let mut arguments = FluentArgs::new();
        named.for_each(|(name, value)| arguments.set(name, value));
        self.format(&said.message_id, &arguments)
    }

    /// A message with its arguments, marked where it is English for want of words; its id where there is none, so that it is seen.
    fn format(&self, id: &str, arguments: &FluentArgs) -> String {
        let found = self.said(id, arguments);
        let Some(english) = self.english.filter(|_| found.is_none()) else {
            return found.unwrap_or_else(|| id.to_owned());
        };
        let text = english.said(id, arguments).unwrap_or_else(|| id.to_owned());
        let arguments = FluentArgs::from_iter([("text", FluentValue::from(text.clone()))]);
        self.said("in-english", &arguments).or_else(|| english.said("in-english", &arguments)).unwrap_or(text)
    }

    /// Nothing where this language has no words, or where they ask for something that is not handed over.
    fn said(&self, id: &str, arguments: &FluentArgs) -> Option<String> {
        let pattern = self.bundle.get_message(id)?.value()?;
        let mut errors = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(arguments), &mut errors).into_owned();
        errors.is_empty().then_some(text)
    }

    /// A sign of the language, such as that before the decimals: never marked.
    fn sign(&self, id: &str) -> String {
        let none = FluentArgs::new();
        let english = || self.english.and_then(|english| english.said(id, &none));
        self.said(id, &none).or_else(english).unwrap_or_default()
    }

    /// A message of the catalogue's own with texts.
    fn own(&self, id: &str, texts: &[(&str, String)]) -> String {
        self.format(id, &texts.iter().map(|(name, text)| (*name, FluentValue::from(text.clone()))).collect())
    }

    fn value(&self, argument: &Argument) -> FluentValue<'static> {
        match argument {
            Argument::Quantity { value, unit } => {
                let in_words = self.unit_in_words(unit, *value);
                FluentValue::Custom(Box::new(Quantity {
                    value: *value,
                    unit: unit.clone(),
                    signs: self.signs.clone(),
                    in_words,
                }))
            }
            Argument::Count { count } => {
                let options = FluentNumberOptions { use_grouping: false, ..Default::default() };
                FluentValue::Number(FluentNumber::new(*count as f64, options))
            }
            Argument::Text { text } | Argument::Choice { choice: text } => text.clone().into(),
            Argument::Message { message } => self.in_words(message).into(),
            Argument::Several { items, style } => {
                self.joined(items.iter().map(|item| self.in_words(item)).collect(), *style).into()
            }
            Argument::Day { day } => self.day(day).into(),
            Argument::LocalTime { day, minute } => {
                self.own("local-time", &[("day", self.day(day)), ("time", clock(*minute))]).into()
            }
            Argument::Duration { minutes } => {
                FluentValue::Custom(Box::new(TimeSpan { passing: self.passing(*minutes), work: self.work(*minutes) }))
            }
        }
    }

    /// The unit in words, where the language says it in words: teeth, links, days.
    fn unit_in_words(&self, unit: &str, value: f64) -> Option<String> {
        let id = format!("unit-{unit}");
        let arguments = FluentArgs::from_iter([("amount", FluentValue::from(value))]);
        self.has(&id).then(|| self.format(&id, &arguments))
    }

    fn joined(&self, items: Vec<String>, style: ListStyle) -> String {
        let last = items.len().saturating_sub(1);
        let id = |place: usize| match style {
            ListStyle::Sentences => "list-sentences",
            ListStyle::And if place == last => "list-and",
            ListStyle::Or if place == last => "list-or",
            _ => "list-comma",
        };
        let parts = items.into_iter().enumerate();
        let joined = parts.fold(None, |before: Option<String>, (place, item)| match before {
            None => Some(item),
            Some(before) => Some(self.own(id(place), &[("before", before), ("item", item)])),
        });
        joined.unwrap_or_default()
    }

    /// A day: Sat 4 Apr.
    fn day(&self, text: &str) -> String {
        let Some(parts) = day(text) else { return text.to_owned() };
        let weekday = self.own(&format!("weekday-short-{}", parts.weekday), &[]);
        let month = self.own(&format!("month-short-{}", parts.month), &[]);
        let number = parts.day.to_string();
        self.own("day", &[("weekday", weekday), ("day", number), ("month", month), ("year", parts.year.to_string())])
    }

    /// Time that passes.
    fn passing(&self, minutes: f64) -> String {
        let TimeForm { message, number: length, decimals } = times::passing(minutes);
        let shown = number(length, "", Decimals::AtMost(decimals), &self.signs);
        let mut arguments = FluentArgs::new();
        arguments.set("count", FluentValue::from(length));
        arguments.set("number", FluentValue::from(shown));
        self.format(message, &arguments)
    }

    /// Time of work: 45 min, 1 h 30.
    fn work(&self, minutes: f64) -> String {
        let (hours, rest) = times::work(minutes);
        let texts = [("hours", hours.to_string()), ("minutes", format!("{rest:02}"))];
        match (hours, rest) {
            (0, _) => self.own("duration-minutes", &[("number", rest.to_string())]),
            (_, 0) => self.own("duration-hours", &[("number", hours.to_string())]),
            _ => self.own("work-hours-minutes", &texts),
        }
    }
}

type Function = for<'a> fn(&[FluentValue<'a>], &FluentArgs) -> FluentValue<'a>;
