//! How full a battery is by its acid, how long a drain takes to empty it, and how long it takes to fill it again.
//!
//! Method: a table of specific gravity, straight lines between its points; a drain and a charger
//! by ampere-hours over amperes.

use super::battery::ChargeBetween;
use crate::bounds;
use crate::quantity::{FormulaSource, Source, Standing, formula, within};

/// Specific gravity at 25 °C and charge, per cent, empty first. Second-hand table, the companion of that of the voltages.
const GRAVITY: [(f64, f64); 5] = [(1.120, 0.0), (1.155, 25.0), (1.190, 50.0), (1.225, 75.0), (1.265, 100.0)];
/// Ampere-hours to put back for one that is missing: a lead battery gives back less than it takes. Common practice.
const CHARGE_FACTOR: f64 = 1.2;

/// Charge of a cell from the specific gravity of its acid at 25 °C, per cent, clamped at the ends.
///
/// Linear between 1.265, 1.225, 1.190, 1.155 and 1.120 = 100, 75, 50, 25 and 0 %. Source: a table restated on many pages
/// (second hand). Range: flooded, topped up, charged or rested for hours.
///
/// ```
/// use layshaft_core::electrical::charge_from_gravity;
/// assert_eq!(charge_from_gravity(1.190), 50.0);
/// assert!((charge_from_gravity(1.245) - 87.5).abs() < 1e-9);
/// ```
pub fn charge_from_gravity(gravity: f64) -> f64 {
    gravity_rows(gravity).charge()
}

/// The rows of the table of gravities on both sides of one, with the gravity held inside the table.
pub(crate) fn gravity_rows(gravity: f64) -> ChargeBetween {
    ChargeBetween::of(&GRAVITY, gravity)
}

/// Specific gravity at 25 °C of a reading at another temperature.
///
/// `d25 = d + 0.0007 (T - 25)`, T in °C. Source: battery makers' usual correction, 0.007 for 10 °C (from memory).
///
/// ```
/// use layshaft_core::electrical::gravity_at_25;
/// assert!((gravity_at_25(1.260, 5.0) - 1.246).abs() < 1e-9);
/// ```
pub fn gravity_at_25(gravity: f64, celsius: f64) -> f64 {
    gravity + 0.0007 * (celsius - 25.0)
}

/// Days until a drain has emptied a battery.
///
/// `t = C q / (100 I) / 24`, C in ampere-hours, q in per cent, I in amperes. No Peukert term: a drain lies far below the
/// rated current. The battery's own discharge comes on top.
///
/// ```
/// use layshaft_core::electrical::days_to_flat;
/// assert!((days_to_flat(9.0, 100.0, 0.0015) - 250.0).abs() < 1e-9);
/// ```
pub fn days_to_flat(capacity_ah: f64, charge_percent: f64, amperes: f64) -> f64 {
    capacity_ah * charge_percent / 100.0 / amperes / 24.0
}

/// Hours that a charger takes to fill a battery.
///
/// `t = 1.2 C (100 - q) / (100 I)`. The factor 1.2 for what is lost in a flooded battery is common practice; the last tenth
/// takes longer on a charger that holds the voltage.
///
/// ```
/// use layshaft_core::electrical::recharge_hours;
/// assert!((recharge_hours(9.0, 50.0, 0.9) - 6.0).abs() < 1e-9);
/// ```
pub fn recharge_hours(capacity_ah: f64, charge_percent: f64, amperes: f64) -> f64 {
    CHARGE_FACTOR * capacity_ah * (100.0 - charge_percent) / 100.0 / amperes
}

formula! {
    /// Charge from the specific gravity of the acid.
    GravityCharge in Electrics, "d₂₅ = d + 0.0007 · (T − 25), then linear between 1.265, 1.225, 1.190, 1.155 and 1.120 = 100 to 0 %"
    takes {
        /// Specific gravity.
        "d" gravity: f64 = within(&bounds::GRAVITY);
        /// Temperature of the acid, °C.
        "T" celsius: f64 = within(&bounds::TEMPERATURE);
    }
    gives {
        /// Charge.
        charge "q" Percent;
    }
    from Source::new(FormulaSource::RestatedTableCorrected, Standing::SecondHand);
    it => Ok([charge_from_gravity(gravity_at_25(it.gravity, it.celsius))])
}

formula! {
    /// Days until a drain has emptied a battery.
    DaysToFlat in Electrics, "t = C · q / 100 / (I / 1000) / 24"
    takes {
        /// Capacity, ampere-hours.
        "C" battery_ah: f64 = within(&bounds::BATTERY_AH);
        /// Charge, per cent.
        "q" charge_percent: f64 = within(&bounds::CHARGE);
        /// Drain, milliamperes.
        "I" drain_milliamperes: f64 = within(&bounds::STEADY_DRAIN);
    }
    gives {
        /// Time.
        days "t" Day;
    }
    from Source::new(FormulaSource::ChargeOverCurrent, Standing::Computed);
    it => Ok([days_to_flat(it.battery_ah, it.charge_percent, it.drain_milliamperes / 1000.0)])
}

formula! {
    /// Hours to charge a battery.
    RechargeHours in Electrics, "t = 1.2 · C · (100 − q) / (100 · I)"
    takes {
        /// Capacity, ampere-hours.
        "C" battery_ah: f64 = within(&bounds::BATTERY_AH);
        /// Charge, per cent.
        "q" charge_percent: f64 = within(&bounds::CHARGE);
        /// Current of the charger, amperes.
        "I" charger_amperes: f64 = within(&bounds::CHARGER);
    }
    gives {
        /// Time.
        hours "t" Hour;
    }
    from Source::new(FormulaSource::RechargePractice, Standing::CommonPractice);
    it => Ok([recharge_hours(it.battery_ah, it.charge_percent, it.charger_amperes)])
}

#[cfg(test)]
mod tests {
    use super::super::battery::rested_charge;
    use super::*;

    #[test]
    fn both_tables_agree_with_the_cell_law_at_the_full_end_and_differ_at_the_empty_one() {
        // Volts of a cell = gravity + 0.84: 12.63 V full against 12.65 in the table, 11.76 V empty against 11.89.
        let of_six = |gravity: f64| 6.0 * (gravity + 0.84);
        assert!((of_six(1.265) - 12.63).abs() < 0.005 && (of_six(1.120) - 11.76).abs() < 0.005);
        assert!((rested_charge(6, of_six(1.265)) - charge_from_gravity(1.265)).abs() < 4.0);
        assert_eq!((rested_charge(6, of_six(1.120)), charge_from_gravity(1.120)), (0.0, 0.0));
    }

    #[test]
    fn beyond_the_tables_a_battery_is_full_or_empty() {
        assert_eq!((charge_from_gravity(1.05), charge_from_gravity(1.30)), (0.0, 100.0));
    }
}
