//! Threads: their geometry, and the tables of those that are met on motorcycles.
//!
//! Metric ISO 261/262, old JIS, UNC/UNF (ASME B1.1), BSW/BSF (BS 84), cycle thread (BS 811). Tables from memory unless said
//! otherwise, so they are unconfirmed; the metric coarse pitches were also read in two published tables.

use std::f64::consts::PI;

use layshaft_wire::wire;

use crate::fasteners::message::ThreadMessage;
use crate::message::Message;

/// Millimetres in an inch (exact by definition).
pub const INCH_MM: f64 = 25.4;

/// Family of a thread.
#[wire]
pub enum ThreadFamily {
    /// ISO metric, coarse pitch.
    MetricCoarse,
    /// ISO metric, fine pitch.
    MetricFine,
    /// Old Japanese pitches of the small sizes, before JIS went over to ISO.
    OldJis,
    /// Unified coarse.
    Unc,
    /// Unified fine.
    Unf,
    /// British Standard Whitworth.
    Whitworth,
    /// British Standard Fine.
    Bsf,
    /// British cycle thread.
    Cycle,
}

/// A thread of the tables.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// Family.
    pub family: ThreadFamily,
    /// As one writes it.
    pub name: &'static str,
    /// Nominal outer diameter, mm.
    pub diameter_mm: f64,
    /// Pitch, mm.
    pub pitch_mm: f64,
}

impl ThreadFamily {
    /// A fine thread of its kind.
    pub(crate) fn is_fine(self) -> bool {
        matches!(self, Self::MetricFine | Self::Unf | Self::Bsf | Self::Cycle)
    }

    /// In words.
    pub fn words(self) -> Message {
        match self {
            Self::MetricCoarse => ThreadMessage::FamilyMetricCoarse,
            Self::MetricFine => ThreadMessage::FamilyMetricFine,
            Self::OldJis => ThreadMessage::FamilyOldJis,
            Self::Unc => ThreadMessage::FamilyUnc,
            Self::Unf => ThreadMessage::FamilyUnf,
            Self::Whitworth => ThreadMessage::FamilyWhitworth,
            Self::Bsf => ThreadMessage::FamilyBsf,
            Self::Cycle => ThreadMessage::FamilyCycle,
        }
        .into()
    }

    /// Angle of the flanks, degrees.
    pub fn flank_degrees(self) -> f64 {
        match self {
            Self::Whitworth | Self::Bsf => 55.0,
            _ => 60.0,
        }
    }

    /// Sized in inches.
    pub fn inch(self) -> bool {
        matches!(self, Self::Unc | Self::Unf | Self::Whitworth | Self::Bsf | Self::Cycle)
    }
}

use ThreadFamily::{Bsf, Cycle, MetricCoarse, MetricFine, OldJis, Unc, Unf, Whitworth};

const fn metric(family: ThreadFamily, name: &'static str, diameter_mm: f64, pitch_mm: f64) -> Thread {
    Thread { family, name, diameter_mm, pitch_mm }
}

const fn inch(family: ThreadFamily, name: &'static str, diameter_in: f64, turns: f64) -> Thread {
    Thread { family, name, diameter_mm: diameter_in * INCH_MM, pitch_mm: INCH_MM / turns }
}

