//! The answer of the brake page: one end of the bike, standard and proposed side by side.

use super::working;
use crate::bounds;
use crate::brakes::formulas::{
    bleeding, braking_distance, deceleration_from_distance, efficiency, reaction_distance, stopping_lines,
};
use crate::brakes::judge::{BrakeLine, Effort, brake_line, compare, drum_state, findings, fluid, wheel_radius};
use crate::brakes::{BrakeAnswer, BrakeAsk, FluidAdvice, StoppingAnswer};
use crate::error::Refused;
use crate::record::{Bike, Brake, BrakeKind, End, FluidGrade, USUAL_LOAD_KG};

const USUAL_LEVER_NEWTONS: f64 = 100.0;
const USUAL_SPEED_KMH: f64 = 60.0;
const USUAL_REACTION_SECONDS: f64 = 1.0;
const USUAL_ROAD_FRICTION: f64 = 0.8;

/// Works the brake page out.
///
/// Refused: a number outside its range, a disc without master cylinder or pistons, a piston that has no room, a measured
/// stop shorter than its reaction. A drum needs nothing; it says what is missing.
pub fn brake_answer(bike: &Bike, ask: &BrakeAsk) -> Result<BrakeAnswer, Refused> {
    let end = ask.end.unwrap_or(End::Front);
    let (as_made, fitted) = ends(bike, end);
    let brake = match &ask.brake {
        Some(over) => over.clone().over(fitted).checked()?,
        None => fitted.clone().checked()?,
    };
    let load = bounds::LOAD_MASS.check(ask.load_kg.unwrap_or(USUAL_LOAD_KG))?;
    let effort = Effort {
        lever_newtons: bounds::LEVER_FORCE.check(ask.lever_newtons.unwrap_or(USUAL_LEVER_NEWTONS))?,
        wheel_radius_mm: wheel_radius(bike, end),
        mass_kg: bike.identity.dry_mass_kg.map(|dry| dry + load),
    };
    let road_friction = bounds::ROAD_FRICTION.check(ask.road_friction.unwrap_or(USUAL_ROAD_FRICTION))?;
    bounds::FLUID_YEARS.check_known(ask.fluid_years)?;
    bounds::WATER_PERCENT.check_known(ask.water_percent)?;

    let is_drum = brake.brake == Some(BrakeKind::Drum);
    let proposed = if is_drum { None } else { Some(brake_line(&brake, &effort)?) };
    let drum = if is_drum { Some(drum_state(&brake, ask.rod_travel_mm)?) } else { None };
    let standard = brake_line(as_made, &effort).ok().filter(|_| !is_drum);
    let change = standard.as_ref().zip(proposed.as_ref()).map(|(standard, proposed)| compare(standard, proposed));
    let stopping = stopping(end, ask, proposed.as_ref(), road_friction)?;

    let mut found = Vec::new();
    let mut lines = Vec::new();
    if let Some(line) = &proposed {
        found.extend(findings::on_line(&brake, line, road_friction));
        found.extend(findings::on_ratio(end, line.hydraulic_ratio));
        found.extend(findings::on_change(change.as_ref()));
        found.extend(findings::on_stopping(line, &stopping.lines));
        found.extend(fluid::findings(brake.fluid, ask.pour_in, ask.fluid_years, ask.water_percent));
        lines.extend(working::on_line(line, &effort));
        lines.extend(standard.iter().flat_map(|standard| working::on_change(standard, line)));
    }
    if let Some(drum) = &drum {
        found.extend(crate::brakes::judge::drum_state::findings(drum));
        lines.extend(working::on_drum(&brake, ask.rod_travel_mm));
    }
    lines.extend(working::on_stopping(&stopping, ask.metres));

    Ok(BrakeAnswer {
        end,
        brake: brake.brake,
        fluid: proposed.as_ref().map(|_| fluid_advice(brake.fluid, ask.pour_in)),
        bleeding: proposed.as_ref().map(|_| bleeding(&brake)),
        working: working::working(lines, !is_drum, bike.identity.dry_mass_kg.map(|dry| (dry, load))),
        standard,
        proposed,
        change,
        drum,
        stopping,
        cautions: findings::cautions(),
        findings: found,
    })
}

fn ends(bike: &Bike, end: End) -> (&Brake, &Brake) {
    match end {
        End::Front => (&bike.standard.front_brake, &bike.fitted.front_brake),
        End::Rear => (&bike.standard.rear_brake, &bike.fitted.rear_brake),
    }
}

