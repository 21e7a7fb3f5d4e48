//! The hydraulic disc brake from the fingers to the tyre: pressure, clamp, torque, deceleration.
//!
//! Pascal's law and the balance of moments; the form is that of Limpert, *Brake Design and Safety* (from memory).

use std::f64::consts::PI;

use super::sources::hydraulics;
use crate::bounds;
use crate::brakes::message::{BrakesRefused, BrakesSource};
use crate::error::Refused;
use crate::quantity::{Accepts, Source, Standing, formula, within};

/// Area of one piston, mm².
///
/// `A = π · d² / 4`, `d` diameter in mm. Source: geometry; computed. Range: any round piston.
///
/// ```
/// assert!((layshaft_core::brakes::piston_area(14.0) - 153.938).abs() < 5e-4);
/// ```
pub fn piston_area(diameter_mm: f64) -> f64 {
    PI * diameter_mm * diameter_mm / 4.0
}

/// Pistons that press on one side of the disc, from all that the caliper has.
///
/// A fixed caliper has half of its pistons on each side, and the two sides hold each other: only one side counts. A
/// sliding caliper has them all on one side; its body passes the same force on to the other pad.
///
/// Source: balance of forces on the caliper; computed. Range: a fixed caliper has an even number.
///
/// ```
/// use layshaft_core::brakes::pistons_one_side;
/// assert_eq!(pistons_one_side(4, true), Ok(2));
/// assert_eq!(pistons_one_side(2, false), Ok(2));
/// assert!(pistons_one_side(3, true).is_err());
/// ```
pub fn pistons_one_side(in_all: u32, opposed: bool) -> Result<u32, Refused> {
    if !opposed {
        return Ok(in_all);
    }
    if !in_all.is_multiple_of(2) {
        return Err(Refused::Conflict {
            field: "pistons".to_owned(),
            reason: BrakesRefused::OddPistons { in_all }.into(),
        });
    }
    Ok(in_all / 2)
}

/// Pressure in the line, bar.
///
/// `p = F · i / A_mc · 10` (1 N/mm² is 10 bar)
///
/// - `F` force of the fingers, N; `i` lever ratio, a pure number; `A_mc` area of the master cylinder, mm²
///
/// Source: Pascal; Limpert, *Brake Design and Safety* (from memory). Range: no return spring and no seal friction, which
/// take a few newtons.
///
/// ```
/// assert!((layshaft_core::brakes::line_pressure(100.0, 5.0, 14.0) - 32.4806).abs() < 5e-5);
/// ```
pub fn line_pressure(lever_newtons: f64, lever_ratio: f64, master_mm: f64) -> f64 {
    lever_newtons * lever_ratio / piston_area(master_mm) * 10.0
}

/// Hydraulic ratio: piston area on one side over area of the master cylinder.
///
/// `R = n · d_p² / d_mc²`, diameters in mm, a pure number.
///
/// Source: Pascal; computed. Range: `pistons` counted on one side (twin discs: one side of each).
///
/// ```
/// assert!((layshaft_core::brakes::hydraulic_ratio(14.0, 2, 30.0) - 9.18367).abs() < 5e-6);
/// ```
pub fn hydraulic_ratio(master_mm: f64, pistons: u32, piston_mm: f64) -> f64 {
    f64::from(pistons) * piston_mm * piston_mm / (master_mm * master_mm)
}

/// Clamp, N: the force with which each pad is pressed on.
///
/// `N = p · A_cal / 10`, `p` in bar, `A_cal` piston area on one side, mm².
///
/// Source: Pascal; Limpert (from memory). Range: both pads are pressed with the same force, by opposite pistons or by the
/// body of a sliding caliper.
///
/// ```
/// use layshaft_core::brakes::{clamp_force, line_pressure};
/// let clamp = clamp_force(line_pressure(100.0, 5.0, 14.0), 2, 30.0);
/// assert!((clamp - 4591.84).abs() < 5e-3);
/// ```
pub fn clamp_force(pressure_bar: f64, pistons: u32, piston_mm: f64) -> f64 {
    pressure_bar / 10.0 * f64::from(pistons) * piston_area(piston_mm)
}

/// Brake torque at the wheel, N m.
///
/// `T = 2 · μ · N · r_eff / 1000`
///
/// - two pad faces; `μ` friction of the pads, a pure number; `N` clamp, N; `r_eff` effective radius, mm
///
/// Source: Limpert, *Brake Design and Safety* (from memory). Range: pads bedded in, disc flat.
///
/// ```
/// assert!((layshaft_core::brakes::brake_torque(4591.837, 0.4, 120.0) - 440.816).abs() < 5e-4);
/// ```
pub fn brake_torque(clamp_newtons: f64, pad_friction: f64, effective_radius_mm: f64) -> f64 {
    2.0 * pad_friction * clamp_newtons * effective_radius_mm / 1000.0
}

