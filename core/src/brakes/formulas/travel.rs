//! Lever travel: what the clearance of the pads and the give of the hose take up.
//!
//! The same volume that leaves the master cylinder arrives at the pistons or stays in the swollen hose.

use super::hydraulic::line_pressure;
use super::hydraulic::piston_area;
use crate::bounds;
use crate::brakes::message::BrakesSource;
use crate::quantity::{Source, Standing, formula, within};

/// Pressure at which the swelling of brake hoses is stated, bar: 1,000 lbf/in².
///
/// Source: FMVSS 106, expansion test at 1,000 and 1,500 psi (from memory).
pub const SWELL_AT_BAR: f64 = 68.947_572_931_68;

/// Volume that closes the running clearance of both pads, mL.
///
/// `V = 2 · c · n · A_p / 1000`
///
/// - `c` running clearance of one pad, mm; `n` pistons on one side; `A_p` area of one, mm²
///
/// In a sliding caliper the pistons of one side travel `2c`; in a fixed one those of both sides travel `c`. It is the same
/// volume. Source: geometry; computed. Range: seals that roll back by `c`, no pad knocked back by a bent disc.
///
/// ```
/// assert!((layshaft_core::brakes::clearance_volume(0.15, 1, 38.1) - 0.342028).abs() < 1e-6);
/// ```
pub fn clearance_volume(clearance_mm: f64, pistons: u32, piston_mm: f64) -> f64 {
    2.0 * clearance_mm * f64::from(pistons) * piston_area(piston_mm) / 1000.0
}

/// Volume that a hose takes up under pressure, mL.
///
/// `V = k · L / 1000 · p / p₀`
///
/// - `k` swelling of a metre at `p₀` = 69 bar (1,000 psi), mL; `L` length, mm; `p` pressure, bar
///
/// Source: statement of swelling after FMVSS 106 (from memory), taken as proportional to pressure. Range: up to about
/// 100 bar; rubber swells less than proportionally at first and more later.
///
/// ```
/// let full = layshaft_core::brakes::hose_volume(1000.0, 1.1, 68.947_572_931_68);
/// assert!((full - 1.1).abs() < 1e-12);
/// ```
pub fn hose_volume(hose_mm: f64, swell_ml_m: f64, pressure_bar: f64) -> f64 {
    swell_ml_m * hose_mm / 1000.0 * pressure_bar / SWELL_AT_BAR
}

/// Travel of the master piston for a volume, mm: `s = 1000 · V / A_mc`, `V` in mL, `A_mc` in mm².
///
/// Source: incompressible fluid; computed. Range: line without air, which this does not forgive.
///
/// ```
/// assert!((layshaft_core::brakes::master_travel(0.342028, 12.7) - 2.7).abs() < 1e-5);
/// ```
pub fn master_travel(volume_ml: f64, master_mm: f64) -> f64 {
    1000.0 * volume_ml / piston_area(master_mm)
}

/// Travel of the lever at the fingers, mm: `x = s · i`, `s` travel of the master piston in mm, `i` lever ratio.
///
/// Source: similar triangles; computed. Range: small angles; free play of the lever comes on top.
///
/// ```
/// assert_eq!(layshaft_core::brakes::lever_travel(2.7, 5.0), 13.5);
/// ```
pub fn lever_travel(master_travel_mm: f64, lever_ratio: f64) -> f64 {
    master_travel_mm * lever_ratio
}

formula! {
    /// Lever travel that pad clearance and hose take up.
    LeverTravel in Brakes, "x = 1000 · i · V / (π · D² / 4), V = 2 · c · n · π · d² / 4000 + k · L / 1000 · p / 68.948, p = 10 · F · i / (π · D² / 4)"
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
        /// Running clearance of a pad, millimetres.
        "c" pad_clearance_mm: f64 = within(&bounds::PAD_CLEARANCE);
        /// Length of the hose, millimetres.
        "L" hose_mm: f64 = within(&bounds::HOSE_LENGTH);
        /// Swelling of one metre of it at 69 bar, millilitres.
        "k" hose_swell_ml_m: f64 = within(&bounds::HOSE_SWELL);
    }
    gives {
        /// Travel of the lever.
        lever_travel "x" Millimetre;
        /// Of that for the pads.
        pad_travel "2 · c · n · d² / D² · i" Millimetre;
        /// Of that for the hose.
        hose_travel "x" Millimetre;
        /// Volume.
        volume "V" Millilitre;
        /// Travel of the master piston for the pads.
        master_travel "2 · c · n · d² / D²" Millimetre;
    }
    from Source::new(BrakesSource::Swelling, Standing::Memory);
    it => {
        let pressure = line_pressure(it.lever_newtons, it.lever_ratio, it.master_mm);
        let pads = clearance_volume(it.pad_clearance_mm, it.pistons, it.piston_mm);
        let hose = hose_volume(it.hose_mm, it.hose_swell_ml_m, pressure);
        let at_lever = |volume| lever_travel(master_travel(volume, it.master_mm), it.lever_ratio);
        let master = master_travel(pads, it.master_mm);
        Ok([at_lever(pads + hose), at_lever(pads), at_lever(hose), pads + hose, master])
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::brakes::formulas::hydraulic::hydraulic_ratio;

    proptest! {
        #[test]
        fn without_hose_the_piston_travels_two_clearances_times_the_ratio(
            master in 9.0..20.0, pistons in 1u32..6, piston in 15.0..45.0, clearance in 0.05..0.5,
        ) {
            let travel = master_travel(clearance_volume(clearance, pistons, piston), master);
            prop_assert!((travel - 2.0 * clearance * hydraulic_ratio(master, pistons, piston)).abs() < 1e-9 * travel);
        }

        #[test]
        fn a_larger_master_cylinder_travels_less(master in 9.0..20.0, more in 1.01..2.0, volume in 0.05..3.0) {
            prop_assert!(master_travel(volume, master * more) < master_travel(volume, master));
        }
    }
}
