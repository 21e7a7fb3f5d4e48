//! Charging a battery from a sine through diodes: only the top of the wave, above the battery, gives any current.

use crate::bounds;
use crate::quantity::{FormulaSource, Source, Standing, formula, within};
use std::f64::consts::PI;

/// Mean current into a battery behind one diode, amperes; a bridge gives twice as much.
///
/// With `v = V_p sin x` behind a resistance R, current flows while v is above the battery (with the drop of the diode) V_b, from
/// `a = arcsin(V_b / V_p)` to `π − a`. The mean over a turn is
/// `1/(2πR) ∫ₐ^(π−a) (V_p sin x − V_b) dx = (2 V_p cos a − V_b (π − 2a)) / (2πR)`, with `V_p cos a = √(V_p² − V_b²)`. Nothing where
/// the peak stays below the battery. Range: a coil whose resistance counts for more than its reactance, as at low engine
/// speed; at high speed the reactance holds the current lower.
///
/// ```
/// use layshaft_core::electrical::diode_charge;
/// assert!((diode_charge(12.0, 7.4, 1.5) - 0.5815).abs() < 1e-4);
/// assert_eq!(diode_charge(7.0, 7.4, 1.5), 0.0);
/// ```
pub fn diode_charge(peak_volts: f64, battery_volts: f64, ohms: f64) -> f64 {
    if peak_volts <= battery_volts {
        return 0.0;
    }
    let begins = (battery_volts / peak_volts).asin();
    (2.0 * peak_volts * begins.cos() - battery_volts * (PI - 2.0 * begins)) / (2.0 * PI * ohms)
}

formula! {
    /// Mean current into a battery from a sine through diodes.
    DiodeCharge in Electrics, "I = (2 · √(V_p^2 − V_b^2) − V_b · (π − 2 · arcsin(V_b / V_p))) / (2 · π · R)"
    takes {
        /// Peak of the sine, volts.
        "V_p" peak_volts: f64 = within(&bounds::PEAK_VOLTS);
        /// Voltage of the battery and drop of the diodes together, volts.
        "V_b" volts: f64 = within(&bounds::CIRCUIT_VOLTS);
        /// Resistance of coil and wires, ohms.
        "R" ohms: f64 = within(&bounds::CIRCUIT_OHMS);
    }
    gives {
        /// Behind one diode.
        half_wave "I" Ampere;
        /// Behind a bridge.
        full_wave "2 · I" Ampere;
    }
    from Source::new(FormulaSource::MeanOverTime, Standing::Computed);
    it => {
        let half = diode_charge(it.peak_volts, it.volts, it.ohms);
        Ok([half, 2.0 * half])
    }
}

#[cfg(test)]
mod tests {
    use super::super::rectified_wave;
    use super::*;

    #[test]
    fn without_a_battery_to_climb_over_it_is_the_mean_of_the_half_wave() {
        let [half_mean, ..] = rectified_wave(10.0);
        assert!((diode_charge(10.0, 1e-12, 2.0) - half_mean / 2.0).abs() < 1e-9);
    }

    #[test]
    fn the_integral_summed_in_small_steps_gives_the_same() {
        let steps = 200_000;
        let sample = |step: i32| 12.0 * (2.0 * PI * (f64::from(step) + 0.5) / f64::from(steps)).sin();
        let summed = (0..steps).map(|step| (sample(step) - 7.4).max(0.0) / 1.5).sum::<f64>() / f64::from(steps);
        assert!((diode_charge(12.0, 7.4, 1.5) - summed).abs() < 1e-6, "{summed}");
    }
}
