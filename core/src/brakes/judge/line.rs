//! What one hydraulic brake of the bike gives, from the fingers to the road. What cannot be worked out is left out.

use layshaft_wire::wire;

use crate::brakes::formulas::{
    brake_torque, clamp_force, clearance_volume, deceleration, hose_volume, hydraulic_ratio, lever_travel,
    line_pressure, master_travel, piston_area, tyre_force,
};
use crate::brakes::message::{BrakesMessage, BrakesRefused};
use crate::error::Refused;
use crate::message::Message;
use crate::record::{Bike, Brake, BrakeKind, End};
use crate::tyres::rolling_pair;
use crate::units::Unit;

/// Friction of usual pads, cold and glazed to warm and bedded in. Common practice, no source.
pub const USUAL_PAD_FRICTION: (f64, f64) = (0.3, 0.5);
/// Running clearance of a pad that the seal rolls back, mm. Common practice, no source.
pub const USUAL_CLEARANCE_MM: f64 = 0.15;
/// Share of the disc's diameter that one piston can take at the most: beyond it the pad would reach the hub.
const WIDEST_PISTON: f64 = 0.4;

/// What drives a brake on the page: the fingers, the wheel, the mass.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Effort {
    /// Force at the lever, N.
    pub lever_newtons: f64,
    /// Radius of the wheel, mm.
    pub wheel_radius_mm: Option<f64>,
    /// Machine and rider, kg.
    pub mass_kg: Option<f64>,
}

/// A hydraulic brake at work. Pairs named least and most are the range of the friction of pads that is not known; they are
/// the same where it was entered.
#[wire]
pub struct BrakeLine {
    /// Bore of the master cylinder, mm.
    pub master_mm: f64,
    /// Pistons that press on one side of the disc.
    pub pistons: u32,
    /// Diameter of one piston, mm.
    pub piston_mm: f64,
    /// How the pistons are counted, in words.
    pub counted: Message,
    /// Area of the master cylinder, mm².
    pub master_area_mm2: f64,
    /// Area of the pistons on one side, mm².
    pub piston_area_mm2: f64,
    /// Piston area over master area.
    pub hydraulic_ratio: f64,
    /// Force at the lever, N.
    pub lever_newtons: f64,
    /// Lever ratio, where it is known.
    pub lever_ratio: Option<f64>,
    /// Pressure in the line, bar.
    pub pressure_bar: Option<f64>,
    /// Clamp on each pad, N.
    pub clamp_newtons: Option<f64>,
    /// Effective radius, mm.
    pub effective_radius_mm: Option<f64>,
    /// The effective radius was entered; else it is reckoned from disc and piston.
    pub radius_entered: bool,
    /// Least friction of the pads.
    pub friction_least: f64,
    /// Greatest friction of the pads.
    pub friction_most: f64,
    /// Least brake torque, N m.
    pub torque_least_nm: Option<f64>,
    /// Greatest brake torque, N m.
    pub torque_most_nm: Option<f64>,
    /// Least deceleration by this brake alone, m/s².
    pub deceleration_least: Option<f64>,
    /// Greatest deceleration by this brake alone, m/s²; the grip of the road is not looked at.
    pub deceleration_most: Option<f64>,
    /// Running clearance of a pad, mm.
    pub pad_clearance_mm: f64,
    /// Travel of the master piston until the pads touch, mm.
    pub master_travel_mm: f64,
    /// Travel of the lever until the pads touch, mm.
    pub lever_travel_mm: Option<f64>,
    /// Further travel of the lever into the give of the hose, mm; none where the hose is not known.
    pub hose_travel_mm: Option<f64>,
}

