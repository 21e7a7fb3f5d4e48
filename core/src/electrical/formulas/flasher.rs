//! Flash rate: what the rule wants, how it is counted, and what a flasher makes of its load.
//!
//! Method: no law of rate against load is published for thermal flashers. A bimetal strip is taken as one thermal mass that
//! the square of the lamp current heats; what is not known (how far its contacts' two temperatures lie apart, its rate
//! at the rated load) is carried through as a range. The answer is a range, never a figure.

use layshaft_wire::wire;

use crate::bounds;
use crate::electrical::message::ElectricalSource;
use crate::error::Refused;
use crate::quantity::{FormulaSource, Source, Standing};
use crate::quantity::{formula, within};
use crate::record::FlasherKind;

/// Flashes a minute that the rules allow: 90 ± 30.
pub const FLASH_RULE: (f64, f64) = (60.0, 120.0);
/// Closing over opening temperature of the contacts, both as rises above the surroundings: our assumption of the extremes.
const CONTACTS: [f64; 2] = [0.5, 0.9];
/// Share of its load below which a two-terminal electronic flasher hurries: common practice, between half and nine tenths.
const HURRIES: [f64; 2] = [0.5, 0.9];
/// How much faster it then flashes: about twice, common practice.
const HURRY: f64 = 2.0;
/// Share of the load below which a two-terminal electronic flasher gets too little current to work at all: our assumption.
const STARVES: f64 = 0.05;

/// Flashes a minute, from and to. 0 stands for lamps that stay lit or dark.
#[wire]
pub struct FlashBand {
    /// Least, flashes a minute.
    pub from: f64,
    /// Most, flashes a minute.
    pub to: f64,
}

/// What to expect of the flashing.
#[wire]
pub enum Flashing {
    /// Inside 60 to 120, whatever the unknowns are.
    Right,
    /// It does not flash.
    Stops,
    /// Faster than 120.
    TooFast,
    /// It may be right or not: count.
    Count,
}

impl FlashBand {
    /// What the band means against the rule.
    pub fn flashing(&self) -> Flashing {
        let (least, most) = FLASH_RULE;
        if self.to <= 0.0 {
            Flashing::Stops
        } else if self.from >= least && self.to <= most {
            Flashing::Right
        } else if self.from > most {
            Flashing::TooFast
        } else {
            Flashing::Count
        }
    }
}

/// Flashes a minute of a thermal flasher at a share of its load.
///
/// `t_on = T ln((m i² - c)/(m i² - 1))`, `t_off = T ln(1/c)`, `m = 1 + c` (lit half of the time at the rated load),
/// `n = n0 2 t_off / (t_on + t_off)`; i = current over rated current, c = closing over opening temperature rise, n0 the
/// rate at the rated load. 0 where `m i² <= 1`: the strip never gets warm enough and the lamps stay lit.
/// Source: one thermal mass, first-order heating and cooling (computed); c and n0 are not known and given as ranges.
///
/// ```
/// use layshaft_core::electrical::thermal_rate;
/// assert!((thermal_rate(1.0, 0.6, 90.0) - 90.0).abs() < 1e-9);
/// assert_eq!(thermal_rate(0.5, 0.6, 90.0), 0.0); // one of two lamps is out: they stay lit
/// assert!(thermal_rate(1.2, 0.6, 90.0) > 90.0);
/// ```
pub fn thermal_rate(load_share: f64, contacts: f64, rated_rate: f64) -> f64 {
    let warmth = (1.0 + contacts) * load_share * load_share;
    if warmth <= 1.0 {
        return 0.0;
    }
    let lit = ((warmth - contacts) / (warmth - 1.0)).ln();
    let dark = (1.0 / contacts).ln();
    rated_rate * 2.0 * dark / (lit + dark)
}

