//! Wire: section of a gauge, resistance, voltage drop, and the current that it may carry.
//!
//! Method: resistance from the table of IEC 60228 (greatest resistance at 20 °C) with the temperature coefficient of
//! IEC 60028; the drop decides first, then a conservative list of currents. Lists of currents differ by a factor of two
//! between publishers, so the list that was used is always named.

use layshaft_wire::wire;

use crate::bounds;
use crate::electrical::message::ElectricalSource;
use crate::error::Refused;
use crate::quantity::{Source, Standing};

/// Resistivity of annealed copper at 20 °C, ohm square millimetres a metre (IEC 60028, second hand).
const COPPER: f64 = 1.0 / 58.0;
/// Change of the resistance of copper per kelvin, from 20 °C (IEC 60028, second hand).
const PER_KELVIN: f64 = 0.003_93;

/// How a conductor is made.
#[wire]
pub enum Conductor {
    /// Pure copper of exactly the section, no allowance: the physical floor.
    Ideal,
    /// Solid or stranded, plain (IEC 60228 class 1 and 2).
    Solid,
    /// Flexible, plain (class 5 and 6): what a harness is made of.
    Flexible,
    /// Flexible, tinned (class 5 and 6).
    Tinned,
}

/// Greatest resistance at 20 °C, mΩ/m, by section, mm²: class 1 and 2 plain, class 5 and 6 plain, class 5 and 6 tinned.
/// IEC 60228 as restated in an extract of DIN VDE 0295 (second hand) up to 2.5 mm²; from memory above, unconfirmed.
const GREATEST: [(f64, [f64; 3]); 10] = [
    (0.5, [36.0, 39.0, 40.1]),
    (0.75, [24.5, 26.0, 26.7]),
    (1.0, [18.1, 19.5, 20.0]),
    (1.5, [12.1, 13.3, 13.7]),
    (2.5, [7.41, 7.98, 8.21]),
    (4.0, [4.61, 4.95, 5.09]),
    (6.0, [3.08, 3.30, 3.39]),
    (10.0, [1.83, 1.91, 1.95]),
    (16.0, [1.15, 1.21, 1.24]),
    (25.0, [0.727, 0.780, 0.795]),
];

/// Diameter of a wire of the American gauge, millimetres; gauges 1/0 to 4/0 are 0 to -3.
///
/// `d = 0.127 mm 92^((36 - n)/39)`. Source: ASTM B258 (second hand); exact at the two ends that define it.
///
/// ```
/// use layshaft_core::electrical::gauge_diameter;
/// assert!((gauge_diameter(18) - 1.0237).abs() < 0.00005);
/// assert!((gauge_diameter(36) - 0.127).abs() < 1e-12 && (gauge_diameter(-3) - 11.684).abs() < 1e-9);
/// ```
pub fn gauge_diameter(gauge: i32) -> f64 {
    0.127 * 92_f64.powf((36.0 - f64::from(gauge)) / 39.0)
}

/// Section of a wire of the American gauge, square millimetres.
///
/// `A = π d² / 4`, d from [`gauge_diameter`].
///
/// ```
/// use layshaft_core::electrical::gauge_section;
/// assert!((gauge_section(14) - 2.0809).abs() < 0.00005);
/// ```
pub fn gauge_section(gauge: i32) -> f64 {
    std::f64::consts::FRAC_PI_4 * gauge_diameter(gauge).powi(2)
}

/// Resistance of a wire, mΩ a metre of conductor.
///
/// `R' = R'20 (1 + 0.00393 (T - 20))`, T in °C. R'20 is the greatest that IEC 60228 allows for the section; between two
/// sections of the table, copper of exactly that section times the greater of the two makers' allowances beside it; outside
/// the table the allowance at its end. An ideal conductor has `R'20 = 1000/58/A`. Range: -30 to 120 °C.
///
/// ```
/// use layshaft_core::electrical::{Conductor, gauge_section, wire_resistance};
/// assert_eq!(wire_resistance(1.0, Conductor::Flexible, 20.0), 19.5);
/// assert!((wire_resistance(gauge_section(18), Conductor::Ideal, 20.0) - 20.948).abs() < 0.0005);
/// assert!((wire_resistance(1.0, Conductor::Ideal, 80.0) / wire_resistance(1.0, Conductor::Ideal, 20.0) - 1.2358).abs() < 5e-5);
/// ```
pub fn wire_resistance(section_mm2: f64, conductor: Conductor, celsius: f64) -> f64 {
    let ideal = 1000.0 * COPPER / section_mm2;
    let at_20 = match conductor {
        Conductor::Ideal => ideal,
        Conductor::Solid => tabulated(section_mm2, |[solid, _, _]| solid),
        Conductor::Flexible => tabulated(section_mm2, |[_, flexible, _]| flexible),
        Conductor::Tinned => tabulated(section_mm2, |[_, _, tinned]| tinned),
    };
    at_20 * (1.0 + PER_KELVIN * (celsius - 20.0))
}

