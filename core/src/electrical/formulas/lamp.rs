//! Lamps by type, and one lamp at a real voltage: current, watts, light, warmth.
//!
//! Method: filament current `I ~ V^0.55`, watts `V^1.55`, light `V^3.4`, life `V^-13` (Fink and Beaty, *Standard Handbook
//! for Electrical Engineers*, 11th edition, page 22-8, second hand); LED lamps hold watts and light by their driver.

use layshaft_wire::wire;

use super::load::{consumer_watts, lamp_watts};
use super::sources::filament_law;
use crate::bounds;
use crate::electrical::message::ElectricalSource;
use crate::quantity::{Source, Standing};
use crate::quantity::{formula, within};
use crate::record::{Consumer, LampCap, LightSource};

/// Light of a filament goes with this power of its voltage.
const LIGHT: f64 = 3.4;
/// Life of a filament goes with this power of its voltage; 12 to 16 are given, 13 is usual.
const LIFE: f64 = -13.0;

/// A type of filament lamp.
#[wire]
pub struct LampCard {
    /// Type as it stands on the box, second filament apart: `P21/5W 5`.
    pub lamp: String,
    /// Cap.
    pub cap: LampCap,
    /// Watts as marked, at 12 V.
    pub marked_watts: f64,
    /// Watts at the test voltage.
    pub watts: f64,
    /// Test voltage, volts.
    pub test_volts: f64,
    /// Light at the test voltage, lumens.
    pub lumens: f64,
    /// Where the figures come from.
    pub source: Source,
}

/// Types: name, cap, watts as marked, watts and lumens at the test voltage, test voltage, whether the sheet was seen.
const LAMPS: [(&str, LampCap, f64, f64, f64, f64, bool); 15] = [
    ("P21/5W stop", LampCap::Bay15d, 21.0, 25.0, 440.0, 13.5, true),
    ("P21/5W tail", LampCap::Bay15d, 5.0, 6.0, 35.0, 13.5, true),
    ("P21W", LampCap::Ba15s, 21.0, 25.0, 460.0, 13.5, false),
    ("PY21W", LampCap::Bau15s, 21.0, 25.0, 280.0, 13.5, false),
    ("R10W", LampCap::Ba15s, 10.0, 10.0, 125.0, 13.5, false),
    ("RY10W", LampCap::Bau15s, 10.0, 10.0, 75.0, 13.5, false),
    ("R5W", LampCap::Ba15s, 5.0, 5.0, 50.0, 13.5, false),
    ("T4W", LampCap::Ba9s, 4.0, 4.0, 35.0, 13.5, false),
    ("W5W", LampCap::W2d, 5.0, 5.0, 50.0, 13.5, false),
    ("W3W", LampCap::W2d, 3.0, 3.0, 22.0, 13.5, false),
    ("C5W", LampCap::Sv8, 5.0, 5.0, 45.0, 13.5, false),
    ("HS1 main", LampCap::Px43t, 35.0, 35.0, 825.0, 13.2, false),
    ("HS1 dipped", LampCap::Px43t, 35.0, 35.0, 525.0, 13.2, false),
    ("HS2", LampCap::Px13s, 15.0, 15.0, 320.0, 13.5, true),
    ("H4 main", LampCap::P43t, 60.0, 75.0, 1650.0, 13.2, false),
];

/// The types of filament lamps that are known here.
pub fn lamp_cards() -> Vec<LampCard> {
    let card =
        |(lamp, cap, marked_watts, watts, lumens, test_volts, seen): (&str, LampCap, f64, f64, f64, f64, bool)| {
            let source = if seen {
                Source::new(ElectricalSource::LampDirective { lamp: lamp.to_owned() }, Standing::Seen)
            } else {
                Source::new(ElectricalSource::LampRegulation { lamp: lamp.to_owned() }, Standing::Memory)
            };
            LampCard { lamp: lamp.to_owned(), cap, marked_watts, watts, test_volts, lumens, source }
        };
    LAMPS.into_iter().map(card).collect()
}

/// Light of a filament lamp off its test voltage, lumens.
///
/// `F = F0 (V / V0)^3.4`. Range: 0.8 to 1.2 times the test voltage. A P21W of 460 lm at 13.5 V:
///
/// ```
/// use layshaft_core::electrical::lamp_lumens;
/// assert!((lamp_lumens(460.0, 13.5, 12.0) / 460.0 - 0.670).abs() < 0.0005);
/// assert!((lamp_lumens(460.0, 13.5, 14.4) / 460.0 - 1.245).abs() < 0.0005);
/// ```
pub fn lamp_lumens(lumens: f64, test_volts: f64, volts: f64) -> f64 {
    lumens * (volts / test_volts).powf(LIGHT)
}

/// Life of a filament lamp against that at its test voltage.
///
/// `L / L0 = (V / V0)^-13`; a lamp maker's “5 % more halves it” implies -14.2.
///
/// ```
/// use layshaft_core::electrical::lamp_life;
/// assert!((lamp_life(13.5, 13.5 * 1.05) - 0.5303).abs() < 0.0001);
/// assert!((lamp_life(13.5, 12.0) - 4.62).abs() < 0.01);
/// ```
pub fn lamp_life(test_volts: f64, volts: f64) -> f64 {
    (volts / test_volts).powf(LIFE)
}

