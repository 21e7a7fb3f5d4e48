//! The quantities of the brakes that take part in ripple and readiness. What cannot be derived is absent.

use super::compare::{compare, judge_ratio, ratio_source};
use super::findings::{self, FOOT_NEWTONS, HAND_NEWTONS};
use super::line::{BrakeLine, Effort, brake_line, wheel_radius};
use crate::brakes::formulas::hydraulics;
use crate::brakes::formulas::{DIRECTIVE_LINES, lever_force};
use crate::brakes::message::{BrakesFinding, BrakesMessage, BrakesSource};
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{Finding, FindingCode, Judgement, Quantity, Source, Standing, Weight};
use crate::record::{Bike, Brake, BrakeKind, End, Spec, USUAL_LOAD_KG};
use crate::units::Unit;

/// Force at the lever that lines are worked out with; no quantity here depends on it.
const LEVER_NEWTONS: f64 = 100.0;

/// Hydraulic ratio, effort and travel against standard, and the lever force for the type approval stop, for both ends.
pub fn derive_brakes(bike: &Bike, spec: &Spec) -> (Vec<Quantity>, Vec<Finding>) {
    let mut quantities = Vec::new();
    let mut found = Vec::new();
    for (end, standard, brake) in [
        (End::Front, &bike.standard.front_brake, &spec.front_brake),
        (End::Rear, &bike.standard.rear_brake, &spec.rear_brake),
    ] {
        if brake.brake == Some(BrakeKind::Drum) {
            continue;
        }
        match brake_line(brake, &effort(bike, end)) {
            Ok(line) => {
                let made = brake_line(standard, &effort(bike, end)).ok();
                quantities.extend(on_line(end, &line, made.as_ref()));
                quantities.extend(lever_quantity(bike, end, brake, &line));
                found.extend(findings::on_ratio(end, line.hydraulic_ratio));
            }
            // Parts that cannot go together are worth saying; what is not known is not.
            Err(Refused::Conflict { reason, .. }) => {
                found.push(Finding::new(
                    FindingCode::BrakeCannotBe,
                    Weight::Care,
                    BrakesFinding::CannotBe { end, reason },
                ));
            }
            Err(_) => {}
        }
    }
    (quantities, found)
}

fn effort(bike: &Bike, end: End) -> Effort {
    Effort { lever_newtons: LEVER_NEWTONS, wheel_radius_mm: wheel_radius(bike, end), mass_kg: mass_kg(bike) }
}

fn mass_kg(bike: &Bike) -> Option<f64> {
    bike.identity.dry_mass_kg.map(|dry| dry + USUAL_LOAD_KG)
}

/// The end as it stands in an id.
fn end_id(end: End) -> &'static str {
    match end {
        End::Front => "front",
        End::Rear => "rear",
    }
}

fn on_line(end: End, line: &BrakeLine, standard: Option<&BrakeLine>) -> Vec<Quantity> {
    let id_part = end_id(end);
    let mut ratio = open(
        &format!("brake.{id_part}.hydraulic-ratio"),
        BrakesMessage::HydraulicRatio { end },
        line.hydraulic_ratio,
        Unit::None,
        hydraulics(),
    );
    // The common band is one of hand brakes.
    if end == End::Front {
        let (judgement, why) = judge_ratio(line.hydraulic_ratio);
        ratio = Quantity { judgement, why: Some(why), source: ratio_source(), ..ratio };
    }
    let mut quantities = vec![ratio];
    quantities.extend(line.lever_travel_mm.map(|travel| {
        let label = BrakesMessage::PadTravel { end };
        open(&format!("brake.{id_part}.pad-travel"), label, travel, Unit::Millimetre, hydraulics())
    }));
    if let Some(standard) = standard {
        let change = compare(standard, line);
        for (id, label, percent) in [
            ("lever-effort", BrakesMessage::LeverEffort { end }, change.effort_percent),
            ("lever-travel", BrakesMessage::LeverTravel { end }, change.travel_percent),
        ] {
            quantities.push(open(&format!("brake.{id_part}.{id}"), label, percent, Unit::Percent, hydraulics()));
        }
    }
    quantities
}

