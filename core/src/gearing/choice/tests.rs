//! Tests of the choice of sprockets on the demo bike.

use super::*;
use crate::error::Refused;
use crate::gearing::sample::demo_bike;
use crate::quantity::Judgement;
use crate::record::{Bike, SpeedometerDrive};

fn limited() -> Bike {
    let mut bike = demo_bike();
    for drive in [&mut bike.standard.drive, &mut bike.fitted.drive] {
        (drive.front_teeth_min, drive.front_teeth_max) = (Some(13), Some(17));
        (drive.rear_teeth_min, drive.rear_teeth_max) = (Some(34), Some(48));
    }
    bike
}

fn choose(bike: &Bike, goal: Option<SprocketGoal>) -> SprocketChoiceAnswer {
    sprocket_choice_answer(bike, &SprocketChoiceAsk { goal, ..SprocketChoiceAsk::default() }).unwrap()
}

fn codes(sheet: &SprocketChoiceAnswer) -> Vec<&str> {
    sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
}

#[test]
fn every_pair_inside_the_limits_is_there_once() {
    let sheet = choose(&limited(), None);
    assert_eq!((sheet.pairs.len(), sheet.pairs_in_all), (75, 75));
    let mut teeth: Vec<_> = sheet.pairs.iter().map(|pair| (pair.front_teeth, pair.rear_teeth)).collect();
    teeth.sort_unstable();
    teeth.dedup();
    assert_eq!(teeth.len(), 75);
    // Without a goal what is fitted is nearest to itself.
    assert!(sheet.pairs[0].fitted && sheet.pairs[0].chain_stays == Some(true));
    assert!(codes(&sheet).is_empty(), "{:?}", codes(&sheet));
}

#[test]
fn a_goal_of_fifteen_per_cent_taller_finds_the_pair_of_the_demo() {
    let sheet = choose(&limited(), Some(SprocketGoal::Taller { taller_percent: 15.0 }));
    assert!((sheet.wanted_ratio.unwrap() - 41.0 / 15.0 / 1.15).abs() < 1e-12);
    let best = &sheet.pairs[0];
    // 16/38 = 2.375 against 2.3768 wanted: nothing between 13/34 and 17/48 comes nearer and lands inside.
    assert_eq!((best.front_teeth, best.rear_teeth), (16, 38));
    assert!((best.off_goal_percent.unwrap() - (41.0 / 15.0 / 1.15 / 2.375 - 1.0) * 100.0).abs() < 1e-9);
    assert!((best.rpm_change_percent + 13.11).abs() < 0.01 && (best.speed_change_percent - 15.088).abs() < 1e-3);
    let fit = best.chain.as_ref().unwrap();
    assert!((fit.links, best.chain_stays) == (116, Some(true)) && (fit.centre_distance_mm - 563.394).abs() < 1e-3);
    let hunting = best.hunting.as_ref().unwrap();
    assert_eq!((hunting.front_turns, hunting.front_divisor, hunting.rear_turns, hunting.rear_divisor), (29, 4, 58, 2));
}

#[test]
fn the_list_is_in_the_order_that_it_states() {
    for goal in [None, Some(SprocketGoal::Taller { taller_percent: -7.0 }), Some(SprocketGoal::Speedometer)] {
        let sheet = choose(&limited(), goal.clone());
        let place = |pair: &SprocketPair| match pair.judgement {
            Judgement::Fine => 0,
            Judgement::Open => 1,
            Judgement::Outside => 2,
        };
        for two in sheet.pairs.windows(2) {
            assert!(place(&two[0]) <= place(&two[1]));
            if place(&two[0]) == place(&two[1]) && goal != Some(SprocketGoal::Speedometer) {
                let away = |pair: &SprocketPair| pair.off_goal_percent.unwrap_or(pair.speed_change_percent).abs();
                assert!(away(&two[0]) <= away(&two[1]));
            }
        }
        assert!(sheet.order.english().contains("inside the adjuster"));
    }
}

#[test]
fn a_speed_at_an_engine_speed_is_met_as_nearly_as_teeth_allow() {
    let goal = SprocketGoal::SpeedAtRpm { road_speed_kmh: 90.0, engine_rpm: 5500.0, gear: Some(5) };
    let sheet = choose(&limited(), Some(goal));
    let best = &sheet.pairs[0];
    let near = best.off_goal_percent.unwrap();
    assert!((best.kmh_at_goal_rpm.unwrap() - 90.0 * (1.0 + near / 100.0)).abs() < 1e-9);
    // No other pair that lands inside comes nearer.
    let fitting = sheet.pairs.iter().filter(|pair| pair.judgement == Judgement::Fine);
    assert!(fitting.map(|pair| pair.off_goal_percent.unwrap().abs()).all(|off| off >= near.abs()));
}

