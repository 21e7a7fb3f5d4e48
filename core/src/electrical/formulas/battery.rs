//! The battery: how long it lasts at a current, and how full a rested one is.
//!
//! Method: Peukert's law with the rated hours, and the table of open-circuit voltages that battery makers give.

use super::sources::peukert;
use super::volts::SIX_CELLS;
use crate::bounds;
use crate::quantity::{FormulaSource, Source, Standing, formula, within};

/// Rested voltage of a 12 V lead battery and its charge, volts and per cent, empty first. Second-hand table; the form
/// 6 (specific gravity + 0.84) agrees at the full end and lies 0.13 V lower at the empty one.
const RESTED: [(f64, f64); 5] = [(11.89, 0.0), (12.06, 25.0), (12.24, 50.0), (12.45, 75.0), (12.65, 100.0)];

/// Hours until a full battery is flat at a steady current.
///
/// `t = H (C / (I H))^k`, t and H in hours, C in ampere-hours, I in amperes. Source: battery dealers' technical pages
/// (second-hand). `t = C / I^k` without the rated hours, as some pages print it, does not hold for a capacity that is
/// rated over ten or twenty hours. Range: currents around and above the rated one, C/H; far below it a battery's own
/// discharge ends it sooner.
///
/// ```
/// use layshaft_core::electrical::battery_hours;
/// assert!((battery_hours(100.0, 20.0, 1.2, 10.0) - 8.7055).abs() < 0.00005);
/// assert_eq!(battery_hours(100.0, 20.0, 1.2, 5.0), 20.0); // the rated current lasts the rated hours
/// ```
pub fn battery_hours(capacity_ah: f64, rated_hours: f64, peukert: f64, amperes: f64) -> f64 {
    rated_hours * (capacity_ah / (amperes * rated_hours)).powf(peukert)
}

/// Charge of a lead battery from its voltage after some hours of rest, per cent.
///
/// Linear between 12.65, 12.45, 12.24, 12.06 and 11.89 V = 100, 75, 50, 25 and 0 % of six cells, clamped at the ends. Cells in
/// series share the voltage evenly, so a battery of n cells is read at `6 V / n`: three make a 6 V one. Source: a table for six
/// cells restated on many pages (second-hand); for three no table was found, the share of a cell is reasoning. Range: flooded,
/// rested for hours, near 20 °C; a meter error of 0.05 V alone is 6 % of six cells and 12 % of three, and absorbed glass mat
/// reads 0.1 to 0.2 V higher (from memory).
///
/// ```
/// use layshaft_core::electrical::rested_charge;
/// assert!((rested_charge(6, 12.50) - 81.25).abs() < 1e-9);
/// assert!((rested_charge(3, 6.25) - 81.25).abs() < 1e-9);
/// assert_eq!((rested_charge(6, 11.0), rested_charge(6, 13.0)), (0.0, 100.0));
/// ```
pub fn rested_charge(cells: u32, volts: f64) -> f64 {
    rested_rows(cells, volts).charge()
}

/// The rows of the table for so many cells on both sides of a rested voltage, with the voltage held inside the table.
pub(crate) fn rested_rows(cells: u32, volts: f64) -> ChargeBetween {
    let share = f64::from(cells) / SIX_CELLS;
    ChargeBetween::of(&RESTED.map(|(of_six, charge)| (of_six * share, charge)), volts)
}

formula! {
    /// Charge between two rows of a table.
    ChargeBetween in Electrics, "q = q₁ + (x − x₁) / (x₂ − x₁) · (q₂ − q₁)"
    takes {
        /// What was read.
        "x" reading: f64 = within(&bounds::READING);
        /// The row below.
        "x₁" below: f64 = within(&bounds::READING);
        /// Its charge, per cent.
        "q₁" charge_below: f64 = within(&bounds::CHARGE);
        /// The row above.
        "x₂" above: f64 = within(&bounds::READING);
        /// Its charge, per cent.
        "q₂" charge_above: f64 = within(&bounds::CHARGE);
    }
    gives {
        /// Charge.
        charge "q" Percent;
    }
    from Source::new(FormulaSource::StraightLine, Standing::Computed);
    it => Ok([Some(it.charge()).filter(|charge| charge.is_finite())])
}

impl ChargeBetween {
    /// The two rows of a table, emptiest first, on both sides of a reading; a reading beyond the table is held at its end.
    pub(crate) fn of(table: &[(f64, f64); 5], reading: f64) -> Self {
        let [first, .., last] = *table;
        let reading = reading.clamp(first.0, last.0);
        let mut pairs = table.iter().zip(table.iter().skip(1));
        let top = (&first, &last);
        let (below, above) = pairs.clone().find(|(_, above)| reading < above.0).or(pairs.next_back()).unwrap_or(top);
        Self { reading, below: below.0, charge_below: below.1, above: above.0, charge_above: above.1 }
    }