fn tabulated(section_mm2: f64, column: fn([f64; 3]) -> f64) -> f64 {
    let allowance = |(section, row): (f64, [f64; 3])| column(row) * section / (1000.0 * COPPER);
    let mut below = None;
    for row in GREATEST {
        if (row.0 - section_mm2).abs() < 1e-9 {
            return column(row.1);
        }
        if row.0 > section_mm2 {
            let greater = below.map_or(0.0, allowance).max(allowance(row));
            return 1000.0 * COPPER / section_mm2 * greater;
        }
        below = Some(row);
    }
    1000.0 * COPPER / section_mm2 * below.map_or(1.0, allowance)
}

/// Voltage lost in a wire and its return, volts.
///
/// `V = I R' (out + back)`, I in amperes, R' in mΩ/m, lengths in metres. A published sheet of towing cable gives 0.827 V for
/// 8.75 A in 5 m of 18.9 mΩ/m:
///
/// ```
/// use layshaft_core::electrical::voltage_drop;
/// assert!((voltage_drop(8.75, 18.9, 5.0, 0.0) - 0.827).abs() < 0.0005);
/// ```
pub fn voltage_drop(amperes: f64, milliohms_per_metre: f64, out_metres: f64, back_metres: f64) -> f64 {
    amperes * milliohms_per_metre / 1000.0 * (out_metres + back_metres)
}

/// Whose list of currents a wire is judged by.
#[wire]
pub enum CurrentList {
    /// A maker's list for bundled wire in a vehicle: the lowest, and the one taken when nothing is said.
    Conservative,
    /// A list for towing cable.
    Towing,
    /// Catalogue ratings of thin-wall wire, single and in free air. From memory, unconfirmed.
    ThinWall,
}

impl CurrentList {
    /// The list, section in mm² and current in amperes, smallest first.
    pub fn rows(self) -> &'static [(f64, f64)] {
        match self {
            Self::Conservative => {
                &[(0.5, 5.0), (0.75, 7.0), (1.0, 9.0), (1.5, 13.0), (2.0, 15.0), (2.5, 17.0), (6.0, 35.0), (25.0, 80.0)]
            }
            Self::Towing => &[(1.0, 8.75), (1.5, 12.75), (2.0, 17.5), (2.5, 21.75)],
            Self::ThinWall => &[(0.5, 11.0), (1.0, 16.5), (2.0, 25.0)],
        }
    }

    /// Where the list comes from.
    pub fn source(self) -> Source {
        match self {
            Self::Conservative => Source::new(ElectricalSource::ListConservative, Standing::SecondHand),
            Self::Towing => Source::new(ElectricalSource::ListTowing, Standing::SecondHand),
            Self::ThinWall => Source::new(ElectricalSource::ListThinWall, Standing::Memory),
        }
    }
}

/// Current that a wire may carry by a list, amperes: that of the largest listed section that is not larger; none below the list.
///
/// ```
/// use layshaft_core::electrical::{CurrentList, ampacity};
/// assert_eq!(ampacity(CurrentList::Conservative, 1.0), Some(9.0));
/// assert_eq!(ampacity(CurrentList::Conservative, 4.0), Some(17.0)); // as 2.5 mm²: the list has nothing between
/// assert_eq!(ampacity(CurrentList::Towing, 0.75), None);
/// ```
pub fn ampacity(list: CurrentList, section_mm2: f64) -> Option<f64> {
    list.rows().iter().rev().find(|(section, _)| *section <= section_mm2 + 1e-9).map(|(_, amperes)| *amperes)
}

