//! The messages of a language, and how one is said.

use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::types::{FluentNumber, FluentNumberOptions};
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use serde_json::Value;
use unic_langid::LanguageIdentifier;

use crate::functions::{Quantity, TimeSpan, exact, quantity, work};
use crate::numbers::{Decimals, number};
use crate::raw_message::{Argument, ListStyle, RawMessage};
use crate::times::{self, TimeForm, clock, day};

/// The files of the English catalogue that hold what the core says, by name.
pub const FILES: &[(&str, &str)] = &[
    ("core/bounds.ftl", include_str!("../../../fixtures/words/en/core/bounds.ftl")),
    ("core/brakes.ftl", include_str!("../../../fixtures/words/en/core/brakes.ftl")),
    ("core/changes.ftl", include_str!("../../../fixtures/words/en/core/changes.ftl")),
    ("core/coating.ftl", include_str!("../../../fixtures/words/en/core/coating.ftl")),
    ("core/content.ftl", include_str!("../../../fixtures/words/en/core/content.ftl")),
    ("core/door.ftl", include_str!("../../../fixtures/words/en/core/door.ftl")),
    ("core/electrical.ftl", include_str!("../../../fixtures/words/en/core/electrical.ftl")),
    ("core/events.ftl", include_str!("../../../fixtures/words/en/core/events.ftl")),
    ("core/fasteners.ftl", include_str!("../../../fixtures/words/en/core/fasteners.ftl")),
    ("core/faults.ftl", include_str!("../../../fixtures/words/en/core/faults.ftl")),
    ("core/fields.ftl", include_str!("../../../fixtures/words/en/core/fields.ftl")),
    ("core/fluids.ftl", include_str!("../../../fixtures/words/en/core/fluids.ftl")),
    ("core/formulas.ftl", include_str!("../../../fixtures/words/en/core/formulas.ftl")),
    ("core/gearing.ftl", include_str!("../../../fixtures/words/en/core/gearing.ftl")),
    ("core/harness.ftl", include_str!("../../../fixtures/words/en/core/harness.ftl")),
    ("core/inspection.ftl", include_str!("../../../fixtures/words/en/core/inspection.ftl")),
    ("core/plan.ftl", include_str!("../../../fixtures/words/en/core/plan.ftl")),
    ("core/record.ftl", include_str!("../../../fixtures/words/en/core/record.ftl")),
    ("core/refused.ftl", include_str!("../../../fixtures/words/en/core/refused.ftl")),
    ("core/ripple.ftl", include_str!("../../../fixtures/words/en/core/ripple.ftl")),
    ("core/shared.ftl", include_str!("../../../fixtures/words/en/core/shared.ftl")),
    ("core/today.ftl", include_str!("../../../fixtures/words/en/core/today.ftl")),
    ("core/tyres.ftl", include_str!("../../../fixtures/words/en/core/tyres.ftl")),
];

/// The messages of one language.
pub struct Catalogue {
    bundle: FluentBundle<FluentResource>,
}

static ENGLISH: LazyLock<Catalogue> =
    LazyLock::new(|| Catalogue::new("en", FILES.iter().map(|(_, text)| (*text).to_owned())));

/// The English catalogue.
pub fn english() -> &'static Catalogue {
    &ENGLISH
}

impl Catalogue {
    /// A catalogue from the texts of its files. What cannot be read in them is left out; the tests read every file strictly.
    pub fn new(language: &str, files: impl Iterator<Item = String>) -> Self {
        let language: LanguageIdentifier = language.parse().unwrap_or_default();
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
        Self { bundle }
    }

    /// Whether there is such a message.
    pub fn has(&self, id: &str) -> bool {
        self.bundle.has_message(id)
    }

    /// A message in its JSON. What is no message is said so, with what stands there.
    pub fn say_json(&self, message: &Value) -> String {
        match serde_json::from_value::<RawMessage>(message.clone()) {
            Ok(said) => self.say(&said),
            Err(error) => format!("{message} is no message: {error}"),
        }
    }

    fn say(&self, said: &RawMessage) -> String {
        let named = said.arguments.iter().map(|argument| (argument.name.clone(), self.value(&argument.value)));
        let mut arguments = FluentArgs::new();
        named.for_each(|(name, value)| arguments.set(name, value));
        self.format(&said.message_id, &arguments)
    }

    /// A message with its arguments; its id where there is no such message, so that it is seen.
    fn format(&self, id: &str, arguments: &FluentArgs) -> String {
        let Some(pattern) = self.bundle.get_message(id).and_then(|message| message.value()) else {
            return id.to_owned();
        };
        self.bundle.format_pattern(pattern, Some(arguments), &mut Vec::new()).into_owned()
    }

    /// A message of the catalogue's own with texts.
    fn own(&self, id: &str, texts: &[(&str, String)]) -> String {
        self.format(id, &texts.iter().map(|(name, text)| (*name, FluentValue::from(text.clone()))).collect())
    }

    fn sign(&self) -> char {
        self.own("number-decimal-sign", &[]).chars().next().unwrap_or('.')
    }

    fn value(&self, argument: &Argument) -> FluentValue<'static> {
        match argument {
            Argument::Quantity { value, unit } => {
                let in_words = self.unit_in_words(unit, *value);
                FluentValue::Custom(Box::new(Quantity {
                    value: *value,
                    unit: unit.clone(),
                    sign: self.sign(),
                    in_words,
                }))
            }
            Argument::Count { count } => {
                let options = FluentNumberOptions { use_grouping: false, ..Default::default() };
                FluentValue::Number(FluentNumber::new(*count as f64, options))
            }
            Argument::Text { text } | Argument::Choice { choice: text } => text.clone().into(),
            Argument::Message { message } => self.say(message).into(),
            Argument::Several { items, style } => {
                self.joined(items.iter().map(|item| self.say(item)).collect(), *style).into()
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
        let shown = number(length, "", Decimals::AtMost(decimals), self.sign());
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
