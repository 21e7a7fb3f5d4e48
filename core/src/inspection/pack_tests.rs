//! The packs that are built in, and what a pack written by hand may hold.

use std::collections::BTreeSet;

use super::super::written::{WrittenPack, read, read_all};
use super::*;
use crate::content::Content;
use crate::error::Refused;
use crate::inspection::packs;

const SMALL: &str = r#"
id = "club"
place = "Our club"
title = "Before a ride"
caution = "Not an inspection."

[[item]]
id = "tyre.tread"
area = "Tyres"
title = "At least 2 mm of tread"
how = "Depth gauge."
reading = { unit = "millimetre", min = 2.0 }
source = { text = "Club rule", standing = "entered" }
"#;

fn read_pack(toml: &str) -> Result<Pack, Refused> {
    let written: WrittenPack = toml::from_str(toml).unwrap();
    read(written)
}

fn refusal(from: &str, to: &str) -> String {
    assert!(SMALL.contains(from), "{from}");
    read_pack(&SMALL.replace(from, to)).unwrap_err().english()
}

fn item<'a>(pack: &'a Pack, id: &str) -> &'a Item {
    pack.items.iter().find(|item| item.id == id).unwrap_or_else(|| panic!("{id}"))
}

#[test]
fn every_built_in_pack_can_be_read() {
    for pack in read_all(Content::english()) {
        pack.unwrap();
    }
    let marks: Vec<String> = packs().into_iter().map(|pack| pack.id).collect();
    assert_eq!(marks, ["eu", "gb"]);
}

#[test]
fn every_item_of_the_built_in_packs_has_a_short_title_a_way_to_check_it_and_a_clause() {
    for pack in packs() {
        let marks: BTreeSet<&str> = pack.items.iter().map(|item| item.id.as_str()).collect();
        assert_eq!(marks.len(), pack.items.len(), "{}: a mark stands twice", pack.id);
        for item in &pack.items {
            let title = item.title.chars().count();
            assert!(title <= 90, "{}/{}: {title} characters", pack.id, item.id);
            assert!(item.how.chars().count() >= 20, "{}/{}", pack.id, item.id);
            assert!(item.source.text.english().chars().count() >= 10, "{}/{}", pack.id, item.id);
        }
    }
}

#[test]
fn both_packs_cover_every_part_of_the_machine() {
    let parts = [
        "identity.",
        "brake.",
        "steering.",
        "suspension",
        "wheel.",
        "tyre.",
        "lamp.head",
        "lamp.position",
        "lamp.stop",
        "indicator.",
        "lamp.plate",
        "horn",
        "speedometer.",
        "mirrors",
        "battery",
        "wiring",
        "fuel",
        "exhaust.",
        "frame",
        "stand",
        "rests-grips-seat",
        "mudguards",
        "chain.",
        "controls.",
        "oil",
    ];
    for pack in packs() {
        for part in parts {
            let covered = pack.items.iter().any(|item| item.id.contains(part));
            assert!(covered, "{}: {part}", pack.id);
        }
    }
}

#[test]
fn rules_known_from_memory_or_second_hand_are_unconfirmed_and_the_others_are_not() {
    for pack in packs() {
        for item in &pack.items {
            let read = matches!(item.source.standing, Standing::Seen | Standing::CommonPractice);
            assert_ne!(item.is_unconfirmed(), read, "{}/{}", pack.id, item.id);
        }
    }
    let [eu, gb] = [packs().remove(0), packs().remove(1)];
    assert!(item(&eu, "indicator.rate").is_unconfirmed() && !item(&gb, "indicator.rate").is_unconfirmed());
    assert!(item(&gb, "lamp.head.aim").is_unconfirmed());
}

/// Id of an item, unit and limit.
type Number<'a> = (&'a str, (Unit, Limit));