/// Force between tyre and road, N: `F = T / r · 1000`, `T` in N m, `r` radius of the wheel in mm.
///
/// Source: balance of moments at the wheel; computed. Range: the tyre does not slide.
///
/// ```
/// assert!((layshaft_core::brakes::tyre_force(440.8163, 310.0) - 1421.99).abs() < 5e-3);
/// ```
pub fn tyre_force(torque_nm: f64, wheel_radius_mm: f64) -> f64 {
    torque_nm / wheel_radius_mm * 1000.0
}

/// Deceleration, m/s²: `a = F / m`, `F` force at the tyre in N, `m` machine and rider in kg.
///
/// Source: Newton; computed. Range: this brake alone, level road; no more than the grip of the road allows (`μ_road · g`)
/// and no more than the machine takes before its rear wheel lifts.
///
/// ```
/// assert!((layshaft_core::brakes::deceleration(1421.99, 250.0) - 5.688).abs() < 5e-4);
/// ```
pub fn deceleration(tyre_newtons: f64, mass_kg: f64) -> f64 {
    tyre_newtons / mass_kg
}

/// Force at the lever for a deceleration, N: the whole chain from [`line_pressure`] to [`deceleration`] turned round.
///
/// `F = a · m · r / (2 · μ · r_eff · R · i)`, symbols and units as there (both radii in mm).
///
/// Source: computed. Range: as there; friction, ratios and radius above zero.
///
/// ```
/// use layshaft_core::brakes::{hydraulic_ratio, lever_force};
/// let force = lever_force(5.687955, 250.0, 310.0, 0.4, 120.0, hydraulic_ratio(14.0, 2, 30.0), 5.0);
/// assert!((force - 100.0).abs() < 1e-3);
/// ```
pub fn lever_force(
    deceleration: f64,
    mass_kg: f64,
    wheel_radius_mm: f64,
    pad_friction: f64,
    effective_radius_mm: f64,
    hydraulic_ratio: f64,
    lever_ratio: f64,
) -> f64 {
    deceleration * mass_kg * wheel_radius_mm
        / (2.0 * pad_friction * effective_radius_mm * hydraulic_ratio * lever_ratio)
}

formula! {
    /// A hydraulic disc brake from the fingers to the road.
    HydraulicBrake in Brakes, "a = 2 · μ · N · r_e / (r · m), N = F · i · n · d² / D²"
    takes {
        /// Force at the lever, newtons.
        "F" lever_newtons: f64 = within(&bounds::LEVER_FORCE);
        /// Lever ratio.
        "i" lever_ratio: f64 = within(&bounds::LEVER_RATIO);
        /// Bore of the master cylinder, millimetres.
        "D" master_mm: f64 = within(&bounds::BORE);
        /// Pistons that press on one side.
        "n" pistons: u32 = within(&bounds::PISTONS);
        /// Diameter of one piston, millimetres.
        "d" piston_mm: f64 = within(&bounds::BORE);
        /// Friction of the pads.
        "μ" pad_friction: f64 = within(&bounds::PAD_FRICTION);
        /// Effective radius, millimetres.
        "r_e" effective_radius_mm: f64 = within(&bounds::EFFECTIVE_RADIUS);
        /// Radius of the wheel, millimetres.
        "r" wheel_radius_mm: f64 = within(&bounds::WHEEL_RADIUS);
        /// Machine and rider, kilograms.
        "m" mass_kg: f64 = within(&bounds::RIDING_MASS);
    }
    gives {
        /// Deceleration.
        deceleration "a" MetreSecondSquared;
        /// Pressure in the line.
        pressure "10 · F · i / (π · D² / 4)" Bar;
        /// Hydraulic ratio.
        hydraulic_ratio "n · d² / D²" None;
        /// Clamp on each pad.
        clamp "N" Newton;
        /// Brake torque.
        torque "2 · μ · N · r_e / 1000" NewtonMetre;
        /// Force at the tyre.
        tyre_force "a · m" Newton;
    }
    from hydraulics();
    it => {
        let pressure = line_pressure(it.lever_newtons, it.lever_ratio, it.master_mm);
        let clamp = clamp_force(pressure, it.pistons, it.piston_mm);
        let torque = brake_torque(clamp, it.pad_friction, it.effective_radius_mm);
        let force = tyre_force(torque, it.wheel_radius_mm);
        let ratio = hydraulic_ratio(it.master_mm, it.pistons, it.piston_mm);
        Ok([deceleration(force, it.mass_kg), pressure, ratio, clamp, torque, force])
    }
}