fn stopping(end: End, ask: &BrakeAsk, line: Option<&BrakeLine>, friction: f64) -> Result<StoppingAnswer, Refused> {
    let speed = bounds::BRAKING_SPEED.check(ask.road_speed_kmh.unwrap_or(USUAL_SPEED_KMH))?;
    let reaction = bounds::REACTION.check(ask.reaction_seconds.unwrap_or(USUAL_REACTION_SECONDS))?;
    let measured = match ask.metres {
        Some(metres) => {
            let metres = bounds::STOPPING_DISTANCE.check(metres)?;
            Some(deceleration_from_distance(speed, metres, reaction)?)
        }
        None => None,
    };
    let reaction_metres = reaction_distance(speed, reaction);
    let grip = friction * crate::units::GRAVITY;
    let least = line.and_then(|line| line.deceleration_least).map(|slows| slows.min(grip));
    let most = line.and_then(|line| line.deceleration_most).map(|slows| slows.min(grip));
    // Without a force at the lever nothing stops.
    let metres = |slows: f64| (slows > 0.0).then(|| reaction_metres + braking_distance(speed, slows));
    Ok(StoppingAnswer {
        road_speed_kmh: speed,
        reaction_seconds: reaction,
        reaction_metres,
        deceleration_least: least,
        deceleration_most: most,
        metres_least: most.and_then(metres),
        metres_most: least.and_then(metres),
        measured_deceleration: measured,
        measured_percent: measured.map(efficiency),
        lines: stopping_lines(end, speed),
    })
}

