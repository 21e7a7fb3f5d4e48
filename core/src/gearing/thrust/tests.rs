//! Tests of thrust and top speed on the demo bike.

use proptest::prelude::*;

use super::*;
use crate::error::Refused;
use crate::gearing::sample::demo_bike;
use crate::gearing::thrust::gears::GearingVerdict;
use crate::record::{Bike, PowerPoint};

fn bike() -> Bike {
    let mut bike = demo_bike();
    bike.standard.drive.drag_area_m2 = Some(0.45);
    bike.fitted.drive.drag_area_m2 = Some(0.45);
    bike
}

fn sheet(ask: &ThrustAsk) -> ThrustAnswer {
    thrust_answer(&bike(), ask).unwrap()
}

fn codes(sheet: &ThrustAnswer) -> Vec<&str> {
    sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
}

#[test]
fn thrust_meets_resistance_at_the_top_speed() {
    let sheet = sheet(&ThrustAsk::default());
    let top = sheet.top.as_ref().unwrap();
    assert_eq!(top.held_by, HeldBy::Power);
    let line = sheet.gears.iter().find(|line| line.gear == top.gear).unwrap();
    let watts = top.resistance.total_newtons * top.kmh / 3.6;
    let kw = power_between_peaks(top.rpm, (11.8, 8500.0), (13.9, 7000.0));
    assert!((watts - kw * 900.0).abs() < 1e-3, "{watts} {kw}");
    let newtons = thrust(torque_of(kw, top.rpm), line.overall_ratio, 0.9, 1915.114 / std::f64::consts::TAU);
    assert!((newtons - top.resistance.total_newtons).abs() < 1e-3);
    assert!((sheet.mass_kg - 208.0).abs() < 1e-12 && (sheet.air_density - 1.225).abs() < 1e-5);
}

#[test]
fn top_speeds_agree_with_scipy() {
    // The same curve by `CubicHermiteSpline`, the speeds by `brentq`, the density by the library `fluids`; run apart.
    let kmh = |ask: &ThrustAsk| sheet(ask).gears.iter().map(|line| line.top.as_ref().unwrap().kmh).collect::<Vec<_>>();
    let near = |found: Vec<f64>, wanted: [f64; 5]| {
        for (found, wanted) in found.into_iter().zip(wanted) {
            assert!((found - wanted).abs() < 1e-6, "{found} {wanted}");
        }
    };
    near(kmh(&ThrustAsk::default()), [43.273181, 69.583878, 94.872081, 115.173727, 112.736170]);
    let tall = ThrustAsk { front_teeth: Some(16), rear_teeth: Some(38), ..ThrustAsk::default() };
    near(kmh(&tall), [49.802117, 80.082498, 109.186114, 114.883866, 103.462768]);
    let hill = sheet(&ThrustAsk { grade_percent: Some(3.0), ..ThrustAsk::default() });
    assert!((hill.gears[3].top.as_ref().unwrap().kmh - 108.476853).abs() < 1e-6);
    let wind = sheet(&ThrustAsk { head_wind_kmh: Some(20.0), ..ThrustAsk::default() });
    assert!((wind.gears[4].top.as_ref().unwrap().kmh - 92.443049).abs() < 1e-6);
    let matched = sheet(&ThrustAsk::default()).gearing.unwrap();
    assert!((matched.best_kmh.unwrap() - 116.336642).abs() < 1e-6);
    assert!((matched.best_final_ratio.unwrap() - 3.023905).abs() < 1e-6);
}

#[test]
fn a_peak_that_is_tried_takes_the_place_of_the_papers_and_of_the_points() {
    let mut bike = bike();
    let ask = ThrustAsk { peak_power_kw: Some(11.0), ..ThrustAsk::default() };
    let weaker = thrust_answer(&bike, &ask).unwrap();
    assert_eq!((weaker.peak_kw, weaker.peak_rpm), (11.0, 8500.0));
    assert!(weaker.top.as_ref().unwrap().kmh < sheet(&ThrustAsk::default()).top.unwrap().kmh - 1.0);
    bike.fitted.drive.power_curve = vec![PowerPoint { rpm: 3000.0, kw: 4.0 }, PowerPoint { rpm: 9000.0, kw: 14.0 }];
    assert_eq!(thrust_answer(&bike, &ThrustAsk::default()).unwrap().peak_kw, 14.0);
    assert_eq!(thrust_answer(&bike, &ask).unwrap(), weaker);
    let wrong = ThrustAsk { peak_power_kw: Some(0.0), ..ThrustAsk::default() };
    assert!(matches!(thrust_answer(&bike, &wrong), Err(Refused::OutOfRange { field, .. }) if field == "peakPowerKw"));
}