/// Force at the lever for the deceleration of the type approval stop; only where every measure was entered.
fn lever_quantity(bike: &Bike, end: End, brake: &Brake, line: &BrakeLine) -> Option<Quantity> {
    let [front, rear, ..] = DIRECTIVE_LINES;
    let (law, most) = if end == End::Front { (front, HAND_NEWTONS) } else { (rear, FOOT_NEWTONS) };
    let newtons = lever_force(
        law.printed,
        mass_kg(bike)?,
        wheel_radius(bike, end)?,
        brake.pad_friction?,
        line.effective_radius_mm?,
        line.hydraulic_ratio,
        line.lever_ratio?,
    );
    let judgement = if newtons <= most { Judgement::Fine } else { Judgement::Outside };
    let (deceleration, most) = (Unit::MetreSecondSquared.of(law.printed), Unit::Newton.of(most));
    let load = Unit::Kilogram.of(USUAL_LOAD_KG);
    let source = Source::new(BrakesSource::LeverForce { deceleration, most, load }, Standing::Memory);
    let label = BrakesMessage::LeverForce { end, deceleration };
    let quantity = open(&format!("brake.{}.lever-force", end_id(end)), label, newtons, Unit::Newton, source);
    Some(Quantity { judgement, why: Some(BrakesMessage::ForceAllowed { most }.into()), ..quantity })
}

fn open(id: &str, label: impl Into<Message>, value: f64, unit: Unit, source: Source) -> Quantity {
    Quantity::new(id, label, value, unit, (Judgement::Open, None), source)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brakes::sample::{demo_bike, proposed_disc};

    fn value<'a>(quantities: &'a [Quantity], id: &str) -> &'a Quantity {
        quantities.iter().find(|quantity| quantity.id == id).unwrap_or_else(|| panic!("{id}"))
    }

    #[test]
    fn the_demo_bike_gives_its_front_ratio_and_no_change() {
        let bike = demo_bike();
        let (quantities, findings) = derive_brakes(&bike, &bike.fitted);
        assert_eq!(quantities.len(), 3, "{quantities:#?}");
        assert!((value(&quantities, "brake.front.hydraulic-ratio").value - 9.0).abs() < 1e-9);
        assert_eq!(value(&quantities, "brake.front.lever-effort").value, 0.0);
        assert_eq!(findings, []);
    }

    #[test]
    fn the_second_hand_pair_crosses_the_common_band() {
        let bike = demo_bike();
        let spec = Spec { front_brake: proposed_disc(), ..bike.fitted.clone() };
        let (quantities, findings) = derive_brakes(&bike, &spec);
        let ratio = value(&quantities, "brake.front.hydraulic-ratio");
        assert_eq!(ratio.judgement, Judgement::Outside);
        assert!(value(&quantities, "brake.front.lever-effort").value > 10.0);
        assert!((value(&quantities, "brake.front.lever-travel").value + 17.347).abs() < 1e-3);
        assert_eq!(findings.iter().map(|found| found.code.as_str()).collect::<Vec<_>>(), ["brake.ratio-uncommon"]);
    }

    #[test]
    fn with_every_measure_entered_the_lever_force_is_judged() {
        let mut bike = demo_bike();
        bike.fitted.front_brake.lever_ratio = Some(5.0);
        bike.fitted.front_brake.pad_friction = Some(0.4);
        let (quantities, _) = derive_brakes(&bike, &bike.fitted);
        let force = value(&quantities, "brake.front.lever-force");
        let radius = wheel_radius(&bike, End::Front).unwrap();
        assert!((force.value - 4.4 * 208.0 * radius / (2.0 * 0.4 * 90.95 * 9.0 * 5.0)).abs() < 1e-9);
        assert_eq!(force.judgement, Judgement::Fine);
        bike.identity.dry_mass_kg = None;
        let (quantities, _) = derive_brakes(&bike, &bike.fitted);
        assert!(!quantities.iter().any(|quantity| quantity.id == "brake.front.lever-force"));
    }

    #[test]
    fn nothing_known_gives_nothing_and_impossible_parts_are_said() {
        assert_eq!(derive_brakes(&Bike::default(), &Spec::default()), (Vec::new(), Vec::new()));
        let mut bike = demo_bike();
        bike.fitted.front_brake.rotor_mm = Some(90.0);
        let (_, findings) = derive_brakes(&bike, &bike.fitted);
        assert_eq!(findings.iter().map(|found| found.code.as_str()).collect::<Vec<_>>(), ["brake.cannot-be"]);
    }
}
