//! The current through each kind of element as a function of its voltage.
//!
//! Every law here rises with the voltage. A network of such elements is the lowest point of a convex function (its
//! co-content), so it has exactly one operating point and damped Newton steps find it from anywhere.

use layshaft_wire::wire;

use crate::electrical::coil_current;

/// Ratio ε of the smoothed lamp law: cold resistance is ε^0.45 = 1/12 of the hot one.
const COLD: f64 = 0.004;
/// Volts over which an LED driver or a regulator rounds its corners.
const CORNER: f64 = 0.1;
/// Largest exponent that is followed; a junction never gets there, its series resistance holds the current.
const STEEPEST: f64 = 300.0;

/// Current through an element, amperes, as a function of the voltage across it, volts.
#[wire]
pub enum Law {
    /// A resistance: `I = V / R`.
    Resistance {
        /// R, ohms.
        ohms: f64,
    },
    /// A source behind its resistance: `I = (V - E) / R`; negative when it gives current.
    Emf {
        /// E, volts.
        volts: f64,
        /// R, ohms.
        ohms: f64,
    },
    /// A filament: `I = I0 (V/V0) ((V/V0)^2 + ε²)^-0.225`, which is the handbook's V^0.55 with a finite cold resistance.
    Filament {
        /// I0, amperes.
        amperes: f64,
        /// V0, volts.
        volts: f64,
    },
    /// A junction with a resistance in series: `V = U ln(1 + I/Is) + I R`.
    Junction {
        /// Is, amperes.
        saturation_amperes: f64,
        /// U = emission coefficient times thermal voltage, volts.
        slope_volts: f64,
        /// R, ohms; above zero.
        ohms: f64,
    },
    /// A current that rises from nothing at `start` to its full value at `full` and stays there:
    /// `I = I0 (s(V - start) - s(V - full) - the same at 0 V) / (full - start)`, `s(x) = w ln(1 + e^(x/w))`, w = 0.1 V.
    Driver {
        /// Full current, amperes.
        amperes: f64,
        /// Start, volts.
        start_volts: f64,
        /// Full, volts.
        full_volts: f64,
    },
    /// A coil of alternating current behind its impedance, effective values: `I = (R V - √((R² + X²) E² - X² V²)) / (R² + X²)` from
    /// 0 V to E; beyond both ends it goes on straight, so that it rises everywhere.
    Coil {
        /// E, volts.
        volts: f64,
        /// R, ohms; above zero.
        ohms: f64,
        /// X, ohms.
        reactance_ohms: f64,
    },
    /// A shunt regulator: nothing below its voltage, above it `I = (V - V0) / R`, with a rounded corner of some tenths of a volt.
    Shunt {
        /// V0, volts.
        volts: f64,
        /// R, ohms.
        ohms: f64,
    },
    /// A regulated source: gives its current below the regulated voltage and nothing above, in a rounded step of some tenths
    /// of a volt: `I = -I0 (1 - tanh((V - V0)/w)) / 2`, w = 0.1 V.
    Regulated {
        /// Current, amperes.
        amperes: f64,
        /// Regulated voltage, volts.
        volts: f64,
    },
}

impl Law {
    /// Current, amperes, and its rise, siemens, at a voltage.
    ///
    /// ```
    /// use layshaft_core::harness::Law;
    /// // A 25 W lamp of 13.5 V draws 1.736 A at 12 V, and cold it is a twelfth of its hot resistance.
    /// let lamp = Law::Filament { amperes: 25.0 / 13.5, volts: 13.5 };
    /// assert!((lamp.current(12.0).0 - 1.7357).abs() < 0.0001);
    /// assert!((lamp.current(0.0).1 * 7.29 - 12.0).abs() < 0.02);
    /// ```
    pub fn current(&self, volts: f64) -> (f64, f64) {
        match *self {
            Law::Resistance { ohms } => (volts / ohms, 1.0 / ohms),
            Law::Emf { volts: emf, ohms } => ((volts - emf) / ohms, 1.0 / ohms),
            Law::Filament { amperes, volts: rated } => {
                let x = volts / rated;
                let smooth = x * x + COLD * COLD;
                let factor = smooth.powf(-0.225);
                (amperes * x * factor, amperes / rated * factor * (1.0 - 0.45 * x * x / smooth))
            }
            Law::Junction { saturation_amperes, slope_volts, ohms } => {
                junction(volts, saturation_amperes, slope_volts, ohms)
            }
            Law::Driver { amperes, start_volts, full_volts } => {
                let span = full_volts - start_volts;
                let rise = |at: f64| ramp(at - start_volts).0 - ramp(at - full_volts).0;
                let slope = ramp(volts - start_volts).1 - ramp(volts - full_volts).1;
                (amperes * (rise(volts) - rise(0.0)) / span, amperes * slope / span)
            }
            Law::Coil { volts: emf, ohms, reactance_ohms } => coil(volts, emf, ohms, reactance_ohms),
            Law::Shunt { volts: held, ohms } => {
                ((ramp(volts - held).0 - ramp(-held).0) / ohms, ramp(volts - held).1 / ohms)
            }
            Law::Regulated { amperes, volts: regulated } => {
                // (1 - tanh(x/w)) / 2 written so that its tail keeps its digits.
                let share = sigmoid(2.0 * (regulated - volts) / CORNER);
                (-amperes * share, amperes * 2.0 / CORNER * share * (1.0 - share))
            }
        }
    }
}