/// The band of a flasher at a share of the load that it is made for.
///
/// A new flasher of any kind is made for 60 to 120 a minute at its load (the rule); `made_for` is what its maker says
/// instead. Thermal: [`thermal_rate`] over the ranges of what is not known. Electronic with two terminals: about twice as
/// fast below half to nine tenths of its load. With three terminals: the same at any load.
///
/// ```
/// use layshaft_core::record::FlasherKind;
/// use layshaft_core::electrical::{Flashing, flash_band};
/// assert_eq!(flash_band(FlasherKind::Thermal, 0.17, None).flashing(), Flashing::Stops);
/// assert_eq!(flash_band(FlasherKind::ElectronicTwo, 0.17, Some(85.0)).flashing(), Flashing::TooFast);
/// assert_eq!(flash_band(FlasherKind::ElectronicThree, 0.17, Some(85.0)).flashing(), Flashing::Right);
/// ```
pub fn flash_band(kind: FlasherKind, load_share: f64, made_for: Option<f64>) -> FlashBand {
    let (least, most) = made_for.map_or(FLASH_RULE, |rate| (rate, rate));
    match kind {
        FlasherKind::ElectronicThree => FlashBand { from: least, to: most },
        FlasherKind::ElectronicTwo if load_share < STARVES => FlashBand { from: 0.0, to: 0.0 },
        FlasherKind::ElectronicTwo => {
            let [always, never] = HURRIES;
            FlashBand {
                from: if load_share < always { HURRY * least } else { least },
                to: if load_share < never { HURRY * most } else { most },
            }
        }
        FlasherKind::Thermal => {
            let at = |contacts, rate| thermal_rate(load_share, contacts, rate);
            let all = CONTACTS.map(|contacts| [at(contacts, least), at(contacts, most)]);
            let each = all.iter().flatten().copied();
            FlashBand { from: each.clone().fold(f64::INFINITY, f64::min), to: each.fold(0.0, f64::max) }
        }
    }
}

/// Flashes a minute from a count: whole flashes over the time that they took.
///
/// The mean by total time. The mean of the single rates is another number: three flashes of 0.36, 0.36 and 0.78 s are 120 a
/// minute by time and 136.8 by rates; an interpretation letter of NHTSA (01931ztv) takes the rates, a count at the bench
/// can only give the time.
///
/// ```
/// use layshaft_core::electrical::counted_rate;
/// assert!((counted_rate(3, 0.45 + 0.45 + 1.05).unwrap() - 92.31).abs() < 0.005);
/// assert!((counted_rate(3, 0.36 + 0.36 + 0.78).unwrap() - 120.0).abs() < 1e-9);
/// ```
pub fn counted_rate(flashes: u32, seconds: f64) -> Result<f64, Refused> {
    crate::bounds::FLASHES.check(f64::from(flashes))?;
    crate::bounds::COUNTED_SECONDS.check(seconds)?;
    Ok(60.0 * f64::from(flashes) / seconds)
}

/// Where the rule comes from.
pub(crate) fn rule_source() -> Source {
    Source::new(ElectricalSource::FlashRule, Standing::Seen)
}

/// Where the bands come from.
pub(crate) fn band_source() -> Source {
    Source::new(ElectricalSource::FlashBands, Standing::CommonPractice)
}

formula! {
    /// Flashes a minute of a thermal flasher.
    ThermalFlasher in Electrics, "n = 2 · n₀ · t_off / (t_on + t_off), t_on = ln((m · i² − c) / (m · i² − 1)), t_off = ln(1 / c), m = 1 + c, i = load / 100"
    takes {
        /// Load over rated load, per cent.
        "load" load_percent: f64 = within(&bounds::FLASHER_LOAD);
        /// Closing over opening temperature rise of its contacts.
        "c" contacts: f64 = within(&bounds::FLASHER_CONTACTS);
        /// Flashes a minute at the rated load.
        "n₀" flashes_minute: f64 = within(&bounds::FLASH_RATE);
    }
    gives {
        /// Flashes a minute.
        flashes_minute "n" FlashesMinute;
    }
    from band_source();
    it => Ok([thermal_rate(it.load_percent / 100.0, it.contacts, it.flashes_minute)])
}

