//! Mean and effective value of a sine that one diode, or a bridge of four, has rectified.

use crate::bounds;
use crate::quantity::{FormulaSource, Source, Standing, formula, within};
use std::f64::consts::PI;

/// Share of a coil's watts that one diode lets through: it blocks every other half of the wave.
pub const HALF_OF_THE_WAVE: f64 = 0.5;

/// Mean and effective value of a rectified sine of a peak: half-wave, then full-wave, in the unit of the peak.
///
/// With `v = V_p sin x`, one diode lets `0 < x < π` through. The mean over a whole turn is
/// `1/2π ∫₀^π V_p sin x dx = V_p / π`, the effective value `√(1/2π ∫₀^π V_p² sin² x dx) = V_p / 2`. A bridge turns the other
/// half over: twice the mean, `2 V_p / π`, and the effective value of the sine itself, `V_p / √2`. So one diode gives half of
/// the mean, half of the charge and half of the power. Range: ideal diodes; a silicon one keeps about 0.7 V for itself, a
/// bridge twice that.
///
/// ```
/// use layshaft_core::electrical::rectified_wave;
/// let [half_mean, half_effective, full_mean, full_effective] = rectified_wave(10.0);
/// assert!((half_mean - 3.1831).abs() < 1e-4 && (half_effective - 5.0).abs() < 1e-12);
/// assert!((full_mean - 6.3662).abs() < 1e-4 && (full_effective - 7.0711).abs() < 1e-4);
/// ```
pub fn rectified_wave(peak: f64) -> [f64; 4] {
    [peak / PI, peak * HALF_OF_THE_WAVE, 2.0 * peak / PI, peak / 2.0_f64.sqrt()]
}

formula! {
    /// Mean and effective voltage of a rectified sine.
    RectifiedWave in Electrics, "V = V_p / π"
    takes {
        /// Peak of the sine, volts.
        "V_p" peak_volts: f64 = within(&bounds::PEAK_VOLTS);
    }
    gives {
        /// Mean behind one diode.
        half_mean "V" Volt;
        /// Effective value behind one diode.
        half_effective "V_p / 2" Volt;
        /// Mean behind a bridge.
        full_mean "2 · V_p / π" Volt;
        /// Effective value behind a bridge, and of the sine itself.
        full_effective "V_p / √2" Volt;
    }
    from Source::new(FormulaSource::MeanOverTime, Standing::Computed);
    it => Ok(rectified_wave(it.peak_volts))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_integrals_summed_in_small_steps_give_the_same() {
        let steps = 20_000;
        let sample = |step: i32| 8.4 * (2.0 * PI * (f64::from(step) + 0.5) / f64::from(steps)).sin();
        let mean = |of: &dyn Fn(f64) -> f64| (0..steps).map(|step| of(sample(step))).sum::<f64>() / f64::from(steps);
        let summed =
            [mean(&|v| v.max(0.0)), mean(&|v| v.max(0.0).powi(2)).sqrt(), mean(&|v| v.abs()), mean(&|v| v * v).sqrt()];
        for (closed, summed) in rectified_wave(8.4).into_iter().zip(summed) {
            assert!((closed - summed).abs() < 1e-6, "{closed} against {summed}");
        }
    }
}