fn sigmoid(x: f64) -> f64 {
    if x >= 0.0 { 1.0 / (1.0 + (-x).exp()) } else { x.exp() / (1.0 + x.exp()) }
}

/// `w ln(1 + e^(x/w))` and its slope: nothing on the left, x on the right, a rounded corner between.
fn ramp(x: f64) -> (f64, f64) {
    (x.max(0.0) + CORNER * (-x.abs() / CORNER).exp().ln_1p(), sigmoid(x / CORNER))
}

/// Current and slope of a coil, counted as taken.
///
/// Between its ends at 0 V and at E its slope is `(R + X² V / √(..)) / (R² + X²)`: `R / (R² + X²)` at 0 V and `1 / R` at E, with
/// which the straight parts go on.
fn coil(volts: f64, emf: f64, ohms: f64, reactance: f64) -> (f64, f64) {
    let square = ohms * ohms + reactance * reactance;
    if volts <= 0.0 {
        let slope = ohms / square;
        return (volts * slope - coil_current(emf, reactance, ohms, 0.0), slope);
    }
    if volts >= emf {
        return ((volts - emf) / ohms, 1.0 / ohms);
    }
    let root = (square * emf * emf - (reactance * volts).powi(2)).sqrt();
    (-coil_current(emf, reactance, ohms, volts), (ohms + reactance * reactance * volts / root) / square)
}

/// Current and slope of a junction with its series resistance.
///
/// Solves `U y + R Is (e^y - 1) = V` for y by Newton steps from the right, where the function is convex and the steps cannot
/// overshoot; then `I = Is (e^y - 1)`.
fn junction(volts: f64, saturation: f64, slope: f64, ohms: f64) -> (f64, f64) {
    if volts <= 0.0 {
        let grown = (volts / slope).exp();
        return (saturation * (grown - 1.0), saturation * grown / slope);
    }
    let mut y = (volts / slope).min((1.0 + volts / (ohms * saturation)).ln()).min(STEEPEST);
    for _ in 0..60 {
        let grown = y.exp();
        let step = (slope * y + ohms * saturation * (grown - 1.0) - volts) / (slope + ohms * saturation * grown);
        y -= step;
        if step.abs() <= 1e-15 * y.abs() {
            break;
        }
    }
    let grown = y.exp();
    (saturation * (grown - 1.0), 1.0 / (ohms + slope / (saturation * grown)))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn laws() -> Vec<Law> {
        vec![
            Law::Resistance { ohms: 3.0 },
            Law::Emf { volts: 12.6, ohms: 0.02 },
            Law::Filament { amperes: 1.85, volts: 13.5 },
            Law::Junction { saturation_amperes: 2.52e-9, slope_volts: 1.752 * 0.025_865, ohms: 1000.0 },
            Law::Junction { saturation_amperes: 1e-18, slope_volts: 2.0 * 0.025_865, ohms: 0.01 },
            Law::Driver { amperes: 0.15, start_volts: 6.0, full_volts: 9.0 },
            Law::Regulated { amperes: 8.0, volts: 14.4 },
            Law::Coil { volts: 12.5, ohms: 0.2, reactance_ohms: 3.7 },
            Law::Shunt { volts: 7.0, ohms: 0.1 },
        ]
    }

    #[test]
    fn what_gives_no_power_passes_no_current_without_voltage() {
        for law in laws() {
            if !matches!(law, Law::Emf { .. } | Law::Regulated { .. } | Law::Coil { .. }) {
                assert!(law.current(0.0).0.abs() < 1e-15, "{law:?}");
            }
        }
    }

    #[test]
    fn a_regulated_source_gives_all_below_and_nothing_above_its_voltage() {
        let law = Law::Regulated { amperes: 8.0, volts: 14.4 };
        assert!((law.current(12.0).0 + 8.0).abs() < 0.02);
        assert!((law.current(14.4).0 + 4.0).abs() < 0.01);
        assert!(law.current(15.5).0.abs() < 0.05);
    }

    #[test]
    fn a_junction_satisfies_its_own_equation() {
        for volts in [0.1, 0.5, 0.7, 2.0, 12.0, 24.0] {
            let law = Law::Junction { saturation_amperes: 1e-12, slope_volts: 0.03, ohms: 0.5 };
            let (amperes, _) = law.current(volts);
            assert!((0.03 * (amperes / 1e-12).ln_1p() + 0.5 * amperes - volts).abs() < 1e-9, "{volts}");
        }
    }

    proptest! {
        #[test]
        fn current_never_falls_with_voltage_and_the_slope_is_its_derivative(volts in -20.0..20.0_f64) {
            for law in laws() {
                let (amperes, slope) = law.current(volts);
                prop_assert!(slope >= 0.0 && amperes.is_finite());
                let by = 1e-6;
                let numeric = (law.current(volts + by).0 - law.current(volts - by).0) / (2.0 * by);
                prop_assert!((numeric - slope).abs() <= 1e-4 * slope.abs() + 1e-6, "{law:?} {volts}: {numeric} {slope}");
            }
        }
    }
}
