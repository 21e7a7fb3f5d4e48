//! Sidewalls as the trade writes them, what they mean, and what cannot be read.

use proptest::prelude::*;

use super::*;

fn shown(code: &str) -> String {
    read(code).unwrap_or_else(|refused| panic!("{code}: {refused}")).to_string()
}

fn refusal(code: &str) -> String {
    read(code).err().unwrap_or_else(|| panic!("{code} was read")).english()
}

#[test]
fn the_forms_of_the_trade_are_read() {
    for (code, canonical) in [
        ("130/90-16", "130/90-16"),
        ("130/90-16 67H", "130/90-16 67H"),
        ("130/90 B 16", "130/90B16"),
        ("130/90B16 M/C 73H TL", "130/90B16 M/C 73H TL"),
        ("130/90 16", "130/90-16"),
        ("110/80 17 54H", "110/80-17 54H"),
        ("180/55 ZR 17 M/C (73 W)", "180/55ZR17 M/C (73W)"),
        ("120/90-V18", "120/90V-18"),
        ("150/70VB17", "150/70VB17"),
        ("2.75-18 42P TT", "2.75-18 42P TT"),
        ("3.00-18", "3.00-18"),
        ("3,00 – 18 4PR", "3.00-18 4PR"),
        ("3.00x18", "3.00-18"),
        ("3.00 S 18 4PR", "3.00S-18 4PR"),
        ("3.5-18", "3.50-18"),
        ("2 1/4-17 38J", "2.25-17 38J"),
        ("4.60-18", "4.60-18"),
        ("4.00 21", "4.00-21"),
        ("3.00 18 52P", "3.00-18 52P"),
        ("4.25 / 85 18", "4.25/85-18"),
        ("4.25/85H18", "4.25/85H-18"),
        ("mt90-16", "MT90-16"),
        ("MU85 B 16 REINF tubeless", "MU85B16 REINF TL"),
    ] {
        assert_eq!(shown(code), canonical, "{code}");
        assert_eq!(shown(canonical), canonical, "{code}");
    }
}

#[test]
fn what_cannot_be_read_is_refused_with_the_part_that_failed() {
    for (code, part) in [
        ("round", "the width cannot"),
        ("-18", "the width cannot"),
        ("130-16", "the height after the stroke"),
        ("130/9O-16", "Aspect ratio: 9 %"),
        ("130/90O-16", "what stands between"),
        ("130/-16", "the height in per cent"),
        ("130/90", "what stands between"),
        ("130/90-", "the rim diameter"),
        ("130/90Q!16", "the rim diameter"),
        ("130/90ZZZ16", "what stands between"),
        ("3.005-18", "the width in inches"),
        ("2 1/5-17", "the fraction"),
        ("MX90-16", "the width letter after M"),
        ("130/90-16 67", "the speed symbol"),
        ("130/90-16 67I", "the speed symbol"),
        ("130/90-16 (67H", "the bracket"),
        ("130/90-16 67H 66H", "the second load index"),
        ("130/90-16 FAT", "the mark “FAT”"),
        ("3.00-18 4PR 6PR", "the second ply rating"),
        ("3.00-18 TL TT", "TL beside TT"),
    ] {
        let refused = refusal(code);
        assert!(refused.contains(part), "{code}: {refused}");
    }
    assert_eq!(refusal("  "), "Tyre size: write 1 to 40 characters; nothing stands there");
}

#[test]
fn absurd_sizes_get_the_range_and_the_unit() {
    assert_eq!(refusal("2000/90-16"), "Tyre width: 2 000 mm is outside 50 to 350 mm");
    assert_eq!(refusal("30.00-18"), "Tyre width: 30 in is outside 1.5 to 8 in");
    assert_eq!(refusal("130/900-16"), "Aspect ratio: 900 % is outside 25 to 110 %");
    assert_eq!(refusal("130/90-99"), "Rim diameter code: 99 in is outside 8 to 26 in");
    assert!(refusal("99999999999999999999999999999999999999/9").contains("outside 50 to 350 mm"));
}

#[test]
fn parts_keep_their_meaning() {
    let size = read("120/70ZR17 M/C (58W) TL").unwrap();
    assert_eq!(size.section, Section::Metric { width_mm: 120, ratio: 70 });
    assert_eq!((size.construction, size.rim_code), (Construction::Radial, 17));
    assert_eq!(size.size_speed, SpeedSymbol::of('Z'));
    let service = size.service.unwrap();
    assert_eq!((service.load_index, service.speed.kmh(), service.beyond), (58, Some(270), true));
    assert!(size.motorcycle && !size.reinforced);
    assert_eq!(size.tube, Some(Tube::Tubeless));
}

fn any_section() -> impl Strategy<Value = Section> {
    let letters: Vec<char> = AlphaLetter::all().collect();
    prop_oneof![
        (50u32..=350, 25u32..=110).prop_map(|(width_mm, ratio)| Section::Metric { width_mm, ratio }),
        (150u32..=800, proptest::option::of(25u32..=110))
            .prop_map(|(hundredths, ratio)| Section::Inch { hundredths, ratio }),
        (proptest::sample::select(letters), 25u32..=110)
            .prop_map(|(letter, ratio)| Section::Alpha { letter: AlphaLetter::of(letter).unwrap(), ratio }),
    ]
}

fn any_speed() -> impl Strategy<Value = SpeedSymbol> {
    proptest::sample::select(SpeedSymbol::all().collect::<Vec<_>>())
}

prop_compose! {
    fn any_size()(
        section in any_section(),
        construction in proptest::sample::select(vec![Construction::Diagonal, Construction::BiasBelted, Construction::Radial]),
        rim_code in 8u32..=26,
        size_speed in proptest::option::of(any_speed()),
        service in proptest::option::of((30u32..=95, any_speed(), any::<bool>())),
        ply in proptest::option::of(2u32..=12),
        (motorcycle, reinforced) in any::<(bool, bool)>(),
        tube in proptest::option::of(proptest::sample::select(vec![Tube::Tubeless, Tube::TubeType])),
    ) -> TyreSize {
        TyreSize {
            section, construction, rim_code, size_speed, motorcycle, ply, reinforced, tube,
            service: service.map(|(load_index, speed, beyond)| Service { load_index, speed, beyond }),
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    #[test]
    fn what_is_written_reads_back_as_the_same(size in any_size()) {
        prop_assert_eq!(read(&size.to_string()), Ok(size));
    }

    #[test]
    fn no_text_at_all_makes_the_reader_panic(text in "\\PC{0,60}") {
        if let Ok(size) = read(&text) {
            prop_assert_eq!(read(&size.to_string()), Ok(size));
        }
    }

    #[test]
    fn no_text_of_sidewall_letters_makes_the_reader_panic(text in "[0-9MTBRHVZPXCLJSW/(). -]{0,24}") {
        if let Ok(size) = read(&text) {
            let diameter = size.outer_diameter_mm();
            prop_assert!(diameter.is_finite() && diameter > 200.0 && diameter < 1500.0);
            prop_assert_eq!(read(&size.to_string()), Ok(size));
        }
    }

    #[test]
    fn a_letter_that_no_sidewall_has_is_refused_wherever_it_stands(size in any_size(), at in 0usize..20, slip in "[!?#ÄЖ]") {
        let mut code: Vec<char> = size.to_string().chars().collect();
        let at = at.min(code.len() - 1);
        code[at] = slip.chars().next().unwrap();
        prop_assert!(read(&code.into_iter().collect::<String>()).is_err());
    }
}
