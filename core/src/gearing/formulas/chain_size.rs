//! Motorcycle chain sizes: pitch, inner width and roller diameter.
//!
//! Values: wemoto.co “Chain Dimensions” and motomaxsfr.com “motorcycle chain dimensions”, both second hand, compared with
//! each other; ISO 10190 is the standard behind them (not read). Where the two differ, a comment at
//! the row says how. The first digit of a size is its pitch in eighths of an inch, which the table confirms for every row.

use crate::error::Refused;
use crate::gearing::message::{GearingRefused, GearingSource};
use crate::message::{List, ListStyle, Message};
use crate::quantity::{Source, Standing};
use crate::record::ChainSize;

/// The dimensions of a chain size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChainDimensions {
    /// As written on the chain.
    pub name: &'static str,
    /// Distance from pin to pin, mm.
    pub pitch_mm: f64,
    /// Least width between the inner plates, mm.
    pub inner_width_mm: f64,
    /// Greatest roller diameter, mm.
    pub roller_mm: f64,
}

/// Every size of the table.
pub(crate) const ALL: [ChainSize; 8] = [
    ChainSize::C415,
    ChainSize::C420,
    ChainSize::C428,
    ChainSize::C520,
    ChainSize::C525,
    ChainSize::C530,
    ChainSize::C532,
    ChainSize::C630,
];

/// The dimensions of a chain size.
///
/// ```
/// use layshaft_core::record::ChainSize;
/// use layshaft_core::gearing::chain_dimensions;
/// // Same pitch and width, another roller: a 532 chain does not run on a 530 sprocket.
/// let (slim, thick) = (chain_dimensions(ChainSize::C530), chain_dimensions(ChainSize::C532));
/// assert_eq!(slim.pitch_mm, thick.pitch_mm);
/// assert!(slim.roller_mm < thick.roller_mm);
/// ```
pub const fn chain_dimensions(size: ChainSize) -> ChainDimensions {
    const HALF_INCH: f64 = 12.7;
    const FIVE_EIGHTHS: f64 = 15.875;
    const THREE_QUARTERS: f64 = 19.05;
    let (pitch_mm, inner_width_mm, roller_mm) = match size {
        // One source gives 4.88 mm width and a 7.75 mm roller.
        ChainSize::C415 => (HALF_INCH, 4.76, 7.77),
        // One source gives a 7.75 mm roller.
        ChainSize::C420 => (HALF_INCH, 6.35, 7.77),
        // 7.75 mm is the least width, 7.94 mm (5/16 in) the nominal one.
        ChainSize::C428 => (HALF_INCH, 7.75, 8.51),
        ChainSize::C520 => (FIVE_EIGHTHS, 6.35, 10.16),
        // One source gives 7.95 mm width.
        ChainSize::C525 => (FIVE_EIGHTHS, 7.85, 10.16),
        ChainSize::C530 => (FIVE_EIGHTHS, 9.53, 10.16),
        ChainSize::C532 => (FIVE_EIGHTHS, 9.53, 11.10),
        ChainSize::C630 => (THREE_QUARTERS, 9.53, 11.91),
    };
    ChainDimensions { name: size.number(), pitch_mm, inner_width_mm, roller_mm }
}

/// Pitch of a chain size, mm.
///
/// ```
/// use layshaft_core::record::ChainSize;
/// use layshaft_core::gearing::pitch;
/// assert_eq!(pitch(ChainSize::C428), 12.7);
/// ```
pub const fn pitch(size: ChainSize) -> f64 {
    chain_dimensions(size).pitch_mm
}

/// The size of a name as written on the chain.
///
/// ```
/// use layshaft_core::record::ChainSize;
/// use layshaft_core::gearing::chain_size_named;
/// assert_eq!(chain_size_named("chainSize", "520"), Ok(ChainSize::C520));
/// assert!(chain_size_named("chainSize", "999").is_err());
/// ```
pub fn chain_size_named(field: &str, name: &str) -> Result<ChainSize, Refused> {
    let found = ALL.into_iter().find(|size| chain_dimensions(*size).name == name.trim());
    found.ok_or_else(|| Refused::Unreadable {
        field: field.to_owned(),
        label: GearingRefused::LabelChainSize.into(),
        reason: GearingRefused::NotInTable {
            name: name.to_owned(),
            sizes: List(ListStyle::Comma, ALL.map(|size| Message::as_entered(chain_dimensions(size).name)).to_vec()),
        }
        .into(),
    })
}

/// Where the dimensions come from.
pub fn chain_size_source() -> Source {
    Source::new(GearingSource::ChainSizes, Standing::SecondHand)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_digit_is_the_pitch_in_eighths_of_an_inch() {
        for size in ALL {
            let dimensions = chain_dimensions(size);
            let eighths = f64::from(dimensions.name.chars().next().unwrap().to_digit(10).unwrap());
            assert!((dimensions.pitch_mm - eighths / 8.0 * 25.4).abs() < 1e-12, "{}", dimensions.name);
        }
    }

    #[test]
    fn no_two_sizes_are_the_same_chain() {
        for (at, one) in ALL.iter().enumerate() {
            for other in &ALL[at + 1..] {
                let (one, other) = (chain_dimensions(*one), chain_dimensions(*other));
                let same = (one.pitch_mm, one.inner_width_mm, one.roller_mm)
                    == (other.pitch_mm, other.inner_width_mm, other.roller_mm);
                assert!(!same, "{} and {}", one.name, other.name);
            }
        }
    }
}