/// Works one hydraulic brake out. Master cylinder, number and size of pistons are needed; the rest gives what it can.
pub fn brake_line(brake: &Brake, effort: &Effort) -> Result<BrakeLine, Refused> {
    let brake = brake.clone().checked()?;
    if brake.brake == Some(BrakeKind::Drum) {
        return Err(Refused::Conflict { field: "brake".to_owned(), reason: BrakesRefused::DrumHasNoLine.into() });
    }
    let master_mm = need("masterMm", BrakesRefused::LabelMaster, brake.master_mm)?;
    let pistons = need("pistons", BrakesRefused::LabelPistons, brake.pistons)?;
    let piston_mm = need("pistonMm", BrakesRefused::LabelPiston, brake.piston_mm)?;
    no_wider_than_the_disc(brake.rotor_mm, piston_mm)?;

    let (least, most) = brake.pad_friction.map_or(USUAL_PAD_FRICTION, |known| (known, known));
    let pressure_bar = brake.lever_ratio.map(|lever| line_pressure(effort.lever_newtons, lever, master_mm));
    let clamp_newtons = pressure_bar.map(|bar| clamp_force(bar, pistons, piston_mm));
    let effective_radius_mm = effective_radius(&brake, piston_mm);
    let torque = |friction| Some(brake_torque(clamp_newtons?, friction, effective_radius_mm?));
    let slows = |friction| Some(deceleration(tyre_force(torque(friction)?, effort.wheel_radius_mm?), effort.mass_kg?));
    let clearance = brake.pad_clearance_mm.unwrap_or(USUAL_CLEARANCE_MM);
    let master_travel_mm = master_travel(clearance_volume(clearance, pistons, piston_mm), master_mm);
    let hose_travel = || {
        let volume = hose_volume(brake.hose_mm?, brake.hose_swell_ml_m?, pressure_bar?);
        Some(lever_travel(master_travel(volume, master_mm), brake.lever_ratio?))
    };

    Ok(BrakeLine {
        master_mm,
        pistons,
        piston_mm,
        counted: counted(pistons, brake.opposed).into(),
        master_area_mm2: piston_area(master_mm),
        piston_area_mm2: f64::from(pistons) * piston_area(piston_mm),
        hydraulic_ratio: hydraulic_ratio(master_mm, pistons, piston_mm),
        lever_newtons: effort.lever_newtons,
        lever_ratio: brake.lever_ratio,
        pressure_bar,
        clamp_newtons,
        effective_radius_mm,
        radius_entered: brake.effective_radius_mm.is_some(),
        friction_least: least,
        friction_most: most,
        torque_least_nm: torque(least),
        torque_most_nm: torque(most),
        deceleration_least: slows(least),
        deceleration_most: slows(most),
        pad_clearance_mm: clearance,
        master_travel_mm,
        lever_travel_mm: brake.lever_ratio.map(|lever| lever_travel(master_travel_mm, lever)),
        hose_travel_mm: hose_travel(),
    })
}

/// Effective radius, mm: entered, else reckoned as if the piston ran flush with the edge of the disc.
///
/// `r_eff = (D − d) / 2`. Common practice, no source; a pad that stands further in acts at less.
pub(crate) fn effective_radius(brake: &Brake, piston_mm: f64) -> Option<f64> {
    brake.effective_radius_mm.or_else(|| brake.rotor_mm.map(|disc| (disc - piston_mm) / 2.0))
}

fn no_wider_than_the_disc(disc_mm: Option<f64>, piston_mm: f64) -> Result<(), Refused> {
    match disc_mm {
        Some(disc) if piston_mm > WIDEST_PISTON * disc => Err(Refused::Conflict {
            field: "pistonMm".to_owned(),
            reason: BrakesRefused::PistonTooWide {
                piston: Unit::Millimetre.of(piston_mm),
                disc: Unit::Millimetre.of(disc),
            }
            .into(),
        }),
        _ => Ok(()),
    }
}

fn counted(pistons: u32, opposed: Option<bool>) -> BrakesMessage {
    match opposed {
        Some(true) => BrakesMessage::CountedOpposed { pistons, in_all: 2 * pistons },
        Some(false) => BrakesMessage::CountedSliding { pistons },
        None => BrakesMessage::Counted { pistons },
    }
}

fn need<T>(field: &str, label: BrakesRefused, value: Option<T>) -> Result<T, Refused> {
    value.ok_or_else(|| Refused::Missing {
        field: field.to_owned(),
        label: label.into(),
        help: BrakesRefused::EnterOnBike.into(),
    })
}

