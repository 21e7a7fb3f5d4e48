//! What may be answered to which item.

use super::*;
use crate::inspection::written::packs;
use crate::record::{AnswerWord, ItemAnswer};

fn gb(id: &str) -> Item {
    let pack = packs().into_iter().find(|pack| pack.id == "gb").unwrap();
    pack.items.into_iter().find(|item| item.id == id).unwrap()
}

fn answer(word: Option<AnswerWord>, value: Option<f64>) -> ItemAnswer {
    ItemAnswer { word, value, ..ItemAnswer::default() }
}

#[test]
fn an_answer_without_word_and_value_is_refused() {
    let text = answer(None, None).checked(&gb("horn")).unwrap_err().english();
    assert_eq!(text, "The answer is not known yet: choose a word");
    let text = answer(None, None).checked(&gb("tyre.rear.tread")).unwrap_err().english();
    assert_eq!(text, "The answer is not known yet: choose a word or enter a reading in mm");
}

#[test]
fn a_value_for_an_item_in_words_is_refused() {
    let text = answer(Some(AnswerWord::Good), Some(3.0)).checked(&gb("horn")).unwrap_err().english();
    assert!(text.ends_with("is answered in words and takes no reading"), "{text}");
}

#[test]
fn a_value_with_not_checked_or_does_not_apply_is_refused() {
    for word in [AnswerWord::NotChecked, AnswerWord::DoesNotApply] {
        let refused = answer(Some(word), Some(3.0)).checked(&gb("tyre.rear.tread")).unwrap_err();
        assert!(refused.english().starts_with("3 mm was measured and also said"), "{refused}");
    }
}

#[test]
fn a_reading_outside_what_can_be_is_refused_with_its_range() {
    let refused = |id: &str, value| answer(None, Some(value)).checked(&gb(id)).unwrap_err().english();
    assert_eq!(refused("tyre.rear.tread", -1.0), "Reading: −1 mm is outside 0 to 25 mm");
    assert_eq!(refused("tyre.rear.tread", 35.0), "Reading: 35 mm is outside 0 to 25 mm");
    assert_eq!(refused("brake.service.efficiency", 300.0), "Reading: 300 % is outside 0 to 150 %");
    assert_eq!(refused("indicator.rate", 4000.0), "Reading: 4 000 /min is outside 0 to 400 /min");
    assert!(refused("tyre.rear.tread", f64::NAN).contains("not a number"));
    assert!(refused("tyre.rear.tread", f64::INFINITY).contains("not a number"));
}

#[test]
fn a_value_that_fails_can_always_be_entered() {
    for pack in packs() {
        for item in &pack.items {
            let Some((_, limit)) = item.measure.value() else { continue };
            for value in [limit.min.map(|min| min * 0.5), limit.max.map(|max| max * 1.5)].into_iter().flatten() {
                assert!(answer(None, Some(value)).checked(item).is_ok(), "{}/{} {value}", pack.id, item.id);
            }
        }
    }
}

#[test]
fn a_remark_is_trimmed_and_an_empty_one_dropped() {
    let with = |note: &str| ItemAnswer { note: Some(note.to_owned()), ..answer(Some(AnswerWord::Good), None) };
    assert_eq!(with("  faint  ").checked(&gb("horn")).unwrap().note.as_deref(), Some("faint"));
    assert_eq!(with("   ").checked(&gb("horn")).unwrap().note, None);
    assert!(with(&"x".repeat(601)).checked(&gb("horn")).is_err());
}