formula! {
    /// Flashes a minute from a count.
    CountedFlashes in Electrics, "n = 60 · N / t"
    takes {
        /// Flashes counted.
        "N" flashes: u32 = within(&bounds::FLASHES);
        /// Seconds that they took.
        "t" seconds: f64 = within(&bounds::COUNTED_SECONDS);
    }
    gives {
        /// Flashes a minute.
        flashes_minute "n" FlashesMinute;
    }
    from Source::new(FormulaSource::MeanOverTime, Standing::Computed);
    it => counted_rate(it.flashes, it.seconds).map(|rate| [rate])
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// The strip stepped through time: heating by the square of the current while the contacts are made.
    fn simulated(load_share: f64, contacts: f64, rated_rate: f64) -> f64 {
        // At the rated load: heating and cooling both take ln(1/c) time constants.
        let constant = 60.0 / rated_rate / (2.0 * (1.0 / contacts).ln());
        let (mut warm, mut lit, mut at, mut openings) = (contacts, true, 0.0, Vec::new());
        let by = constant / 20_000.0;
        while openings.len() < 4 && at < 60.0 {
            let source = if lit { (1.0 + contacts) * load_share * load_share } else { 0.0 };
            warm += by / constant * (source - warm);
            at += by;
            if lit && warm >= 1.0 {
                lit = false;
                openings.push(at);
            } else if !lit && warm <= contacts {
                lit = true;
            }
        }
        if openings.len() < 4 { 0.0 } else { 180.0 / (openings[3] - openings[0]) }
    }

    #[test]
    fn the_closed_form_is_that_of_the_strip_stepped_through_time() {
        for (share, contacts) in [(1.0, 0.6), (0.9, 0.6), (1.3, 0.8), (0.85, 0.5), (0.6, 0.7)] {
            let (closed, stepped) = (thermal_rate(share, contacts, 90.0), simulated(share, contacts, 90.0));
            assert!((closed - stepped).abs() < 0.2, "{share} {contacts}: {closed} {stepped}");
        }
    }

    #[test]
    fn as_made_a_thermal_flasher_must_be_counted_and_with_one_lamp_out_it_stops() {
        assert_eq!(flash_band(FlasherKind::Thermal, 1.0, None), FlashBand { from: 60.0, to: 120.0 });
        assert_eq!(flash_band(FlasherKind::Thermal, 0.5, None).flashing(), Flashing::Stops);
        assert_eq!(flash_band(FlasherKind::Thermal, 0.8, None).flashing(), Flashing::Count);
    }

    #[test]
    fn a_two_terminal_electronic_flasher_hurries_with_one_lamp_out_and_starves_on_nothing() {
        assert_eq!(flash_band(FlasherKind::ElectronicTwo, 0.49, Some(90.0)), FlashBand { from: 180.0, to: 180.0 });
        assert_eq!(flash_band(FlasherKind::ElectronicTwo, 1.0, None).flashing(), Flashing::Right);
        assert_eq!(flash_band(FlasherKind::ElectronicTwo, 0.01, None).flashing(), Flashing::Stops);
    }

    #[test]
    fn a_count_over_no_time_is_refused() {
        assert!(counted_rate(10, 0.0).is_err() && counted_rate(0, 10.0).is_err());
    }

    proptest! {
        #[test]
        fn more_load_never_slows_a_thermal_flasher(a in 0.1..2.0, b in 0.1..2.0, contacts in 0.3..0.95) {
            let rate = |share| thermal_rate(share, contacts, 90.0);
            prop_assert!(rate(f64::min(a, b)) <= rate(f64::max(a, b)) + 1e-9);
        }
    }
}