formula! {
    /// Pistons of a caliper that press on one side.
    CaliperPistons in Brakes, "n = N / 2 where they face each other, else N"
    takes {
        /// Pistons in all.
        "N" pistons: u32 = within(&bounds::PISTONS);
        /// They face each other in a fixed caliper.
        "opposed" opposed: bool = Accepts::YesOrNo;
    }
    gives {
        /// Pistons on one side.
        one_side "n" None;
    }
    from Source::new(BrakesSource::Caliper, Standing::Computed);
    it => pistons_one_side(it.pistons, it.opposed).map(|one_side| [f64::from(one_side)])
}

formula! {
    /// Another pair of master cylinder and caliper against the one there is; same lever, same radius, same pads.
    BrakePair in Brakes, "Δ = (R₁ / R₂ − 1) · 100, R₁ = n₁ · d₁² / D₁², R₂ = n₂ · d₂² / D₂²"
    takes {
        /// Bore of the master cylinder, millimetres.
        "D₁" master_mm: f64 = within(&bounds::BORE);
        /// Pistons on one side.
        "n₁" pistons: u32 = within(&bounds::PISTONS);
        /// Diameter of one piston, millimetres.
        "d₁" piston_mm: f64 = within(&bounds::BORE);
        /// Bore of the other master cylinder, millimetres.
        "D₂" new_master_mm: f64 = within(&bounds::BORE);
        /// Pistons of the other caliper on one side.
        "n₂" new_pistons: u32 = within(&bounds::PISTONS);
        /// Diameter of one of them, millimetres.
        "d₂" new_piston_mm: f64 = within(&bounds::BORE);
    }
    gives {
        /// Force at the lever.
        effort "Δ" Percent;
        /// Travel of the lever.
        travel "(R₂ / R₁ − 1) · 100" Percent;
        /// Hydraulic ratio.
        hydraulic_ratio "R₁" None;
        /// Hydraulic ratio after.
        new_hydraulic_ratio "R₂" None;
    }
    from hydraulics();
    it => {
        let before = hydraulic_ratio(it.master_mm, it.pistons, it.piston_mm);
        let after = hydraulic_ratio(it.new_master_mm, it.new_pistons, it.new_piston_mm);
        Ok([(before / after - 1.0) * 100.0, (after / before - 1.0) * 100.0, before, after])
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// Deceleration of a whole brake.
    fn whole(newtons: f64, lever: f64, master: f64, pistons: u32, piston: f64, friction: f64, radius: f64) -> f64 {
        let clamp = clamp_force(line_pressure(newtons, lever, master), pistons, piston);
        deceleration(tyre_force(brake_torque(clamp, friction, radius), 310.0), 250.0)
    }

    proptest! {
        #[test]
        fn more_of_anything_that_brakes_brakes_more(
            newtons in 10.0..400.0, lever in 2.0..8.0, master in 9.0..20.0, pistons in 1u32..6, piston in 15.0..45.0,
            friction in 0.2..0.6, radius in 60.0..160.0, more in 1.01..2.0,
        ) {
            let once = whole(newtons, lever, master, pistons, piston, friction, radius);
            prop_assert!(whole(newtons * more, lever, master, pistons, piston, friction, radius) > once);
            prop_assert!(whole(newtons, lever * more, master, pistons, piston, friction, radius) > once);
            prop_assert!(whole(newtons, lever, master * more, pistons, piston, friction, radius) < once);
            prop_assert!(whole(newtons, lever, master, pistons + 1, piston, friction, radius) > once);
            prop_assert!(whole(newtons, lever, master, pistons, piston * more, friction, radius) > once);
            prop_assert!(whole(newtons, lever, master, pistons, piston, friction * more, radius) > once);
            prop_assert!(whole(newtons, lever, master, pistons, piston, friction, radius * more) > once);
        }

        #[test]
        fn the_lever_force_turns_the_deceleration_round(
            newtons in 10.0..400.0, lever in 2.0..8.0, master in 9.0..20.0, pistons in 1u32..6, piston in 15.0..45.0,
        ) {
            let slows = whole(newtons, lever, master, pistons, piston, 0.4, 100.0);
            let ratio = hydraulic_ratio(master, pistons, piston);
            let back = lever_force(slows, 250.0, 310.0, 0.4, 100.0, ratio, lever);
            prop_assert!((back - newtons).abs() < 1e-9 * newtons);
        }

        #[test]
        fn an_opposed_caliper_clamps_as_a_sliding_one_with_the_pistons_of_one_side(half in 1u32..4, piston in 15.0..40.0) {
            let one_side = pistons_one_side(2 * half, true).unwrap();
            prop_assert_eq!(clamp_force(30.0, one_side, piston), clamp_force(30.0, half, piston));
        }
    }
}
