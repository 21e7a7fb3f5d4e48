//! The mixing page on mixes of the handbook, and what it refuses.

use super::*;
use crate::fluids::CoverAsk;
use crate::record::PutOn;

fn product() -> TwoPartAsk {
    TwoPartAsk { ready: 500.0, parts_base: 4.0, parts_hardener: 1.0, thinner_percent: 10.0, ..TwoPartAsk::default() }
}

fn area() -> CoverAsk {
    CoverAsk {
        square_metres: 0.9,
        coats: 2,
        spreading_rate: Some(12.0),
        put_on: Some(PutOn::Aerosol),
        can_ml: 400.0,
        ..CoverAsk::default()
    }
}

fn sheet(mix: Mix) -> MixAnswer {
    mix_answer(&MixAsk { mix }).unwrap()
}

#[track_caller]
fn refused(mix: Mix) -> String {
    match mix_answer(&MixAsk { mix }) {
        Err(Refused::OutOfRange { field, .. } | Refused::NotANumber { field, .. } | Refused::Missing { field, .. }) => {
            field
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn premix_says_its_convention() {
    let sheet = sheet(Mix::Premix { fuel_litres: 5.0, parts_fuel: 50.0 });
    assert_eq!(sheet.sentence, "100 mL of oil into 5 L of fuel.");
    assert!(sheet.findings[0].text.english().contains("2.00 % of the fuel, 1.96 % of the mixture"));
    assert!(!sheet.cautions.is_empty());
}

#[test]
fn both_meanings_of_thinner_are_shown() {
    let sheet = sheet(Mix::TwoPart { product: product() });
    assert_eq!(sheet.sentence, "363.6 mL of base, 90.9 mL of hardener, 45.5 mL of thinner.");
    let other = sheet.other.unwrap();
    assert!((other.parts[2].millilitres.unwrap() - 37.037).abs() < 1e-3 && other.words.english().contains("alone"));
    assert!(sheet.findings.iter().any(|found| found.code.as_str() == "mix.thinner-meaning"));
}

#[test]
fn by_weight_the_volumes_follow_from_the_densities() {
    let weighed = TwoPartAsk { by_weight: true, thinner_percent: 0.0, base_density: Some(1.6), ..product() };
    let sheet = sheet(Mix::TwoPart { product: weighed });
    assert_eq!(sheet.sentence, "400.0 g of base, 100.0 g of hardener.");
    assert_eq!((sheet.parts[0].millilitres, sheet.parts[1].millilitres), (Some(250.0), None));
    assert!(sheet.other.is_none() && sheet.parts.len() == 2);
}

#[test]
fn cans_are_a_range_over_the_loss() {
    let sheet = sheet(Mix::Cover { area: area() });
    let need = sheet.cover.unwrap();
    assert!((need.least_ml - 250.0).abs() < 1e-9 && (need.most_ml - 375.0).abs() < 1e-9);
    assert_eq!(sheet.sentence, "1 of 400 mL for 0.9 m², 2 coats.");
    let film = CoverAsk { spreading_rate: None, solids_percent: Some(60.0), dry_micrometres: Some(50.0), ..area() };
    let sheet = self::sheet(Mix::Cover { area: CoverAsk { square_metres: 1.8, ..film } });
    assert_eq!(sheet.cover.as_ref().unwrap().spreading_rate, 12.0);
    assert_eq!(sheet.sentence, "2 of 400 mL for 1.8 m², 2 coats.");
}

#[test]
fn thinning_is_a_share_of_the_unthinned_paint() {
    let sheet = sheet(Mix::Thinning { paint_ml: 400.0, thinner_percent: 10.0 });
    assert_eq!(sheet.sentence, "40.0 mL of thinner into 400 mL of paint: 440.0 mL.");
}

#[test]
fn bad_input_names_its_field() {
    assert_eq!(refused(Mix::Premix { fuel_litres: 0.0, parts_fuel: 50.0 }), "fuelLitres");
    assert_eq!(refused(Mix::Premix { fuel_litres: 5.0, parts_fuel: f64::NAN }), "partsFuel");
    let product = |change: fn(&mut TwoPartAsk)| {
        let mut product = product();
        change(&mut product);
        refused(Mix::TwoPart { product })
    };
    assert_eq!(product(|ask| ask.ready = -1.0), "ready");
    assert_eq!(product(|ask| ask.parts_hardener = 0.0), "partsHardener");
    assert_eq!(product(|ask| ask.thinner_percent = 400.0), "thinnerPercent");
    assert_eq!(product(|ask| ask.base_density = Some(20.0)), "baseDensity");
    let area = |change: fn(&mut CoverAsk)| {
        let mut area = area();
        change(&mut area);
        refused(Mix::Cover { area })
    };
    assert_eq!(area(|ask| ask.spreading_rate = None), "spreadingRate");
    assert_eq!(area(|ask| ask.loss_percent = Some(100.0)), "lossPercent");
    assert_eq!(area(|ask| ask.coats = 0), "coats");
    assert_eq!(area(|ask| ask.square_metres = 1e9), "squareMetres");
}