#[test]
fn the_speedometer_goal_keeps_to_the_band_or_says_that_it_cannot() {
    let mut bike = limited();
    bike.fitted.drive.speedometer_over_percent = Some(4.0);
    let sheet = choose(&bike, Some(SprocketGoal::Speedometer));
    assert_eq!(sheet.pairs[0].speedometer.as_ref().unwrap().in_band, Some(true));
    let first_out = sheet.pairs.iter().position(|pair| pair.speedometer.as_ref().unwrap().in_band == Some(false));
    let fine = sheet.pairs.iter().filter(|pair| pair.judgement == Judgement::Fine);
    let inside = fine.filter(|pair| pair.speedometer.as_ref().unwrap().in_band == Some(true)).count();
    assert_eq!(first_out, Some(inside));

    bike.fitted.drive.speedometer_over_percent = None;
    assert_eq!(codes(&choose(&bike, Some(SprocketGoal::Speedometer))), ["choice.speedometer-open"]);
    bike.fitted.drive.speedometer = Some(SpeedometerDrive::RearWheel);
    assert_eq!(codes(&choose(&bike, Some(SprocketGoal::Speedometer))), ["choice.speedometer-on-wheel"]);
}

#[test]
fn only_sizes_that_can_be_had_are_shown() {
    let ask = SprocketChoiceAsk { front_sizes: vec![16], rear_sizes: vec![38, 39, 60], ..SprocketChoiceAsk::default() };
    let sheet = sprocket_choice_answer(&limited(), &ask).unwrap();
    assert_eq!(sheet.pairs.iter().map(|pair| pair.rear_teeth).collect::<Vec<_>>(), [39, 38]);
    let none = SprocketChoiceAsk { front_sizes: vec![20], ..SprocketChoiceAsk::default() };
    let sheet = sprocket_choice_answer(&limited(), &none).unwrap();
    assert_eq!((sheet.pairs.len(), codes(&sheet)), (0, vec!["choice.none-left"]));
}

#[test]
fn a_pair_that_needs_another_chain_gets_a_count_that_lands_inside() {
    let sheet = choose(&limited(), None);
    for pair in sheet.pairs.iter().filter(|pair| pair.judgement == Judgement::Fine) {
        let fit = pair.chain.as_ref().unwrap();
        assert!(fit.links.is_multiple_of(2) && fit.inside_adjuster == Some(true));
        assert!(fit.travel_left_mm.unwrap() >= 0.0 && fit.travel_used_mm.unwrap() >= 0.0);
        assert_eq!(pair.chain_stays, Some(fit.links == 116));
    }
    assert!(sheet.pairs.iter().any(|pair| pair.chain_stays == Some(false)));
}

#[test]
fn what_is_not_known_leaves_the_pair_open_and_the_limits_assumed() {
    let mut bike = demo_bike();
    bike.fitted.drive.adjuster_to_mm = None;
    bike.fitted.drive.primary_ratio = None;
    let sheet = choose(&bike, None);
    assert_eq!(codes(&sheet), ["choice.limits-assumed"]);
    assert_eq!(sheet.pairs_in_all, 5 * 13);
    assert!(sheet.pairs.iter().all(|pair| pair.judgement != Judgement::Fine && pair.kmh_at_limit.is_none()));
    bike.fitted.drive.chain_size = Some(crate::record::ChainSize::C520);
    bike.fitted.drive.rear_sprocket_size = Some(crate::record::ChainSize::C428);
    assert!(codes(&choose(&bike, None)).contains(&"chain.rear-size"));
}

#[test]
fn bad_input_and_what_is_missing_name_their_field() {
    let field = |bike: &Bike, ask: SprocketChoiceAsk| match sprocket_choice_answer(bike, &ask) {
        Err(Refused::OutOfRange { field, .. } | Refused::Missing { field, .. }) => field,
        other => panic!("{other:?}"),
    };
    let ask = SprocketChoiceAsk::default;
    assert_eq!(field(&Bike::default(), ask()), "frontTeeth");
    assert_eq!(field(&limited(), SprocketChoiceAsk { front_sizes: vec![3], ..ask() }), "frontSizes");
    assert_eq!(field(&limited(), SprocketChoiceAsk { rear_sizes: vec![300], ..ask() }), "rearSizes");
    assert_eq!(field(&limited(), SprocketChoiceAsk { most: Some(0), ..ask() }), "most");
    let mut bike = limited();
    bike.fitted.rear_wheel.tyre = None;
    bike.standard.rear_wheel.tyre = None;
    let goal = SprocketGoal::SpeedAtRpm { road_speed_kmh: 90.0, engine_rpm: 5500.0, gear: None };
    assert_eq!(field(&bike, SprocketChoiceAsk { goal: Some(goal), ..ask() }), "tyre");
}
