//! A language over English: its words, its plurals and its signs, and what it leaves to English.

use serde_json::{Value, json};

use crate::{ENGLISH, Words, files, say, tags};

fn made(text: &str) -> Words {
    Words::over_english("pl", [text.to_owned()].into_iter())
}

fn refused() -> Value {
    let mm = |value: f64| json!({ "kind": "quantity", "value": value, "unit": "millimetre" });
    let label = json!({ "kind": "text", "text": "Slack" });
    let named = [("label", label), ("value", mm(1234.5)), ("min", mm(0.0)), ("max", mm(50.0))];
    let arguments: Vec<Value> =
        named.into_iter().map(|(name, value)| json!({ "name": name, "value": value })).collect();
    json!({ "messageId": "refused-out-of-range", "arguments": arguments })
}

fn lasts(minutes: f64) -> Value {
    let time = json!({ "kind": "duration", "minutes": minutes });
    json!({ "messageId": "lasts", "arguments": [{ "name": "time", "value": time }] })
}

#[test]
fn every_language_of_the_catalogue_comes_along_by_its_tag() {
    assert!(tags().any(|tag| tag == ENGLISH));
    assert!(tags().all(|tag| Words::in_language(tag).is_some()));
    assert!(Words::in_language("tlh").is_none());
    assert!(files(ENGLISH).len() > 10 && files("tlh").is_empty());
}

#[test]
fn what_a_language_has_no_words_for_is_said_in_english_and_marked() {
    let english = "Slack: 1\u{202f}234.5\u{a0}mm is outside 0 to 50\u{a0}mm";
    assert_eq!(say(&refused()), english);
    assert_eq!(made("").say(&refused()), format!("{english} (EN)"));
    let marks = made("in-english = { $text } [ang.]");
    assert_eq!(marks.say(&refused()), format!("{english} [ang.]"));
    // Words that ask for what is not handed over are no words.
    let wrong = made("refused-out-of-range = { $label } { $nobody }");
    assert_eq!(wrong.say(&refused()), format!("{english} (EN)"));
    assert_eq!(made("").say(&json!({ "messageId": "nobody-says-this", "arguments": [] })), "nobody-says-this (EN)");
}

#[test]
fn numbers_and_plurals_are_those_of_the_language() {
    let polish = made(
        "number-decimal = ,\nnumber-group = .\nrefused-out-of-range = { $label }: { $value }\nlasts = { $time }\n\
         duration-days = { $count ->\n    [one] { $number } dzień\n    [few] { $number } dni\n   *[other] { $number } dnia\n }",
    );
    assert_eq!(polish.say(&refused()), "Slack: 1.234,5\u{a0}mm");
    assert_eq!(polish.say(&lasts(3.0 * 1440.0)), "3 dni");
    assert_eq!(polish.say(&lasts(3.5 * 1440.0)), "3,5 dnia");
}
