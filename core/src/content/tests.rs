//! The content is there, and another language is taken as it should be.

use super::*;

fn changed(from: &str, to: &str) -> String {
    assert!(ENGLISH.contains(from), "{from}");
    ENGLISH.replacen(from, to, 1)
}

#[test]
fn the_english_content_is_read_as_it_was_built() {
    assert_eq!(Content::english(), &Content::read(ENGLISH).unwrap());
    for kind in ["jobs", "endings", "packs", "knowledge", "products", "processes", "circuits"] {
        assert!(!Content::english().files(kind).is_empty(), "{kind}");
    }
}

#[test]
fn a_language_has_other_texts_and_nothing_else() {
    let other = Content::read(&changed("Bleed a hydraulic brake", "Hydraulische Bremse entlüften")).unwrap();
    assert_ne!(&other, Content::english());
    let refusal = |json: &str| Content::read(json).unwrap_err().english();
    assert!(refusal("{").starts_with("Language file: "), "{}", refusal("{"));
    assert!(refusal("[]").contains("“/” is not as in English"), "{}", refusal("[]"));
    let number = refusal(&changed(r#""handsOnMinutes":45.0"#, r#""handsOnMinutes":46.0"#));
    assert!(number.contains("/handsOnMinutes” is not as in English"), "{number}");
    let empty = refusal(&changed("Bleed a hydraulic brake", ""));
    assert!(empty.contains("“/jobs/brake-bleed/title”"), "{empty}");
    let field = refusal(&changed(r#""helper":true,"#, ""));
    assert!(field.contains("/helper”"), "{field}");
    let more = refusal(&changed(r#""helper":true,"#, r#""helper":true,"more":true,"#));
    assert!(more.contains("“/jobs/"), "{more}");
}

#[test]
fn a_language_that_comes_after_the_first_text_is_refused_unless_it_is_the_one_in_use() {
    assert_eq!(Content::in_use(), Content::english());
    assert_eq!(use_language(ENGLISH), Ok(()));
    let late = use_language(&changed("Bleed a hydraulic brake", "Hydraulische Bremse entlüften"));
    assert!(late.unwrap_err().english().contains("the language is chosen already"));
}

#[test]
fn a_name_that_a_circuit_does_not_have_is_its_id() {
    assert_eq!(Content::english().circuit_name("elements", "battery"), "Battery");
    assert_eq!(Content::english().circuit_name("elements", "change.7"), "change.7");
}
