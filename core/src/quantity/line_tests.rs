//! What a line of a working shows.

use super::*;
use crate::brakes::{HydraulicBrake, LeverTravel};
use crate::fasteners::StressArea;
use crate::gearing::CentreDistance;
use crate::quantity::equation::{parts, pieces};

/// A label that no test looks at.
fn unnamed() -> Message {
    Message::as_entered("")
}

fn put(equation: &str, numbers: &[(&str, f64)]) -> String {
    let place = |symbol: &str| numbers.iter().position(|(known, _)| *known == symbol);
    let pieces = pieces(equation, |symbol| place(symbol).map_or_else(|| Piece::Text(symbol.into()), Piece::Number));
    let stand: Vec<Stands> =
        numbers.iter().map(|(_, number)| Stands { given: Given::Number(*number), sign: "" }).collect();
    let mut shown = String::new();
    write(&mut shown, &pieces, &stand, 0);
    shown
}

fn lever_travel(lever_ratio: f64) -> LeverTravel {
    LeverTravel {
        lever_newtons: 100.0,
        lever_ratio,
        master_mm: 14.0,
        pistons: 2,
        piston_mm: 30.0,
        pad_clearance_mm: 0.15,
        hose_mm: 900.0,
        hose_swell_ml_m: 0.5,
    }
}

fn rounded(number: f64) -> String {
    let mut shown = String::new();
    push_rounded(&mut shown, number);
    shown
}

#[test]
fn numbers_take_the_place_of_their_symbols_and_of_nothing_else() {
    let numbers = [("d", 8.0), ("d₂", 7.18801), ("P", 1.25)];
    assert_eq!(put("π/4 · ((d₂ + d₃) / 2)² + d · sin(P)", &numbers), "π/4 × ((7.188 + d₃) / 2)² + 8 × sin(1.25)");
    assert_eq!(put("d", &numbers), "8");
    assert_eq!(put("d_x + dP", &numbers), "d_x + dP");
    assert_eq!(put("243.12 + T", &[("T", -5.0)]), "243.12 + (−5)");
}

#[test]
fn a_number_keeps_what_tells_it_from_nothing() {
    assert_eq!([1_915.114_9, 0.000_123_45, 1e-13, -0.5].map(rounded), ["1915.1149", "0.000123", "0", "(−0.5)"]);
}

#[test]
fn a_result_that_goes_into_another_shows_as_a_number() {
    let area = StressArea { diameter_mm: 8.0, pitch_mm: 1.25 };
    assert_eq!(area.line(unnamed()).unwrap().equation, "π/4 × ((7.1881 + 6.4664) / 2)²");
    assert_eq!(area.line_of("flank_diameter", unnamed()).unwrap().equation, "8 − 0.64952 × 1.25");
}

#[test]
fn a_part_of_a_formula_needs_only_its_own_numbers() {
    let unknown = f64::NAN;
    let brake = HydraulicBrake {
        lever_newtons: 100.0,
        lever_ratio: unknown,
        master_mm: 14.0,
        pistons: 2,
        piston_mm: 30.0,
        pad_friction: unknown,
        effective_radius_mm: unknown,
        wheel_radius_mm: unknown,
        mass_kg: unknown,
    };
    let line = brake.line_of("hydraulic_ratio", Message::as_entered("Hydraulic ratio")).unwrap();
    assert_eq!((line.equation.as_str(), line.label.english().as_str()), ("2 × 30² / 14²", "Hydraulic ratio"));
    assert!(brake.line(unnamed()).is_none() && brake.line_of("pressure", unnamed()).is_none());
    assert!(brake.line_of("no_such", unnamed()).is_none());
}

#[test]
fn what_an_open_symbol_is_stands_behind() {
    let travel = lever_travel(5.0);
    let volume = travel.line_of("volume", unnamed()).unwrap().equation;
    assert!(volume.ends_with("× p / 68.948, p = 10 × 100 × 5 / (π × 14² / 4)"), "{volume}");
}

#[test]
fn an_equation_that_is_solved_shows_both_sides() {
    let centre = CentreDistance { front_teeth: 15, rear_teeth: 41, chain_links: 116, pitch_mm: 12.7 };
    assert_eq!(
        centre.line(unnamed()).unwrap().equation,
        "C : 2 × C / 12.7 × cos(α) + (15 + 41) / 2 + |41 − 15| × α / π = 116, α = arcsin(|41 − 15| / (2 × π × C / 12.7))"
    );
}

#[test]
fn a_comma_inside_brackets_parts_nothing() {
    assert_eq!(parts("n = X / gcd(z, X), m = 2"), [("n", "X / gcd(z, X)"), ("m", "2")]);
}

#[test]
fn a_line_asked_for_again_with_other_numbers_known_reads_as_it_would_have_the_first_time() {
    let shown = |lever_ratio| lever_travel(lever_ratio).line_of("volume", unnamed()).unwrap().equation;
    let (five, six) = (shown(5.0), shown(6.0));
    assert_eq!(five.replace("100 × 5", "100 × 6"), six);
    assert_eq!(shown(5.0), five);
}

#[test]
fn decimals_are_those_of_the_shortest_decimal_number() {
    for number in [0.01, 0.0123, 1.0, 12.5, 0.30000000000000004, 1_234.567_89, 99_999.999_96, 7e10, 3e12, 1e300] {
        let usual = if number < 1e11 { (number * 1e4_f64).round() / 1e4 } else { number };
        assert_eq!(rounded(number), format!("{usual}"));
        assert_eq!(rounded(-number), format!("(−{usual})"));
    }
}
