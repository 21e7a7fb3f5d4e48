//! The voltage that an unregulated lighting coil drives its lamps to.

use crate::bounds;
use crate::electrical::formulas::load::FILAMENT_CURRENT;
use crate::electrical::formulas::sources;
use crate::quantity::{formula, within};

/// Voltage at the lamps of an unregulated lighting coil, volts, at most.
///
/// Above idle the reactance of the coil, which grows with speed as its voltage does, holds the current: the coil drives nearly
/// the same current through whatever is lit. What it gives at the rated voltage V₀ is the current `P_c / V₀`; lamps that take
/// P there let `P / V₀ · (V / V₀)^0.55` through. Both are equal at `V = V₀ (P_c / P)^(1/0.55)`. So half of the lamps out more
/// than triples the voltage of the rest, and a blown tail lamp takes the headlamp with it. Range: an upper end; a coil
/// with much resistance gives way. Beyond 1.2 times the rated voltage filaments burn out, and the law ends.
///
/// ```
/// use layshaft_core::electrical::coil_lamp_volts;
/// assert_eq!(coil_lamp_volts(6.75, 20.0, 20.0), 6.75);
/// // The tail lamp of 5 W is out, 15 W of 20 are left.
/// assert!((coil_lamp_volts(6.75, 20.0, 15.0) - 11.388).abs() < 0.001);
/// ```
pub fn coil_lamp_volts(rated_volts: f64, coil_watts: f64, lamp_watts: f64) -> f64 {
    rated_volts * (coil_watts / lamp_watts).powf(1.0 / FILAMENT_CURRENT)
}

formula! {
    /// Voltage at the lamps of an unregulated lighting coil, at most.
    CoilLampVolts in Electrics, "V = V₀ · (P_c / P)^(1 / 0.55)"
    takes {
        /// Voltage that lamps and coil are rated for, volts.
        "V₀" test_volts: f64 = within(&bounds::TEST_VOLTS);
        /// What the coil gives at that voltage and this engine speed, watts.
        "P_c" coil_watts: f64 = within(&bounds::CONSUMER_WATTS);
        /// What the lamps that are lit take at that voltage, watts.
        "P" watts: f64 = within(&bounds::WATTS);
    }
    gives {
        /// Voltage at the lamps.
        volts "V" Volt;
    }
    from sources::lighting_coil();
    it => Ok([Some(coil_lamp_volts(it.test_volts, it.coil_watts, it.watts)).filter(|volts| volts.is_finite())])
}

#[cfg(test)]
mod tests {
    use super::super::super::lamp_watts;
    use super::*;

    #[test]
    fn at_that_voltage_the_lamps_pass_the_current_of_the_coil() {
        for (coil, lamps) in [(22.0, 20.0), (12.0, 20.0), (20.0, 15.0)] {
            let volts = coil_lamp_volts(6.75, coil, lamps);
            assert!((lamp_watts(lamps, 6.75, volts) / volts - coil / 6.75).abs() < 1e-9);
        }
    }
}