/// Every thread that is looked for.
pub const THREADS: &[Thread] = &[
    metric(MetricCoarse, "M3 × 0.5", 3.0, 0.5),
    metric(MetricCoarse, "M4 × 0.7", 4.0, 0.7),
    metric(MetricCoarse, "M5 × 0.8", 5.0, 0.8),
    metric(MetricCoarse, "M6 × 1", 6.0, 1.0),
    metric(MetricCoarse, "M7 × 1", 7.0, 1.0),
    metric(MetricCoarse, "M8 × 1.25", 8.0, 1.25),
    metric(MetricCoarse, "M10 × 1.5", 10.0, 1.5),
    metric(MetricCoarse, "M12 × 1.75", 12.0, 1.75),
    metric(MetricCoarse, "M14 × 2", 14.0, 2.0),
    metric(MetricCoarse, "M16 × 2", 16.0, 2.0),
    metric(MetricCoarse, "M18 × 2.5", 18.0, 2.5),
    metric(MetricCoarse, "M20 × 2.5", 20.0, 2.5),
    metric(MetricFine, "M8 × 1", 8.0, 1.0),
    metric(MetricFine, "M10 × 1", 10.0, 1.0),
    metric(MetricFine, "M10 × 1.25", 10.0, 1.25),
    metric(MetricFine, "M12 × 1.25", 12.0, 1.25),
    metric(MetricFine, "M12 × 1.5", 12.0, 1.5),
    metric(MetricFine, "M14 × 1.25", 14.0, 1.25),
    metric(MetricFine, "M14 × 1.5", 14.0, 1.5),
    metric(MetricFine, "M16 × 1.5", 16.0, 1.5),
    metric(MetricFine, "M18 × 1.5", 18.0, 1.5),
    metric(MetricFine, "M20 × 1.5", 20.0, 1.5),
    metric(OldJis, "M3 × 0.6", 3.0, 0.6),
    metric(OldJis, "M4 × 0.75", 4.0, 0.75),
    metric(OldJis, "M5 × 0.9", 5.0, 0.9),
    inch(Unc, "No. 6-32 UNC", 0.138, 32.0),
    inch(Unc, "No. 8-32 UNC", 0.164, 32.0),
    inch(Unc, "No. 10-24 UNC", 0.190, 24.0),
    inch(Unc, "1/4-20 UNC", 0.25, 20.0),
    inch(Unc, "5/16-18 UNC", 0.3125, 18.0),
    inch(Unc, "3/8-16 UNC", 0.375, 16.0),
    inch(Unc, "7/16-14 UNC", 0.4375, 14.0),
    inch(Unc, "1/2-13 UNC", 0.5, 13.0),
    inch(Unc, "9/16-12 UNC", 0.5625, 12.0),
    inch(Unc, "5/8-11 UNC", 0.625, 11.0),
    inch(Unf, "No. 8-36 UNF", 0.164, 36.0),
    inch(Unf, "No. 10-32 UNF", 0.190, 32.0),
    inch(Unf, "1/4-28 UNF", 0.25, 28.0),
    inch(Unf, "5/16-24 UNF", 0.3125, 24.0),
    inch(Unf, "3/8-24 UNF", 0.375, 24.0),
    inch(Unf, "7/16-20 UNF", 0.4375, 20.0),
    inch(Unf, "1/2-20 UNF", 0.5, 20.0),
    inch(Unf, "9/16-18 UNF", 0.5625, 18.0),
    inch(Unf, "5/8-18 UNF", 0.625, 18.0),
    inch(Whitworth, "1/8-40 BSW", 0.125, 40.0),
    inch(Whitworth, "3/16-24 BSW", 0.1875, 24.0),
    inch(Whitworth, "1/4-20 BSW", 0.25, 20.0),
    inch(Whitworth, "5/16-18 BSW", 0.3125, 18.0),
    inch(Whitworth, "3/8-16 BSW", 0.375, 16.0),
    inch(Whitworth, "7/16-14 BSW", 0.4375, 14.0),
    inch(Whitworth, "1/2-12 BSW", 0.5, 12.0),
    inch(Whitworth, "5/8-11 BSW", 0.625, 11.0),
    inch(Bsf, "3/16-32 BSF", 0.1875, 32.0),
    inch(Bsf, "1/4-26 BSF", 0.25, 26.0),
    inch(Bsf, "5/16-22 BSF", 0.3125, 22.0),
    inch(Bsf, "3/8-20 BSF", 0.375, 20.0),
    inch(Bsf, "7/16-18 BSF", 0.4375, 18.0),
    inch(Bsf, "1/2-16 BSF", 0.5, 16.0),
    inch(Bsf, "9/16-16 BSF", 0.5625, 16.0),
    inch(Bsf, "5/8-14 BSF", 0.625, 14.0),
    inch(Cycle, "1/4-26 cycle", 0.25, 26.0),
    inch(Cycle, "5/16-26 cycle", 0.3125, 26.0),
    inch(Cycle, "3/8-26 cycle", 0.375, 26.0),
    inch(Cycle, "7/16-26 cycle", 0.4375, 26.0),
    inch(Cycle, "1/2-26 cycle", 0.5, 26.0),
];

