//! The fastener page on measured screws, and what it refuses.

use super::*;
use crate::fasteners::MakerTorque;

fn ask() -> FastenerAsk {
    FastenerAsk {
        diameter_mm: Some(7.9),
        pitch_mm: Some(1.25),
        property_class: Some("8.8".to_owned()),
        ..FastenerAsk::default()
    }
}

fn codes(sheet: &FastenerAnswer) -> Vec<&str> {
    sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
}

#[test]
fn an_eight_millimetre_screw_is_named_and_its_torque_is_a_band() {
    let sheet = fastener_answer(&ask()).unwrap();
    assert_eq!(sheet.thread.as_ref().unwrap().name, "M8 × 1.25");
    assert!((sheet.strength.as_ref().unwrap().proof_newtons / 21_200.0 - 1.0).abs() < 0.005);
    let band = sheet.torque.as_ref().unwrap();
    assert!((band.middle.torque_nm - 24.57).abs() < 0.005 && (band.middle.friction - 0.12).abs() < 1e-12);
    assert!(band.least.torque_nm < band.middle.torque_nm && band.middle.torque_nm < band.most.torque_nm);
    assert_eq!(codes(&sheet), ["torque.not-the-makers"]);
    assert_eq!(sheet.substitutes.len(), 7);
}

#[test]
fn the_pitch_may_be_measured_three_ways_but_only_one_at_a_time() {
    let turns = FastenerAsk { pitch_mm: None, turns: Some(10.0), over_mm: Some(12.5), ..ask() };
    assert_eq!(fastener_answer(&turns).unwrap().pitch_mm, 1.25);
    let inch = FastenerAsk { diameter_mm: Some(6.27), pitch_mm: None, turns_per_inch: Some(20.0), ..ask() };
    let sheet = fastener_answer(&inch).unwrap();
    assert_eq!(sheet.likely.len(), 2);
    assert_eq!(codes(&sheet), ["thread.several", "thread.missing-seat"]);
    let both = FastenerAsk { turns_per_inch: Some(20.0), ..ask() };
    assert!(matches!(fastener_answer(&both), Err(Refused::Conflict { field, .. }) if field == "pitchMm"));
    let half = FastenerAsk { pitch_mm: None, turns: Some(10.0), ..ask() };
    assert!(matches!(fastener_answer(&half), Err(Refused::Missing { field, .. }) if field == "overMm"));
    let none = FastenerAsk { pitch_mm: None, ..ask() };
    assert!(matches!(fastener_answer(&none), Err(Refused::Missing { field, .. }) if field == "pitchMm"));
}

#[test]
fn the_maker_wins_and_a_figure_beyond_the_class_is_said() {
    let maker = |torque_nm| Some(MakerTorque { torque_nm, source: "Manual, page 12".to_owned() });
    let sheet = fastener_answer(&FastenerAsk { maker: maker(22.0), ..ask() }).unwrap();
    let band = sheet.torque.as_ref().unwrap();
    assert!(band.maker_preload_least.unwrap() < band.maker_preload_most.unwrap());
    assert_eq!(codes(&sheet), Vec::<&str>::new());
    let sheet = fastener_answer(&FastenerAsk { maker: maker(60.0), ..ask() }).unwrap();
    assert_eq!(codes(&sheet), ["torque.maker-above-band"]);
    let unsaid = MakerTorque { torque_nm: 20.0, source: " ".to_owned() };
    assert!(matches!(fastener_answer(&FastenerAsk { maker: Some(unsaid), ..ask() }), Err(Refused::BadText { .. })));
}

#[test]
fn too_little_thread_in_aluminium_is_said_and_a_fine_thread_needs_more() {
    let short = FastenerAsk {
        tapped_into: Some(TappedInto::CastAluminium),
        engagement_mm: Some(9.0),
        shear_mpa: Some(130.0),
        ..ask()
    };
    let sheet = fastener_answer(&short).unwrap();
    let coarse = sheet.engagement.as_ref().unwrap();
    assert!(codes(&sheet).contains(&"thread.too-short") && coarse.screw_breaks_first_mm.is_some());
    assert_eq!((coarse.least_mm, coarse.most_mm), (12.8, 20.0));
    let fine = fastener_answer(&FastenerAsk { pitch_mm: Some(1.0), ..short }).unwrap();
    assert!((fine.engagement.unwrap().least_mm - 16.0).abs() < 1e-12);
}

#[test]
fn a_brake_screw_has_no_substitute() {
    let sheet = fastener_answer(&FastenerAsk { place: Some(ScrewPlace::Brake), ..ask() }).unwrap();
    assert!(codes(&sheet).contains(&"screw.no-substitute") && sheet.substitutes.len() == 1);
}

#[test]
fn what_cannot_be_is_refused_by_its_field() {
    let field = |ask: FastenerAsk| match fastener_answer(&ask) {
        Err(
            Refused::OutOfRange { field, .. }
            | Refused::NotANumber { field, .. }
            | Refused::Conflict { field, .. }
            | Refused::Unreadable { field, .. }
            | Refused::Missing { field, .. },
        ) => field,
        other => panic!("{other:?}"),
    };
    assert_eq!(field(FastenerAsk { diameter_mm: Some(0.0), ..ask() }), "diameterMm");
    assert_eq!(field(FastenerAsk { diameter_mm: None, ..ask() }), "diameterMm");
    assert_eq!(field(FastenerAsk { pitch_mm: Some(f64::NAN), ..ask() }), "pitchMm");
    assert_eq!(field(FastenerAsk { property_class: Some("7".to_owned()), ..ask() }), "propertyClass");
    assert_eq!(field(FastenerAsk { thread: Some("M12 × 1.25".to_owned()), ..ask() }), "thread");
    assert_eq!(field(FastenerAsk { bearing_mm: Some(8.0), ..ask() }), "bearingMm");
    assert_eq!(field(FastenerAsk { shear_mpa: Some(-1.0), ..ask() }), "shearMpa");
}

#[test]
fn nothing_that_fits_gives_no_torque_and_says_so() {
    let sheet = fastener_answer(&FastenerAsk { pitch_mm: Some(0.35), diameter_mm: Some(9.0), ..ask() }).unwrap();
    assert!(sheet.thread.is_none() && sheet.torque.is_none());
    assert_eq!(codes(&sheet), ["thread.none"]);
}

#[test]
fn a_line_of_the_working_names_friction_and_lubrication() {
    let oiled = FastenerAsk { lubrication: Some(Lubrication::ThreadLock), ..ask() };
    let lines = fastener_answer(&oiled).unwrap().working.lines;
    let labels: Vec<String> = lines.iter().map(|line| line.label.english()).collect();
    for label in [
        "Preload at the least friction, 0.12 (with thread lock)",
        "Torque at the greatest friction, 0.16 (with thread lock)",
    ] {
        assert!(labels.iter().any(|said| said == label), "{label}: {labels:#?}");
    }
}
