//! The load resistor that gives a flasher back the load it was made for.

use layshaft_wire::wire;

use super::volts::Volts;
use crate::bounds;
use crate::electrical::message::{ElectricalMessage, ElectricalSource};
use crate::error::Refused;
use crate::message::Message;
use crate::quantity::{FormulaSource, Source, Standing};
use crate::quantity::{formula, within};
use crate::record::{Consumer, LightSource, Slot, Spec, Use};

/// Ohms that can be bought, E12 series (IEC 60063, from memory).
const E12: [f64; 12] = [1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];
/// Ratings that can be bought, watts.
const RATINGS: [f64; 6] = [5.0, 10.0, 25.0, 50.0, 100.0, 200.0];
/// Rating over the watts while lit, for a flasher that sticks: common practice.
const MARGIN: f64 = 2.0;
/// Share of the time that an indicator is lit.
const DUTY: f64 = 0.5;

/// A load resistor beside one lamp.
#[wire]
pub struct LoadResistor {
    /// Exact resistance, ohms.
    pub ohms: f64,
    /// Resistance to buy, ohms: the next lower of the E12 series, so that the load is not too small.
    pub buy_ohms: f64,
    /// Watts while lit, with what is bought.
    pub peak_watts: f64,
    /// Watts on the mean of a flash, lit half of the time.
    pub mean_watts: f64,
    /// Rating to buy, watts: at least twice the peak, because a flasher may stick.
    pub rating_watts: f64,
    /// Where it may be mounted.
    pub mounting: Message,
}

/// Resistance beside one lamp that makes up the load, ohms; none where the new lamp takes no less than the old one.
///
/// `R = V / (I_old - I_new)` at the regulated voltage V. A 25 W lamp replaced by an LED of 2 W at 13.5 V:
///
/// ```
/// use layshaft_core::electrical::load_resistance;
/// assert!((load_resistance(13.5, 25.0, 2.0).unwrap() - 7.924).abs() < 0.0005);
/// assert_eq!(load_resistance(13.5, 10.0, 10.0), None);
/// ```
pub fn load_resistance(volts: f64, old_watts: f64, new_watts: f64) -> Option<f64> {
    let amperes = (old_watts - new_watts) / volts;
    (amperes > 1e-3).then(|| volts / amperes)
}

/// Watts that a resistor takes: `P = V² / R`.
///
/// ```
/// assert_eq!(layshaft_core::electrical::resistor_watts(14.0, 8.0), 24.5);
/// ```
pub fn resistor_watts(volts: f64, ohms: f64) -> f64 {
    volts * volts / ohms
}

/// The resistor to buy: ohms of the E12 series, watts of a common rating.
///
/// `P_peak = V² / R`, `P_mean = P_peak / 2`.
///
/// ```
/// use layshaft_core::electrical::load_resistor;
/// let resistor = load_resistor(13.5, 25.0, 2.0).unwrap();
/// assert_eq!((resistor.buy_ohms, resistor.rating_watts), (6.8, 100.0));
/// assert!((resistor.peak_watts - 26.80).abs() < 0.005);
/// ```
pub fn load_resistor(volts: f64, old_watts: f64, new_watts: f64) -> Option<LoadResistor> {
    let ohms = load_resistance(volts, old_watts, new_watts)?;
    let buy_ohms = next_lower(ohms);
    let peak_watts = resistor_watts(volts, buy_ohms);
    let rating_watts = RATINGS.into_iter().find(|rating| *rating >= MARGIN * peak_watts).unwrap_or(MARGIN * peak_watts);
    Some(LoadResistor {
        ohms,
        buy_ohms,
        peak_watts,
        mean_watts: DUTY * peak_watts,
        rating_watts,
        mounting: ElectricalMessage::ResistorMounting.into(),
    })
}

