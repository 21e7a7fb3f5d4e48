//! Blade fuses: ratings, the time they take, and which one stands between a load and a wire.

use layshaft_wire::wire;

use crate::bounds;
use crate::electrical::message::{ElectricalSource, FuseColour};
use crate::quantity::{FormulaSource, Source, Standing, formula, within};

/// Ratings of blade fuses and their colours, amperes. Second hand, from published test data that cite ISO 8820-3.
pub const BLADE_FUSES: [(f64, FuseColour); 10] = [
    (2.0, FuseColour::Grey),
    (3.0, FuseColour::Violet),
    (5.0, FuseColour::Tan),
    (7.5, FuseColour::Brown),
    (10.0, FuseColour::Red),
    (15.0, FuseColour::Blue),
    (20.0, FuseColour::Yellow),
    (25.0, FuseColour::WhiteOrClear),
    (30.0, FuseColour::Green),
    (40.0, FuseColour::Orange),
];

/// Share of its rating that a fuse carries for long, common practice (0.75 to 0.8; from memory).
pub(crate) const CARRIED: f64 = 0.8;

/// From this multiple of its rating on a fuse is certain to blow.
pub const BLOWS_FROM: f64 = 1.35;

/// Multiple of the rating, least and most seconds until it blows.
pub(crate) const TIMES: [(f64, f64, f64); 5] =
    [(1.35, 0.75, 600.0), (1.6, 0.25, 50.0), (2.0, 0.15, 5.0), (3.5, 0.08, 0.5), (6.0, 0.03, 0.1)];

/// How long a fuse lasts at a current.
#[wire]
pub struct TimeBand {
    /// It does not blow sooner than this, seconds.
    pub least_seconds: f64,
    /// It has blown by this time, seconds; none when it may last for ever.
    pub most_seconds: Option<f64>,
}

/// How long a blade fuse lasts at a current.
///
/// ISO 8820-3 type C and F as restated in data sheets (second hand): 110 % at least 100 h; 135 % 0.75 to 600 s; 160 % 0.25 to
/// 50 s; 200 % 0.15 to 5 s; 350 % 0.08 to 0.5 s; 600 % 0.03 to 0.1 s. Between two of them the band runs from the least of
/// the higher to the most of the lower, because a fuse never lasts longer at more current; nothing is interpolated.
///
/// ```
/// use layshaft_core::electrical::fuse_time;
/// let band = fuse_time(10.0, 18.9);
/// assert_eq!((band.least_seconds, band.most_seconds), (0.15, Some(50.0))); // it may take its time
/// assert_eq!(fuse_time(10.0, 11.0).most_seconds, None);
/// ```
pub fn fuse_time(rated_amperes: f64, amperes: f64) -> TimeBand {
    let multiple = amperes / rated_amperes;
    if multiple <= 1.1 {
        return TimeBand { least_seconds: 360_000.0, most_seconds: None };
    }
    let least_seconds = TIMES.iter().find(|(at, _, _)| *at >= multiple).map_or(0.0, |(_, least, _)| *least);
    let most_seconds = TIMES.iter().rev().find(|(at, _, _)| *at <= multiple).map(|(_, _, most)| *most);
    TimeBand { least_seconds, most_seconds }
}

/// Least rating of a fuse that carries a load for long, amperes: `I_F = I / 0.8`, common practice (from memory).
///
/// ```
/// assert_eq!(layshaft_core::electrical::least_fuse(8.0), 10.0);
/// ```
pub fn least_fuse(load_amperes: f64) -> f64 {
    load_amperes / CARRIED
}

formula! {
    /// Least rating of a fuse.
    LeastFuse in Electrics, "I_F = I / 0.8"
    takes {
        /// Current of the load, amperes.
        "I" amperes: f64 = within(&bounds::AMPERES);
    }
    gives {
        /// Rating.
        rating "I_F" Ampere;
    }
    from Source::new(FormulaSource::FuseRating, Standing::CommonPractice);
    it => Ok([least_fuse(it.amperes)])
}

/// Smallest blade fuse that carries a load for long and does not exceed what the wire may carry, amperes and colour.
///
/// `I / 0.8 <= rating <= ampacity`, amperes; common practice (from memory).
///
/// ```
/// use layshaft_core::electrical::{FuseColour, fuse_between};
/// assert_eq!(fuse_between(5.0, 9.0), Some((7.5, FuseColour::Brown)));
/// assert_eq!(fuse_between(6.5, 9.0), None); // 8.1 A wanted, the next fuse is 10 A and the wire takes 9 A
/// ```
pub fn fuse_between(load_amperes: f64, may_carry_amperes: f64) -> Option<(f64, FuseColour)> {
    let wanted = least_fuse(load_amperes);
    BLADE_FUSES
        .into_iter()
        .find(|(rating, _)| *rating >= wanted - 1e-9)
        .filter(|(rating, _)| *rating <= may_carry_amperes)
}

/// Where the fuse times come from.
pub(crate) fn fuse_source() -> Source {
    Source::new(ElectricalSource::Fuses, Standing::SecondHand)
}