/// Every number that decides in a built-in pack, beside the clause that was read (or not: memory).
#[test]
fn the_numbers_that_decide_are_those_of_the_sources() {
    let percent = |min, max| (Unit::Percent, Limit { min, max });
    let mm = |min, max| (Unit::Millimetre, Limit { min, max });
    let flashes = (Unit::FlashesMinute, Limit { min: Some(60.0), max: Some(120.0) });
    let expected: [(&str, &[Number]); 2] = [
        (
            "eu",
            &[
                ("brake.both.efficiency", percent(Some(50.0), None)),
                ("brake.rear.efficiency", percent(Some(25.0), None)),
                ("lamp.head.aim", percent(Some(0.5), Some(2.5))),
                ("indicator.rate", flashes.clone()),
                ("exhaust.co", percent(None, Some(4.5))),
            ],
        ),
        (
            "gb",
            &[
                ("brake.service.efficiency", percent(Some(30.0), None)),
                ("brake.secondary.efficiency", percent(Some(25.0), None)),
                ("wheel.runout.steel", mm(None, Some(4.0))),
                ("wheel.runout.alloy", mm(None, Some(2.0))),
                ("tyre.front.tread", mm(Some(1.0), None)),
                ("tyre.rear.tread", mm(Some(1.0), None)),
                ("lamp.head.aim", percent(Some(0.5), Some(2.0))),
                ("lamp.head.aim-high", percent(Some(1.25), Some(2.75))),
                ("indicator.rate", flashes.clone()),
            ],
        ),
    ];
    for (pack, (mark, numbers)) in packs().iter().zip(expected) {
        assert_eq!(pack.id, mark);
        let measured: Vec<Number> = pack
            .items
            .iter()
            .filter_map(|item| match &item.measure {
                Measure::Reading { unit, limit } => Some((item.id.as_str(), (*unit, limit.clone()))),
                // Worked out where it follows from the bike, and limited all the same.
                Measure::Derived { unit: Unit::FlashesMinute, limit, .. } => {
                    Some((item.id.as_str(), (Unit::FlashesMinute, limit.clone())))
                }
                _ => None,
            })
            .collect();
        assert_eq!(measured, numbers, "{mark}");
    }
}

#[test]
fn an_item_with_an_empty_source_is_refused() {
    let text = refusal("Club rule", " ");
    assert_eq!(text, "Item “tyre.tread”, source: write 1 to 400 characters; nothing stands there");
}

#[test]
fn a_mark_that_stands_twice_is_refused() {
    let (head, item) = SMALL.split_once("[[item]]").unwrap();
    let text = read_pack(&format!("{head}[[item]]{item}[[item]]{item}")).unwrap_err().english();
    assert_eq!(text, "The item “tyre.tread” stands in the pack twice; give each its own id");
}

#[test]
fn limits_years_and_marks_that_make_no_sense_are_refused() {
    assert_eq!(refusal(", min = 2.0", ""), "Item “tyre.tread” takes a reading: give it min, max or both");
    assert_eq!(refusal("min = 2.0", "min = 2.0, max = 1.0"), "Item “tyre.tread”: the least, 2, is above the most, 1");
    assert!(refusal("min = 2.0", "min = nan").contains("not a number"));
    assert_eq!(
        refusal("how =", "fromYear = 1990\ntoYear = 1980\nhow ="),
        "Item “tyre.tread”: the years run from 1990 to 1980; swap them"
    );
    assert!(refusal("how =", "fromYear = 12\nhow =").contains("Year of first use: 12"));
    assert!(refusal("how =", "aboveCc = 1.0\nhow =").starts_with("Displacement: 1"));
    assert!(refusal("tyre.tread", "tyre/tread").contains("“tyre/tread” may hold only"));
    let both = refusal("source =", "derived = { quantity = \"load.lights\", unit = \"watt\" }\nsource =");
    assert_eq!(both, "Item “tyre.tread” has a reading and a derived quantity; keep one");
}

#[test]
fn a_pack_without_items_is_refused() {
    let head = SMALL.split_once("[[item]]").unwrap().0;
    assert_eq!(
        read_pack(&format!("item = []\n{head}")).unwrap_err().english(),
        "An inspection pack needs at least one item"
    );
}

#[test]
fn a_limit_holds_its_ends_and_no_nonsense() {
    let limit = Limit { min: Some(60.0), max: Some(120.0) };
    assert!(limit.keeps(60.0) && limit.keeps(120.0));
    assert!(!limit.keeps(59.999) && !limit.keeps(120.001));
    assert!(!limit.keeps(f64::NAN) && !limit.keeps(f64::INFINITY) && !Limit::default().keeps(f64::NAN));
}