#[test]
fn taller_sprockets_leave_top_gear_short_of_peak_power() {
    let sheet = sheet(&ThrustAsk { front_teeth: Some(16), rear_teeth: Some(38), ..ThrustAsk::default() });
    assert_eq!(sheet.gearing.as_ref().unwrap().verdict, GearingVerdict::TooTall);
    let found = codes(&sheet);
    assert!(found.contains(&"thrust.too-tall") && found.contains(&"thrust.lower-gear-faster"), "{found:?}");
    let short = self::sheet(&ThrustAsk { front_teeth: Some(13), rear_teeth: Some(48), ..ThrustAsk::default() });
    assert_eq!(short.gearing.as_ref().unwrap().verdict, GearingVerdict::TooShort);
    assert!(codes(&short).contains(&"thrust.too-short") && codes(&short).contains(&"thrust.top-changes"));
}

#[test]
fn the_best_ratio_is_one_that_suits_and_is_no_slower_than_any_pair() {
    let base = sheet(&ThrustAsk::default());
    let matched = base.gearing.unwrap();
    let best = matched.best_kmh.unwrap();
    for front in 13..=17 {
        for rear in 34..=48 {
            let ask = ThrustAsk { front_teeth: Some(front), rear_teeth: Some(rear), ..ThrustAsk::default() };
            assert!(sheet(&ask).top.unwrap().kmh <= best + 1e-9, "{front}/{rear}");
        }
    }
    assert!(matched.best_final_ratio.is_some_and(|ratio| ratio > 2.7 && ratio < 3.5));
}

#[test]
fn the_lines_of_the_picture_end_where_the_engine_does() {
    let sheet = sheet(&ThrustAsk::default());
    assert_eq!(sheet.gears.len(), 5);
    for line in &sheet.gears {
        assert_eq!(line.points.len(), 25);
        assert!(line.points.windows(2).all(|two| two[0].road_speed_kmh < two[1].road_speed_kmh));
        assert!((line.points[24].engine_rpm - 9500.0).abs() < 1e-6 && line.points[24].newtons > 0.0);
        assert!(line.points.iter().all(|point| point.newtons <= line.most_newtons));
    }
    assert!((sheet.gears[4].points[24].road_speed_kmh - 143.85).abs() < 0.01);
    assert_eq!(sheet.resistance.len(), 41);
    assert!(sheet.resistance[0].air_newtons == 0.0 && (sheet.resistance[40].road_speed_kmh - 143.85).abs() < 0.01);
    assert_eq!(sheet.power_curve.len(), 33);
}

#[test]
fn drops_and_cruising_follow_the_ratios() {
    let sheet = sheet(&ThrustAsk { cruise_kmh: vec![80.0, 300.0], ..ThrustAsk::default() });
    assert_eq!(sheet.drops.len(), 4);
    assert!((sheet.drops[0].to_rpm - 9500.0 * 1.722 / 2.769).abs() < 1e-6);
    assert!((sheet.drops[0].drop_percent - (1.0 - 1.722 / 2.769) * 100.0).abs() < 1e-9);
    assert!((sheet.cruises[0].rpm_in_top - 5283.4).abs() < 0.1);
    assert_eq!((sheet.cruises[0].highest_gear, sheet.cruises[1].highest_gear), (Some(5), None));
    assert!(sheet.cruises[0].at_hand_kw > sheet.cruises[0].needed_kw);
}

#[test]
fn hill_wind_and_height_slow_it_and_downhill_ends_at_the_limit() {
    let kmh = |ask: ThrustAsk| sheet(&ask).top.unwrap().kmh;
    let level = kmh(ThrustAsk::default());
    assert!(kmh(ThrustAsk { grade_percent: Some(4.0), ..ThrustAsk::default() }) < level);
    assert!(kmh(ThrustAsk { head_wind_kmh: Some(20.0), ..ThrustAsk::default() }) < level);
    assert!(kmh(ThrustAsk { head_wind_kmh: Some(-20.0), ..ThrustAsk::default() }) > level);
    // Thinner air only: the engine's own loss at height is not in it.
    assert!(kmh(ThrustAsk { altitude_metres: Some(1500.0), ..ThrustAsk::default() }) > level);
    let down = sheet(&ThrustAsk { grade_percent: Some(-25.0), ..ThrustAsk::default() }).top.unwrap();
    assert_eq!((down.held_by, down.gear), (HeldBy::EngineLimit, 5));
    let wall = sheet(&ThrustAsk { grade_percent: Some(40.0), load_kg: Some(400.0), ..ThrustAsk::default() });
    assert!(wall.top.is_some() || codes(&wall).contains(&"thrust.none-held"));
}