fn fluid_advice(now: Option<FluidGrade>, pour_in: Option<FluidGrade>) -> FluidAdvice {
    FluidAdvice {
        grades: FluidGrade::ALL.map(FluidGrade::card).to_vec(),
        now,
        meeting: now.zip(pour_in).map(|(now, poured)| now.meets(poured)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brakes::sample::{demo_bike, proposed_disc};
    use crate::quantity::Judgement;

    fn codes(sheet: &BrakeAnswer) -> Vec<&str> {
        sheet.findings.iter().map(|finding| finding.code.as_str()).collect()
    }

    fn entered(lever_ratio: f64, pad_friction: f64) -> Option<Brake> {
        Some(Brake { lever_ratio: Some(lever_ratio), pad_friction: Some(pad_friction), ..proposed_disc() })
    }

    #[test]
    fn the_second_hand_pair_is_harder_shorter_and_outside_common_practice() {
        let ask = BrakeAsk { brake: Some(proposed_disc()), ..BrakeAsk::default() };
        let sheet = brake_answer(&demo_bike(), &ask).unwrap();
        let change = sheet.change.as_ref().unwrap();
        assert!((change.ratio_before - 9.0).abs() < 1e-9 && (change.ratio_after - 7.43878).abs() < 1e-5);
        // The smaller pistons sit further out on the disc, which gives a little of it back: 90.95 mm and 96.5 mm.
        let effort = (9.0 * 90.95 / (7.438_775_510 * 96.5) - 1.0) * 100.0;
        assert!((change.effort_percent - effort).abs() < 1e-6 && (change.travel_percent + 17.347).abs() < 1e-3);
        assert_eq!(change.judgement, Judgement::Outside);
        assert!(
            change
                .taken
                .as_ref()
                .map(|said| said.english())
                .as_deref()
                .is_some_and(|taken| taken.contains("lever ratio"))
        );
        assert!(
            codes(&sheet).contains(&"brake.ratio-uncommon") && codes(&sheet).contains(&"brake.missing-lever-ratio")
        );
    }

    #[test]
    fn the_page_as_the_bike_stands_changes_nothing() {
        let sheet = brake_answer(&demo_bike(), &BrakeAsk::default()).unwrap();
        let change = sheet.change.as_ref().unwrap();
        assert_eq!((change.effort_percent, change.travel_percent), (0.0, 0.0));
        assert_eq!(change.judgement, Judgement::Fine);
        assert_eq!(sheet.standard, sheet.proposed);
        assert!(sheet.bleeding.is_some() && sheet.fluid.is_some() && !sheet.cautions.is_empty());
    }

    #[test]
    fn with_lever_and_friction_known_it_stops_and_is_set_against_the_line() {
        let weak = BrakeAsk { brake: entered(5.0, 0.4), lever_newtons: Some(60.0), ..BrakeAsk::default() };
        let sheet = brake_answer(&demo_bike(), &weak).unwrap();
        let line = sheet.proposed.as_ref().unwrap();
        // Worked apart: 60 N × 5 × 7.43878 = 2,231.6 N; 2 × 0.4 × 2,231.6 × 0.0965 = 172.28 N m; radius 0.29845 m; 208 kg.
        let radius = sheet_radius();
        let slows = 2.0 * 0.4 * 60.0 * 5.0 * 7.438_775_510 * 96.5 / radius / 208.0;
        assert!((line.deceleration_most.unwrap() - slows).abs() < 1e-6);
        assert_eq!(line.deceleration_least, line.deceleration_most);
        assert!(codes(&sheet).contains(&"brake.below-line"), "{:?} {slows}", codes(&sheet));
        let metres = 60.0 / 3.6 + (60.0_f64 / 3.6).powi(2) / (2.0 * slows);
        assert!((sheet.stopping.metres_least.unwrap() - metres).abs() < 1e-6);

        let strong = BrakeAsk { lever_newtons: Some(400.0), ..weak };
        let sheet = brake_answer(&demo_bike(), &strong).unwrap();
        assert!(codes(&sheet).contains(&"brake.beyond-grip") && !codes(&sheet).contains(&"brake.below-line"));
        assert!((sheet.stopping.deceleration_most.unwrap() - 0.8 * crate::units::GRAVITY).abs() < 1e-12);
    }

    fn sheet_radius() -> f64 {
        wheel_radius(&demo_bike(), End::Front).unwrap()
    }

    #[test]
    fn the_rear_drum_says_what_it_lacks_and_takes_measures() {
        let rear = BrakeAsk { end: Some(End::Rear), ..BrakeAsk::default() };
        let sheet = brake_answer(&demo_bike(), &rear).unwrap();
        assert!(sheet.proposed.is_none() && sheet.fluid.is_none() && sheet.change.is_none());
        assert_eq!(codes(&sheet), ["brake.missing-cam"]);
        let measured = Brake { cam_arm_mm: Some(70.0), cam_degrees: Some(60.0), ..Brake::default() };
        let sheet =
            brake_answer(&demo_bike(), &BrakeAsk { brake: Some(measured), rod_travel_mm: Some(25.0), ..rear }).unwrap();
        assert_eq!(sheet.drum.as_ref().unwrap().judgement, Judgement::Fine);
        assert!(codes(&sheet).is_empty());
        let drum = &sheet.working.lines[1];
        assert_eq!(drum.label, "Drum force over force at a shoe tip, least, friction 0.3, bedded in");
        assert!((sheet.stopping.lines[0].metres - 54.0).abs() < 1e-9);
    }

    #[test]
    fn a_measured_stop_gives_its_deceleration_or_is_refused() {
        let ask = |metres| BrakeAsk { metres: Some(metres), reaction_seconds: Some(0.0), ..BrakeAsk::default() };
        let sheet = brake_answer(&demo_bike(), &ask(27.777_777_8)).unwrap();
        assert!((sheet.stopping.measured_deceleration.unwrap() - 5.0).abs() < 1e-6);
        assert!((sheet.stopping.measured_percent.unwrap() - 50.986).abs() < 1e-3);
        let short = BrakeAsk { reaction_seconds: Some(2.0), ..ask(20.0) };
        assert!(
            matches!(brake_answer(&demo_bike(), &short), Err(Refused::Conflict { field, .. }) if field == "metres")
        );
    }

    #[test]
    fn bad_input_names_its_field() {
        let field = |ask: BrakeAsk| match brake_answer(&demo_bike(), &ask) {
            Err(
                Refused::OutOfRange { field, .. } | Refused::NotANumber { field, .. } | Refused::Conflict { field, .. },
            ) => field,
            other => panic!("{other:?}"),
        };
        let with = |brake| BrakeAsk { brake: Some(brake), ..BrakeAsk::default() };
        assert_eq!(field(with(Brake { master_mm: Some(0.0), ..Brake::default() })), "masterMm");
        assert_eq!(field(with(Brake { pistons: Some(0), ..Brake::default() })), "pistons");
        assert_eq!(field(with(Brake { piston_mm: Some(79.0), rotor_mm: Some(120.0), ..Brake::default() })), "pistonMm");
        assert_eq!(field(BrakeAsk { lever_newtons: Some(f64::NAN), ..BrakeAsk::default() }), "leverNewtons");
        assert_eq!(field(BrakeAsk { road_speed_kmh: Some(-5.0), ..BrakeAsk::default() }), "roadSpeedKmh");
        assert_eq!(field(BrakeAsk { water_percent: Some(40.0), ..BrakeAsk::default() }), "waterPercent");
    }

    #[test]
    fn a_disc_that_nobody_measured_is_named_and_a_bike_without_standard_still_answers() {
        let mut bike = demo_bike();
        bike.standard.front_brake = Brake::default();
        let sheet = brake_answer(&bike, &BrakeAsk::default()).unwrap();
        assert!(sheet.standard.is_none() && codes(&sheet).contains(&"brake.standard-unknown"));
        bike.fitted.front_brake.master_mm = None;
        let refused = brake_answer(&bike, &BrakeAsk::default()).unwrap_err();
        assert!(matches!(refused, Refused::Missing { field, .. } if field == "masterMm"));
    }

    #[test]
    fn every_line_of_the_working_has_numbers_in_it() {
        let sheet = brake_answer(&demo_bike(), &BrakeAsk { brake: entered(5.0, 0.4), ..BrakeAsk::default() }).unwrap();
        assert!(sheet.working.lines.len() >= 10);
        for line in &sheet.working.lines {
            assert!(line.equation.chars().any(|letter| letter.is_ascii_digit()) && line.value.is_finite(), "{line:?}");
        }
    }
}