/// A piece of wire checked against the accepted ranges: section in mm², length in metres, temperature in °C.
pub fn check_wire(section_mm2: f64, length_metres: f64, celsius: f64) -> Result<(), Refused> {
    bounds::WIRE_SECTION.check(section_mm2)?;
    bounds::WIRE_LENGTH.check(length_metres)?;
    bounds::WIRE_TEMPERATURE.check(celsius)?;
    Ok(())
}

/// Where the resistances come from.
pub(crate) fn wire_sources() -> [Source; 2] {
    [
        Source::new(ElectricalSource::WireTable, Standing::SecondHand),
        Source::new(ElectricalSource::Copper, Standing::SecondHand),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gauges_have_the_checked_diameter_and_section() {
        let checked = [
            (10, 2.5882, 5.2612),
            (14, 1.6277, 2.0809),
            (16, 1.2908, 1.3087),
            (18, 1.0237, 0.8230),
            (20, 0.8118, 0.5176),
        ];
        for (gauge, diameter, section) in checked {
            assert!((gauge_diameter(gauge) - diameter).abs() < 0.00006, "{gauge}");
            assert!((gauge_section(gauge) - section).abs() < 0.00006, "{gauge}");
        }
        // 36 and 4/0 define the gauge: 0.0050 and 0.4600 inch.
        assert!((gauge_diameter(36) / 25.4 - 0.005).abs() < 1e-12);
        assert!((gauge_diameter(-3) / 25.4 - 0.46).abs() < 1e-12);
        assert!((92_f64.powf(1.0 / 39.0) - 1.122_932_2).abs() < 5e-8);
    }

    #[test]
    fn the_drop_of_a_metric_wire_out_and_back_cold_and_warm() {
        let drop = |celsius| voltage_drop(5.0, wire_resistance(1.0, Conductor::Flexible, celsius), 2.0, 2.0);
        assert!((drop(20.0) - 0.390).abs() < 0.0005, "{}", drop(20.0));
        assert!((drop(60.0) - 0.451).abs() < 0.0005, "{}", drop(60.0));
        assert!((voltage_drop(17.5, 9.4, 5.0, 0.0) - 0.823).abs() < 0.0006);
        assert!((voltage_drop(25.5, 6.0, 5.0, 0.0) - 0.765).abs() < 0.0006);
    }

    #[test]
    fn the_allowance_of_the_maker_is_no_constant_and_so_the_table_is_used() {
        let allowance = |section| {
            wire_resistance(section, Conductor::Flexible, 20.0) / wire_resistance(section, Conductor::Ideal, 20.0)
        };
        assert!((allowance(0.5) - 1.131).abs() < 0.0005 && (allowance(1.5) - 1.157).abs() < 0.0005);
        assert!((allowance(2.5) - 1.157).abs() < 0.0005 && (allowance(2.0) - 1.157).abs() < 0.0005);
    }

    #[test]
    fn a_larger_or_cooler_wire_never_has_more_resistance() {
        for conductor in [Conductor::Ideal, Conductor::Solid, Conductor::Flexible, Conductor::Tinned] {
            let mut last = f64::INFINITY;
            for hundredths in 20..3000 {
                let now = wire_resistance(f64::from(hundredths) / 100.0, conductor, 20.0);
                assert!(now <= last * 1.02, "{conductor:?} {hundredths}: {now} after {last}");
                assert!(wire_resistance(f64::from(hundredths) / 100.0, conductor, 60.0) > now);
                last = now;
            }
        }
    }

    #[test]
    fn lists_of_currents_rise_with_the_section() {
        for list in [CurrentList::Conservative, CurrentList::Towing, CurrentList::ThinWall] {
            assert!(list.rows().windows(2).all(|pair| pair[0].0 < pair[1].0 && pair[0].1 < pair[1].1));
        }
    }

    #[test]
    fn a_wire_of_no_length_or_no_section_is_refused_by_name() {
        let text = check_wire(1.0, 0.0, 20.0).unwrap_err().english();
        assert!(text.starts_with("Length of wire: 0 m is outside"), "{text}");
        assert!(check_wire(0.0, 1.0, 20.0).is_err() && check_wire(1.0, 1.0, f64::NAN).is_err());
    }
}