fn next_lower(ohms: f64) -> f64 {
    let decade = 10_f64.powf(ohms.log10().floor());
    let mantissa = ohms / decade;
    let step = E12.into_iter().rev().find(|step| *step <= mantissa * (1.0 + 1e-9)).unwrap_or(1.0);
    step * decade
}

/// Where it comes from.
pub(crate) fn resistor_source() -> Source {
    Source::new(ElectricalSource::Resistor, Standing::CommonPractice)
}

/// Id of the load resistors of a side among the consumers.
pub(crate) const LOAD_RESISTORS: &str = "load-resistors";

/// The consumers with the load resistors beside them, at the watts that they take at the regulated voltage.
pub(crate) fn with_resistors(spec: &Spec, volts: &Volts) -> Vec<Slot> {
    let mut slots = spec.consumers.clone();
    let watts = spec.indication.resistor_watts(volts.charging);
    if watts > 0.0 {
        let consumer = Consumer {
            // A working names them in words.
            name: LOAD_RESISTORS.to_owned(),
            watts,
            count: 1,
            used: Some(Use::Indicating),
            source: Some(LightSource::Electronics),
            ..Consumer::default()
        };
        slots.push(Slot { id: LOAD_RESISTORS.to_owned(), consumer });
    }
    slots
}

formula! {
    /// Load resistor beside an LED lamp.
    LoadResistance in Electrics, "R = V² / (P₁ − P₂)"
    takes {
        /// Voltage, volts.
        "V" volts: f64 = within(&bounds::CIRCUIT_VOLTS);
        /// Old lamp, watts at that voltage.
        "P₁" old_watts: f64 = within(&bounds::WATTS);
        /// New lamp, watts at that voltage.
        "P₂" new_watts: f64 = within(&bounds::WATTS);
    }
    gives {
        /// Resistance.
        ohms "R" Ohm;
        /// Power while lit.
        peak_watts "V² / R" Watt;
        /// Mean power.
        mean_watts "V² / R / 2" Watt;
    }
    from resistor_source();
    it => load_resistance(it.volts, it.old_watts, it.new_watts)
        .map(|ohms| {
            let peak = resistor_watts(it.volts, ohms);
            [ohms, peak, peak / 2.0]
        })
        .ok_or_else(|| Refused::Conflict {
            field: "newWatts".to_owned(),
            reason: ElectricalMessage::ResistorNothingToMakeUp.into(),
        })
}

formula! {
    /// Watts that a resistor takes.
    ResistorWatts in Electrics, "P = V² / R"
    takes {
        /// Voltage, volts.
        "V" volts: f64 = within(&bounds::CIRCUIT_VOLTS);
        /// Resistance, ohms.
        "R" ohms: f64 = within(&bounds::CIRCUIT_OHMS);
    }
    gives {
        /// Power.
        watts "P" Watt;
    }
    from Source::new(FormulaSource::Ohm, Standing::Computed);
    it => Ok([resistor_watts(it.volts, it.ohms)])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_checked_resistor_takes_23_watts_lit_and_half_of_it_on_the_mean() {
        let ohms = load_resistance(13.5, 25.0, 2.0).unwrap();
        assert!((13.5_f64.powi(2) / ohms - 23.0).abs() < 1e-9);
        let resistor = load_resistor(13.5, 25.0, 2.0).unwrap();
        assert!((resistor.mean_watts * 2.0 - resistor.peak_watts).abs() < 1e-12);
    }

    #[test]
    fn what_is_bought_is_of_the_series_and_never_above_the_exact_value() {
        for tenths in 5..20_000 {
            let ohms = f64::from(tenths) / 10.0;
            let bought = next_lower(ohms);
            assert!(bought <= ohms * (1.0 + 1e-9) && bought > 0.8 * ohms, "{ohms}: {bought}");
        }
        assert!((next_lower(10.0) - 10.0).abs() < 1e-12 && (next_lower(9.99) - 8.2).abs() < 1e-12);
    }
}