    /// Charge, per cent.
    pub(crate) fn charge(&self) -> f64 {
        let along = (self.reading - self.below) / (self.above - self.below);
        self.charge_below + along * (self.charge_above - self.charge_below)
    }
}

formula! {
    /// Hours until a full battery is flat at a steady current, after Peukert.
    BatteryHours in Electrics, "t = H · (C / (I · H))^k"
    takes {
        /// Capacity, ampere-hours.
        "C" battery_ah: f64 = within(&bounds::BATTERY_AH);
        /// Hours of the rating.
        "H" rated_hours: f64 = within(&bounds::RATED_HOURS);
        /// Peukert exponent.
        "k" peukert: f64 = within(&bounds::PEUKERT);
        /// Current, amperes.
        "I" amperes: f64 = within(&bounds::AMPERES);
    }
    gives {
        /// Time.
        hours "t" Hour;
        /// The same in minutes.
        minutes "60 · H · (C / (I · H))^k" Minute;
    }
    from peukert();
    it => {
        let hours = battery_hours(it.battery_ah, it.rated_hours, it.peukert, it.amperes);
        Ok([hours, 60.0 * hours])
    }
}

formula! {
    /// State of charge of a rested lead battery.
    RestedCharge in Electrics, "x = 6 · V / n, linear between 12.65, 12.45, 12.24, 12.06 and 11.89 V = 100, 75, 50, 25 and 0 %"
    takes {
        /// Cells in series: six of a 12 V battery, three of a 6 V one.
        "n" cells: u32 = within(&bounds::CELLS);
        /// Voltage after a rest of some hours, volts.
        "V" volts: f64 = within(&bounds::RESTED_VOLTS);
    }
    gives {
        /// Charge.
        charge "q" Percent;
    }
    from Source::new(FormulaSource::RestatedTable, Standing::SecondHand);
    it => {
        bounds::CELL_VOLTS.of("volts").check(it.volts / f64::from(it.cells))?;
        Ok([rested_charge(it.cells, it.volts)])
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::error::Refused;
    use crate::quantity::Evaluate;

    #[test]
    fn peukert_gives_the_checked_hours() {
        for (capacity, hours, exponent, amperes, lasts) in
            [(100.0, 20.0, 1.2, 10.0, 8.7055), (14.0, 10.0, 1.25, 5.0, 2.0368), (14.0, 10.0, 1.25, 10.0, 0.8564)]
        {
            assert!((battery_hours(capacity, hours, exponent, amperes) - lasts).abs() < 0.00006);
        }
        // The other published form, T = C (C/R)^(n-1) / I^n, is the same law.
        let other = 14.0 * (14.0_f64 / 10.0).powf(0.25) / 5.0_f64.powf(1.25);
        assert!((battery_hours(14.0, 10.0, 1.25, 5.0) - other).abs() < 1e-12);
    }

    #[test]
    fn the_table_of_rested_voltages_is_met_at_its_points_and_between() {
        for (volts, charge) in RESTED {
            assert_eq!(rested_charge(6, volts), charge);
        }
        assert!((rested_charge(6, 12.30) - 57.142_857).abs() < 1e-5);
    }

    #[test]
    fn three_cells_are_as_full_as_six_at_the_same_voltage_a_cell() {
        for volts in [11.9, 12.0, 12.24, 12.5, 12.64] {
            assert!((rested_charge(3, volts / 2.0) - rested_charge(6, volts)).abs() < 1e-9, "{volts}");
        }
    }

    #[test]
    fn a_voltage_that_so_many_cells_never_rest_at_is_refused() {
        let of = |cells, volts| RestedCharge { cells, volts }.evaluate();
        assert!(of(3, 6.3).is_ok() && of(6, 12.6).is_ok());
        for (cells, volts) in [(3, 12.6), (6, 6.3)] {
            assert!(matches!(of(cells, volts), Err(Refused::OutOfRange { field, .. }) if field == "volts"), "{cells}");
        }
    }

    proptest! {
        #[test]
        fn more_current_never_lasts_longer(capacity in 1.0..60.0, exponent in 1.0..1.6, a in 0.01..100.0, b in 0.01..100.0) {
            let lasts = |amperes| battery_hours(capacity, 10.0, exponent, amperes);
            prop_assert!(lasts(f64::max(a, b)) <= lasts(f64::min(a, b)));
        }

        #[test]
        fn a_higher_rested_voltage_is_never_less_charge(a in 9.0..14.0, b in 9.0..14.0) {
            prop_assert!(rested_charge(6, f64::min(a, b)) <= rested_charge(6, f64::max(a, b)));
        }
    }
}