/// Mean flank diameter, mm: `d₂ = d − 0.64952 · P`.
///
/// Source: ISO 724, basic profile of 60° (from memory). Range: 60° threads; `d` and `P` in mm.
///
/// ```
/// assert!((layshaft_core::fasteners::flank_diameter(10.0, 1.5) - 9.02572).abs() < 5e-6);
/// ```
pub fn flank_diameter(diameter_mm: f64, pitch_mm: f64) -> f64 {
    diameter_mm - 0.649_52 * pitch_mm
}

/// Core diameter of the screw, mm: `d₃ = d − 1.22687 · P`.
///
/// Source: ISO 724 / ISO 898-1 (from memory). Range: as [`flank_diameter`].
///
/// ```
/// assert!((layshaft_core::fasteners::core_diameter(10.0, 1.5) - 8.159695).abs() < 5e-7);
/// ```
pub fn core_diameter(diameter_mm: f64, pitch_mm: f64) -> f64 {
    diameter_mm - 1.226_87 * pitch_mm
}

/// Stress area of a screw, mm².
///
/// `A_s = π/4 · ((d₂ + d₃) / 2)²`, `d₂`, `d₃` in mm.
///
/// Source: ISO 898-1, 9.1.6 (from memory), proved against the published areas at engineersedge.com “metric thread stress and
/// shear areas” (second hand; every printed digit agrees). Range: 60° threads.
///
/// ```
/// assert!((layshaft_core::fasteners::stress_area(10.0, 1.5) - 57.990).abs() < 5e-4);
/// ```
pub fn stress_area(diameter_mm: f64, pitch_mm: f64) -> f64 {
    let mean = (flank_diameter(diameter_mm, pitch_mm) + core_diameter(diameter_mm, pitch_mm)) / 2.0;
    PI * mean * mean / 4.0
}

/// Pitch, mm, of a thread with so many turns to the inch: `P = 25.4 / n`.
///
/// Source: definition of the inch; exact. Range: `n` above zero.
///
/// ```
/// assert_eq!(layshaft_core::fasteners::pitch_of_turns(20.0), 1.27);
/// ```
pub fn pitch_of_turns(turns_per_inch: f64) -> f64 {
    INCH_MM / turns_per_inch
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_areas_are_the_published_ones() {
        for (d, p, wanted, within) in [
            (5.0, 0.8, 14.183, 6e-4),
            (6.0, 1.0, 20.123, 6e-4),
            (8.0, 1.25, 36.609, 6e-4),
            (10.0, 1.5, 57.990, 6e-4),
            (12.0, 1.75, 84.267, 6e-4),
            (14.0, 2.0, 115.44, 6e-3),
            (16.0, 2.0, 156.67, 6e-3),
            (8.0, 1.0, 39.167, 6e-4),
            (10.0, 1.25, 61.199, 6e-4),
            (12.0, 1.25, 92.072, 6e-4),
            (12.0, 1.5, 88.126, 6e-4),
            (14.0, 1.5, 124.546, 6e-4),
            (16.0, 1.5, 167.248, 6e-4),
        ] {
            assert!((stress_area(d, p) - wanted).abs() < within, "M{d} × {p}: {}", stress_area(d, p));
        }
    }

    #[test]
    fn every_thread_is_named_by_its_size_and_stands_once() {
        for (at, thread) in THREADS.iter().enumerate() {
            assert!(THREADS[at + 1..].iter().all(|other| other.name != thread.name), "{}", thread.name);
            if thread.family.inch() {
                let turns = INCH_MM / thread.pitch_mm;
                assert!(thread.name.contains(&format!("-{turns:.0} ")), "{}", thread.name);
            } else {
                assert_eq!(thread.name, format!("M{} × {}", thread.diameter_mm, thread.pitch_mm));
            }
        }
    }
}
