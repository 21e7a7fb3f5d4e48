//! What consumers draw, alone and together, and what that leaves for the battery or means for a flasher.

use super::load::{lamp_watts, load_sum};
use super::sources::{balance, filament_law, flasher_load};
use crate::bounds;
use crate::quantity::{FormulaSource, Source, Standing, formula, within};

/// Current that an output leaves for the battery, amperes; below zero it discharges.
///
/// ```
/// assert_eq!(layshaft_core::electrical::charge_current(126.0, 56.0, 14.0), 5.0);
/// ```
pub fn charge_current(output_watts: f64, load_watts: f64, volts: f64) -> f64 {
    (output_watts - load_watts) / volts
}

formula! {
    /// Power and current of consumers of one kind.
    ConsumerPower in Electrics, "P = n · P₀ · (V / V₀)^1.55"
    takes {
        /// How many.
        "n" count: u32 = within(&bounds::COUNT);
        /// Watts of one at the test voltage.
        "P₀" watts: f64 = within(&bounds::WATTS);
        /// Test voltage, volts.
        "V₀" test_volts: f64 = within(&bounds::TEST_VOLTS);
        /// Voltage, volts.
        "V" volts: f64 = within(&bounds::TEST_VOLTS);
    }
    gives {
        /// Filament lamps.
        filament_watts "P" Watt;
        /// Their current.
        filament_amperes "n · P₀ · (V / V₀)^1.55 / V" Ampere;
        /// What holds its power.
        steady_watts "n · P₀" Watt;
        /// Its current.
        steady_amperes "n · P₀ / V" Ampere;
    }
    from filament_law();
    it => {
        let count = f64::from(it.count);
        let (lamps, steady) = (count * lamp_watts(it.watts, it.test_volts, it.volts), count * it.watts);
        Ok([lamps, lamps / it.volts, steady, steady / it.volts])
    }
}

formula! {
    /// Load of several consumers.
    LoadSum in Electrics, "P = Σ s · P₁"
    takes {
        /// Share of the time of each.
        "s" shares: Vec<f64> = within(&bounds::DUTY);
        /// Watts of each.
        "P₁" watts: Vec<f64> = within(&bounds::CONSUMER_WATTS);
    }
    gives {
        /// Load.
        watts "P" Watt;
    }
    from Source::new(FormulaSource::SumOfPowers, Standing::Computed);
    it => Ok([load_sum(&it.shares, &it.watts)])
}

formula! {
    /// Current that an alternator leaves for the battery.
    ChargeCurrent in Electrics, "I = (P_a − P) / V"
    takes {
        /// Output, watts.
        "P_a" output_watts: f64 = within(&bounds::CONSUMER_WATTS);
        /// Load, watts.
        "P" load_watts: f64 = within(&bounds::CONSUMER_WATTS);
        /// Regulated voltage, volts.
        "V" volts: f64 = within(&bounds::CHARGING_VOLTS);
    }
    gives {
        /// Current.
        amperes "I" Ampere;
    }
    from balance();
    it => Ok([charge_current(it.output_watts, it.load_watts, it.volts)])
}

formula! {
    /// Load of a flasher against the load that it is made for.
    FlasherShare in Electrics, "s = 100 · P / P_m"
    takes {
        /// Load of one side, watts.
        "P" side_watts: f64 = within(&bounds::CONSUMER_WATTS);
        /// Load that it is made for, watts.
        "P_m" flasher_watts: f64 = within(&bounds::FLASHER_WATTS);
    }
    gives {
        /// Load.
        share "s" Percent;
    }
    from flasher_load();
    it => Ok([100.0 * it.side_watts / it.flasher_watts])
}