#[test]
fn a_tyre_rated_below_the_top_speed_is_named() {
    let mut bike = bike();
    bike.fitted.rear_wheel.tyre = Some("3.00-18 52J".to_owned());
    let sheet = thrust_answer(&bike, &ThrustAsk::default()).unwrap();
    assert!(codes(&sheet).contains(&"thrust.beyond-tyre"));
    bike.fitted.rear_wheel.tyre = Some("3.00-18 52P".to_owned());
    let sheet = thrust_answer(&bike, &ThrustAsk::default()).unwrap();
    assert!(!codes(&sheet).contains(&"thrust.beyond-tyre"));
}

#[test]
fn what_was_assumed_is_said() {
    let mut bike = demo_bike();
    let said = |bike: &Bike| {
        thrust_answer(bike, &ThrustAsk::default())
            .unwrap()
            .assumptions
            .iter()
            .map(|said| said.english())
            .collect::<Vec<_>>()
            .join(" ")
    };
    assert!(said(&bike).contains("Drag area 0.6") && said(&bike).contains("smoothest one through both"));
    bike.identity.peak_torque_nm = None;
    bike.fitted.drive.rev_limit_rpm = None;
    assert!(said(&bike).contains("peak power alone") && said(&bike).contains("Engine speed limit 9 520 rpm"));
    assert_eq!(thrust_answer(&bike, &ThrustAsk::default()).unwrap().power_source, PowerSource::PeakPower);
}

#[test]
fn bad_input_and_what_is_missing_name_their_field() {
    let field = |bike: &Bike, ask: ThrustAsk| match thrust_answer(bike, &ask) {
        Err(
            Refused::OutOfRange { field, .. }
            | Refused::NotANumber { field, .. }
            | Refused::Missing { field, .. }
            | Refused::Conflict { field, .. },
        ) => field,
        other => panic!("{other:?}"),
    };
    let ask = ThrustAsk::default;
    assert_eq!(field(&bike(), ThrustAsk { drag_area_m2: Some(0.0), ..ask() }), "dragAreaM2");
    assert_eq!(field(&bike(), ThrustAsk { grade_percent: Some(f64::NAN), ..ask() }), "gradePercent");
    assert_eq!(field(&bike(), ThrustAsk { celsius: Some(200.0), ..ask() }), "celsius");
    assert_eq!(field(&bike(), ThrustAsk { cruise_kmh: vec![0.0], ..ask() }), "cruiseKmh");
    assert_eq!(field(&bike(), ThrustAsk { cruise_kmh: vec![50.0; 13], ..ask() }), "cruiseKmh");
    let both = ThrustAsk { rolling_coefficient: Some(0.02), tyre_bar: Some(2.0), ..ask() };
    assert_eq!(field(&bike(), both), "rollingCoefficient");
    let mut heavy = bike();
    heavy.identity.dry_mass_kg = None;
    assert_eq!(field(&heavy, ask()), "dryMassKg");
    heavy.identity.peak_power_kw = None;
    assert_eq!(field(&heavy, ask()), "peakPowerKw");
}

#[test]
fn every_line_of_the_working_has_numbers_in_it() {
    let sheet = sheet(&ThrustAsk { tyre_bar: Some(2.0), ..ThrustAsk::default() });
    assert!(sheet.working.lines.len() >= 9);
    let top = sheet.working.lines.iter().find(|line| line.label.english().starts_with("Top speed, gear ")).unwrap();
    assert!(top.label.english().ends_with(", where power at the wheel equals resistance times speed"), "{}", top.label);
    for line in &sheet.working.lines {
        assert!(line.equation.chars().any(|letter| letter.is_ascii_digit()) && line.value.is_finite(), "{line:?}");
    }
}

proptest! {
    #[test]
    fn more_power_never_lowers_the_top_speed(
        low in 2.0..8.0, high in 8.0..20.0, last in 4.0..20.0, more in 1.0..1.5, front in 12u32..18
    ) {
        let curve = |by: f64| vec![
            PowerPoint { rpm: 3000.0, kw: low * by },
            PowerPoint { rpm: 7500.0, kw: high * by },
            PowerPoint { rpm: 9500.0, kw: last * by },
        ];
        let top = |by: f64| {
            let ask = ThrustAsk { power_curve: curve(by), front_teeth: Some(front), ..ThrustAsk::default() };
            sheet(&ask).top.map_or(0.0, |top| top.kmh)
        };
        prop_assert!(top(more) >= top(1.0) - 1e-9);
    }
}