/// Radius of the wheel, mm, from its circumference; none where the tyre is not known.
pub(crate) fn wheel_radius(bike: &Bike, end: End) -> Option<f64> {
    let (standard, fitted) = match end {
        End::Front => (&bike.standard.front_wheel, &bike.fitted.front_wheel),
        End::Rear => (&bike.standard.rear_wheel, &bike.fitted.rear_wheel),
    };
    rolling_pair(standard, fitted).1.ok().map(|rolling| rolling.circumference_mm / std::f64::consts::TAU)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn brake() -> Brake {
        Brake {
            brake: Some(BrakeKind::Disc),
            master_mm: Some(14.0),
            lever_ratio: Some(5.0),
            pistons: Some(2),
            piston_mm: Some(30.0),
            opposed: Some(true),
            pad_friction: Some(0.4),
            effective_radius_mm: Some(120.0),
            ..Brake::default()
        }
    }

    const EFFORT: Effort = Effort { lever_newtons: 100.0, wheel_radius_mm: Some(310.0), mass_kg: Some(250.0) };

    #[test]
    fn the_chain_of_check_values_holds() {
        let line = brake_line(&brake(), &EFFORT).unwrap();
        for (got, wanted, within) in [
            (line.master_area_mm2, 153.938, 5e-4),
            (line.pressure_bar.unwrap(), 32.4806, 5e-5),
            (line.piston_area_mm2, 1413.717, 5e-4),
            (line.hydraulic_ratio, 9.18367, 5e-6),
            (line.clamp_newtons.unwrap(), 4591.84, 5e-3),
            (line.torque_least_nm.unwrap(), 440.816, 5e-4),
            (line.deceleration_most.unwrap(), 5.688, 5e-4),
        ] {
            assert!((got - wanted).abs() <= within, "{got} {wanted}");
        }
        assert!(line.counted.english().contains("4 in all"));
    }

    #[test]
    fn what_is_not_known_is_left_out_and_friction_becomes_a_range() {
        let line = brake_line(&Brake { pad_friction: None, ..brake() }, &EFFORT).unwrap();
        assert!(line.deceleration_least.unwrap() < 5.688 && line.deceleration_most.unwrap() > 5.688);
        let line = brake_line(&Brake { lever_ratio: None, ..brake() }, &EFFORT).unwrap();
        assert!(line.pressure_bar.is_none() && line.torque_most_nm.is_none() && line.lever_travel_mm.is_none());
        let line = brake_line(&brake(), &Effort { mass_kg: None, ..EFFORT }).unwrap();
        assert!(line.deceleration_most.is_none() && line.torque_most_nm.is_some());
    }

    #[test]
    fn what_it_cannot_do_without_is_named() {
        for (brake, field) in [
            (Brake { master_mm: None, ..brake() }, "masterMm"),
            (Brake { pistons: None, ..brake() }, "pistons"),
            (Brake { piston_mm: None, ..brake() }, "pistonMm"),
        ] {
            assert!(
                matches!(brake_line(&brake, &EFFORT), Err(Refused::Missing { field: named, .. }) if named == field)
            );
        }
    }

    #[test]
    fn a_piston_that_reaches_the_hub_and_a_drum_are_refused() {
        let wide = Brake { rotor_mm: Some(150.0), piston_mm: Some(70.0), ..brake() };
        assert!(matches!(brake_line(&wide, &EFFORT), Err(Refused::Conflict { field, .. }) if field == "pistonMm"));
        let drum = Brake { brake: Some(BrakeKind::Drum), ..brake() };
        assert!(matches!(brake_line(&drum, &EFFORT), Err(Refused::Conflict { field, .. }) if field == "brake"));
    }

    #[test]
    fn a_hose_that_swells_takes_lever_travel() {
        let stiff = brake_line(&brake(), &EFFORT).unwrap();
        let soft = Brake { hose_mm: Some(900.0), hose_swell_ml_m: Some(2.0), ..brake() };
        let soft = brake_line(&soft, &EFFORT).unwrap();
        assert_eq!(stiff.hose_travel_mm, None);
        assert!((soft.hose_travel_mm.unwrap() - 1.8 * 32.4806 / 68.94757 * 1000.0 / 153.938 * 5.0).abs() < 1e-3);
    }
}