/// One lamp at work.
#[wire]
pub struct LampAtWork {
    /// Voltage, volts.
    pub volts: f64,
    /// Watts of one lamp.
    pub watts: f64,
    /// Current of one lamp, amperes.
    pub amperes: f64,
    /// Light of one lamp, lumens, where it is known.
    pub lumens: Option<f64>,
    /// Life against that at the test voltage; none for what is no filament.
    pub life_share: Option<f64>,
    /// Warmth that holder and lens have to carry away, watts: what is not light.
    pub heat_watts: f64,
}

/// Lumens of a watt of light, about the middle of the visible: our round number, only to tell warmth from light.
const LUMENS_A_WATT_OF_LIGHT: f64 = 300.0;

/// One lamp of a consumer at a voltage; `test_volts` serves where the consumer does not say at which its watts hold.
///
/// ```
/// use layshaft_core::record::{Consumer, LightSource};
/// use layshaft_core::electrical::lamp_at_work;
/// let lamp = Consumer { watts: 25.0, count: 2, source: Some(LightSource::Filament), ..Consumer::default() };
/// let at = lamp_at_work(&lamp, 13.5, 12.6);
/// assert!((at.amperes - 1.7829).abs() < 0.00006);
/// ```
pub fn lamp_at_work(consumer: &Consumer, test_volts: f64, volts: f64) -> LampAtWork {
    let test_volts = consumer.test_volts.unwrap_or(test_volts);
    let filament = consumer.source == Some(LightSource::Filament);
    let watts = if filament {
        lamp_watts(consumer.watts, test_volts, volts)
    } else {
        consumer_watts(&Consumer { count: 1, ..consumer.clone() }, test_volts, volts)
    };
    let lumens = consumer.lumens.map(|lumens| if filament { lamp_lumens(lumens, test_volts, volts) } else { lumens });
    let light_watts = lumens.unwrap_or_default() / LUMENS_A_WATT_OF_LIGHT;
    LampAtWork {
        volts,
        watts,
        amperes: watts / volts,
        lumens,
        life_share: filament.then(|| lamp_life(test_volts, volts)),
        heat_watts: (watts - light_watts).max(0.0),
    }
}

/// Where the light and the life come from.
pub(crate) fn light_source() -> Source {
    Source::new(ElectricalSource::FilamentLight, Standing::SecondHand)
}

formula! {
    /// Watts of a filament lamp at another voltage.
    LampWatts in Electrics, "P = P₀ · (V / V₀)^1.55"
    takes {
        /// Watts at the test voltage.
        "P₀" watts: f64 = within(&bounds::WATTS);
        /// Test voltage, volts.
        "V₀" test_volts: f64 = within(&bounds::TEST_VOLTS);
        /// Voltage at the lamp, volts.
        "V" volts: f64 = within(&bounds::TEST_VOLTS);
    }
    gives {
        /// Power.
        watts "P" Watt;
    }
    from filament_law();
    it => Ok([lamp_watts(it.watts, it.test_volts, it.volts)])
}

formula! {
    /// Light and life of a filament lamp off its test voltage.
    LampLight in Electrics, "F = F₀ · (V / V₀)^3.4, L = (V / V₀)^(−13)"
    takes {
        /// Light at the test voltage, lumens.
        "F₀" lumens: f64 = within(&bounds::LUMENS);
        /// Test voltage, volts.
        "V₀" test_volts: f64 = within(&bounds::TEST_VOLTS);
        /// Voltage at the lamp, volts.
        "V" volts: f64 = within(&bounds::TEST_VOLTS);
    }
    gives {
        /// Light.
        lumens "F" Lumen;
        /// Life against that at the test voltage.
        life "L" None;
    }
    from light_source();
    it => Ok([lamp_lumens(it.lumens, it.test_volts, it.volts), lamp_life(it.test_volts, it.volts)])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rated_and_test_watts_of_the_seen_sheets_agree_with_the_lamp_law() {
        for card in lamp_cards().iter().filter(|card| card.lamp.starts_with("P21/5W")) {
            let at_12 = lamp_watts(card.watts, card.test_volts, 12.0);
            assert!((at_12 - card.marked_watts).abs() < 0.2, "{}: {at_12}", card.lamp);
        }
    }

    #[test]
    fn an_led_holds_its_light_and_is_nearly_all_warmth_in_a_filament() {
        let lamp = Consumer { watts: 25.0, count: 1, lumens: Some(460.0), ..Consumer::default() };
        let filament = lamp_at_work(&Consumer { source: Some(LightSource::Filament), ..lamp.clone() }, 13.5, 13.5);
        assert!(filament.heat_watts > 0.9 * filament.watts && filament.life_share == Some(1.0));
        let led = Consumer { watts: 2.0, source: Some(LightSource::Led), ..lamp };
        assert_eq!(lamp_at_work(&led, 13.5, 12.0).lumens, lamp_at_work(&led, 13.5, 14.4).lumens);
        assert_eq!(lamp_at_work(&led, 13.5, 12.0).life_share, None);
    }
}
