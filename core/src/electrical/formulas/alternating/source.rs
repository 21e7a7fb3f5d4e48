//! A lighting coil as a source: the voltage that it induces, and what it drives through its own reactance.
//!
//! Effective values (RMS) throughout. All that hangs on a lighting coil is resistive, a filament too: it is far too slow to follow
//! the wave, so within a turn it is a plain resistance. Current and voltage of the whole net are then in step, and a net of effective
//! values is solved like one of direct current. Only the coil's own voltage is ahead of its current; it is added at a right angle
//! here, inside the source. This does not hold for what follows the wave: diodes, LED lamps, the winding of a horn, and the
//! lamps behind a regulator that cuts pieces out of the wave, where a meter without effective values reads wrong too.

use crate::bounds;
use crate::electrical::formulas::sources;
use crate::quantity::{formula, within};

/// Current that a coil drives at a voltage between its ends, amperes.
///
/// The induced voltage E feeds the terminals V and the coil's resistance R in step with the current, and its reactance X at a
/// right angle: `E² = (V + R I)² + (X I)²`, so `I = (√((R² + X²) E² − X² V²) − R V) / (R² + X²)`. Nothing flows at V = E.
///
/// ```
/// use layshaft_core::electrical::coil_current;
/// // Short-circuited, the whole impedance of 5 Ω holds the current.
/// assert!((coil_current(20.0, 4.0, 3.0, 0.0) - 4.0).abs() < 1e-12);
/// assert!(coil_current(20.0, 4.0, 3.0, 20.0).abs() < 1e-12);
/// ```
pub fn coil_current(emf_volts: f64, reactance_ohms: f64, ohms: f64, volts: f64) -> f64 {
    let square = ohms * ohms + reactance_ohms * reactance_ohms;
    ((square * emf_volts * emf_volts - (reactance_ohms * volts).powi(2)).sqrt() - ohms * volts) / square
}

formula! {
    /// Current that a lighting coil drives at a voltage between its ends.
    CoilCurrent in Electrics, "I = (√((R^2 + X^2) · E^2 − X^2 · V^2) − R · V) / (R^2 + X^2)"
    takes {
        /// Induced voltage, volts, effective value.
        "E" emf_volts: f64 = within(&bounds::COIL_EMF);
        /// Reactance, ohms.
        "X" reactance_ohms: f64 = within(&bounds::CIRCUIT_OHMS);
        /// Resistance, ohms.
        "R" ohms: f64 = within(&bounds::CIRCUIT_OHMS);
        /// Voltage between its ends, volts, effective value.
        "V" volts: f64 = within(&bounds::CIRCUIT_VOLTS);
    }
    gives {
        /// Current.
        amperes "I" Ampere;
    }
    from sources::coil_source();
    it => {
        let amperes = coil_current(it.emf_volts, it.reactance_ohms, it.ohms, it.volts);
        Ok([Some(amperes).filter(|amperes| *amperes >= 0.0)])
    }
}

formula! {
    /// Induced voltage and reactance of a lighting coil from what it gives at two engine speeds.
    CoilEmf in Electrics, "E = n · √((V₀ + R · I₁)^2 / n₁^2 + ((V₀ + R · I₁)^2 / n₁^2 − (V₀ + R · I₂)^2 / n₂^2) / (I₂^2 − I₁^2) · I₁^2)"
    takes {
        /// Engine speed, revolutions a minute.
        "n" rpm: f64 = within(&bounds::ENGINE_SPEED);
        /// Voltage at which the coil was measured, volts, effective value.
        "V₀" test_volts: f64 = within(&bounds::TEST_VOLTS);
        /// Resistance of the coil, ohms.
        "R" ohms: f64 = within(&bounds::CIRCUIT_OHMS);
        /// The lower of the two speeds, revolutions a minute.
        "n₁" slow_rpm: f64 = within(&bounds::ENGINE_SPEED);
        /// Current there, amperes.
        "I₁" slow_amperes: f64 = within(&bounds::AMPERES);
        /// The higher of the two speeds, revolutions a minute.
        "n₂" fast_rpm: f64 = within(&bounds::ENGINE_SPEED);
        /// Current there, amperes.
        "I₂" fast_amperes: f64 = within(&bounds::AMPERES);
    }
    gives {
        /// Induced voltage.
        emf_volts "E" Volt;
        /// Reactance.
        reactance_ohms "n · √(((V₀ + R · I₁)^2 / n₁^2 − (V₀ + R · I₂)^2 / n₂^2) / (I₂^2 − I₁^2))" Ohm;
    }
    from sources::coil_source();
    it => {
        let [emf, reactance] = it.emf_and_reactance().map_or([None; 2], |found| found.map(Some));
        Ok([emf, reactance])
    }
}

impl CoilEmf {
    /// Both grow with the speed: `E = k n`, `X = x n`, and at each of the two speeds `(k n)² = (V₀ + R I)² + (x n I)²`. None where
    /// no coil gives such currents: the current must rise with the speed.
    ///
    /// ```
    /// use layshaft_core::electrical::{CoilEmf, coil_current};
    /// let at = |rpm| CoilEmf {
    ///     rpm, test_volts: 6.75, ohms: 0.1, slow_rpm: 1500.0, slow_amperes: 1.3, fast_rpm: 5500.0, fast_amperes: 3.2,
    /// };
    /// let [emf, reactance] = at(5500.0).emf_and_reactance().unwrap();
    /// assert!((coil_current(emf, reactance, 0.1, 6.75) - 3.2).abs() < 1e-9);
    /// ```
    pub fn emf_and_reactance(&self) -> Option<[f64; 2]> {
        let a_turn = |rpm: f64, amperes: f64| ((self.test_volts + self.ohms * amperes) / rpm).powi(2);
        let (slow, fast) = (a_turn(self.slow_rpm, self.slow_amperes), a_turn(self.fast_rpm, self.fast_amperes));
        let more = self.fast_amperes.powi(2) - self.slow_amperes.powi(2);
        let square = (slow - fast) / more;
        let rises = self.fast_rpm > self.slow_rpm && more > 0.0 && square > 0.0;
        rises.then(|| [self.rpm * (slow + square * self.slow_amperes.powi(2)).sqrt(), self.rpm * square.sqrt()])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_current_is_the_one_at_which_the_voltages_add_up_at_a_right_angle() {
        for volts in [0.0, 3.0, 6.75, 12.0, 19.0] {
            let amperes = coil_current(20.0, 5.0, 0.4, volts);
            assert!(((volts + 0.4 * amperes).hypot(5.0 * amperes) - 20.0).abs() < 1e-9, "{volts}");
        }
    }

    #[test]
    fn a_coil_that_is_known_at_two_speeds_gives_at_both_what_was_measured() {
        let known = |rpm| CoilEmf {
            rpm,
            test_volts: 6.75,
            ohms: 0.1,
            slow_rpm: 1500.0,
            slow_amperes: 9.0 / 6.75,
            fast_rpm: 5500.0,
            fast_amperes: 22.0 / 6.75,
        };
        for (rpm, watts) in [(1500.0, 9.0), (5500.0, 22.0)] {
            let [emf, reactance] = known(rpm).emf_and_reactance().unwrap();
            assert!((6.75 * coil_current(emf, reactance, 0.1, 6.75) - watts).abs() < 1e-9, "{rpm}");
        }
        let falls = CoilEmf { fast_amperes: 1.0, ..known(1500.0) };
        assert_eq!(falls.emf_and_reactance(), None);
    }
}
