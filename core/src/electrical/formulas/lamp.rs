//! Lamps by type, and one lamp at a real voltage: current, watts, light, warmth.
//!
//! Method: filament current `I ~ V^0.55`, watts `V^1.55`, light `V^3.4`, life `V^-13` (Fink and Beaty, *Standard Handbook
//! for Electrical Engineers*, 11th edition, page 22-8, second hand); LED lamps hold watts and light by their driver.

use std::sync::OnceLock;

use layshaft_wire::wire;
use serde::Deserialize;

use super::load::{consumer_watts, lamp_watts};
use super::sources::filament_law;
use crate::bounds;
use crate::content::Content;
use crate::electrical::message::{ElectricalMessage, ElectricalSource};
use crate::error::Refused;
use crate::quantity::{Source, Standing};
use crate::quantity::{formula, within};
use crate::record::{Consumer, LampCap, LightSource, Supply};
use crate::units::Unit;

/// Light of a filament goes with this power of its voltage.
const LIGHT: f64 = 3.4;
/// Life of a filament goes with this power of its voltage; 12 to 16 are given, 13 is usual.
const LIFE: f64 = -13.0;

/// Test voltage of a lamp against the nominal voltage of its system, least and most: 13.5 V of 12 V, with room for LED lamps that are
/// rated at 12 V or at 14.4 V. Our judgement.
const OF_THE_SYSTEM: (f64, f64) = (0.8, 1.35);

/// A type of filament lamp.
#[wire]
pub struct LampCard {
    /// What tells it from every other.
    pub id: String,
    /// Type as it stands on the box, second filament apart: `P21/5W tail`.
    pub lamp: String,
    /// Cap.
    pub cap: LampCap,
    /// Nominal voltage of the system that it is made for, volts.
    pub system_volts: f64,
    /// Watts as marked, at that voltage.
    pub marked_watts: f64,
    /// Watts at the test voltage.
    pub watts: f64,
    /// Test voltage, volts.
    pub test_volts: f64,
    /// Light at the test voltage, lumens, where it is known.
    pub lumens: Option<f64>,
    /// Where the figures come from.
    pub source: Source,
}

/// A line of `fixtures/lamps`.
#[derive(Clone, Deserialize)]
#[serde(rename_all = "camelCase")]
struct Line {
    id: String,
    lamp: String,
    cap: LampCap,
    system_volts: f64,
    marked_watts: f64,
    watts: f64,
    lumens: Option<f64>,
    test_volts: f64,
    standing: Standing,
}

#[derive(Clone, Default, Deserialize)]
struct Lines {
    lamp: Vec<Line>,
}

impl Line {
    fn card(self) -> LampCard {
        let lamp = self.lamp.clone();
        let said = match self.standing {
            Standing::Seen => ElectricalSource::LampDirective { lamp },
            Standing::SecondHand => ElectricalSource::LampQuoted { lamp },
            Standing::CommonPractice => ElectricalSource::LampUsual { lamp },
            _ => ElectricalSource::LampRegulation { lamp },
        };
        let source = Source::new(said, self.standing);
        let Self { id, lamp, cap, system_volts, marked_watts, watts, lumens, test_volts, .. } = self;
        LampCard { id, lamp, cap, system_volts, marked_watts, watts, test_volts, lumens, source }
    }
}

/// The types of filament lamps that are known here for a system voltage: those of 6 V below 9 V, half way, else those of 12 V.
///
/// ```
/// use layshaft_core::electrical::lamp_cards;
/// assert!(lamp_cards(6.0).iter().all(|card| card.test_volts < 9.0));
/// assert!(lamp_cards(12.0).iter().any(|card| card.lamp == "P21W"));
/// ```
pub fn lamp_cards(system_volts: f64) -> Vec<LampCard> {
    static LINES: OnceLock<Vec<Line>> = OnceLock::new();
    // A file that cannot be read is left out; a test holds that it can.
    let read = || Content::in_use().file::<Lines>("lamps", "filament").unwrap_or_default().lamp;
    let six = |volts: f64| volts < 9.0;
    let lines = LINES.get_or_init(read).iter();
    lines.filter(|line| six(line.system_volts) == six(system_volts)).cloned().map(Line::card).collect()
}

/// Refuses a lamp that is made for another voltage than the bike has: twice of it burns out at once, half of it glows.
pub fn check_lamp_volts(supply: &Supply, lamp: &Consumer) -> Result<(), Refused> {
    let is_lamp = matches!(lamp.source, Some(LightSource::Filament | LightSource::Led));
    let Some((system, test)) = supply.system_volts.zip(lamp.test_volts).filter(|_| is_lamp) else { return Ok(()) };
    let (least, most) = OF_THE_SYSTEM;
    if (least * system..=most * system).contains(&test) {
        return Ok(());
    }
    let reason = ElectricalMessage::LampOtherVoltage { made: Unit::Volt.of(test), system: Unit::Volt.of(system) };
    Err(Refused::Conflict { field: "testVolts".to_owned(), reason: reason.into() })
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
        let both = [lamp_cards(12.0), lamp_cards(6.0)].concat();
        for card in both.iter().filter(|card| card.lamp.starts_with("P21")) {
            let marked = lamp_watts(card.watts, card.test_volts, card.system_volts);
            assert!((marked - card.marked_watts).abs() < 0.2, "{}: {marked}", card.id);
        }
    }

    #[test]
    fn the_list_of_lamps_is_read_and_each_fits_the_voltage_that_it_is_offered_for() {
        for system in [6.0, 12.0] {
            let cards = lamp_cards(system);
            assert!(cards.len() > 12, "{system}: {}", cards.len());
            let supply = Supply { system_volts: Some(system), ..Supply::default() };
            let other = Supply { system_volts: Some(18.0 - system), ..Supply::default() };
            for card in cards {
                let lamp = Consumer {
                    test_volts: Some(card.test_volts),
                    source: Some(LightSource::Filament),
                    ..Consumer::default()
                };
                assert_eq!(check_lamp_volts(&supply, &lamp), Ok(()), "{}", card.id);
                assert!(check_lamp_volts(&other, &lamp).is_err(), "{}", card.id);
            }
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
