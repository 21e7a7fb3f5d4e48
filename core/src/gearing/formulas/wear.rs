//! Elongation of a chain and the length that it makes.

/// Elongation of a chain, per cent.
///
/// `e = (L / (n·p) − 1) · 100`
///
/// - `L` length over `n` pitches, pulled taut, mm; `p` pitch, mm
///
/// Source: definition; the measuring and 254.0 → 261.6 mm, 317.5 → 327.0 mm over 20 pitches at 3 % stand at motorcyclechain.top
/// “how to measure motorcycle chain wear” (second hand). Range: `n` at least 1; measured pin to pin, several places.
///
/// ```
/// let percent = layshaft_core::gearing::elongation(261.6, 20, 12.7);
/// assert!((percent - 3.0).abs() < 0.01);
/// ```
pub fn elongation(measured_mm: f64, pitches: u32, pitch_mm: f64) -> f64 {
    (measured_mm / (f64::from(pitches) * pitch_mm) - 1.0) * 100.0
}

/// Length over a number of pitches at an elongation, mm: [`elongation`] turned round.
///
/// ```
/// let mm = layshaft_core::gearing::worn_length(20, 15.875, 3.0);
/// assert!((mm - 327.0).abs() < 0.05);
/// ```
pub fn worn_length(pitches: u32, pitch_mm: f64, elongation_percent: f64) -> f64 {
    f64::from(pitches) * pitch_mm * (1.0 + elongation_percent / 100.0)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_published_lengths_at_three_per_cent_come_out() {
        for (pitch, new, worn) in [(12.7, 254.0, 261.6), (15.875, 317.5, 327.0)] {
            assert!((worn_length(20, pitch, 0.0) - new).abs() < 1e-9);
            assert!((worn_length(20, pitch, 3.0) - worn).abs() < 0.05);
        }
    }

    proptest! {
        #[test]
        fn elongation_and_length_lead_back_to_each_other(pitches in 4u32..150, percent in -1.0..5.0) {
            let mm = worn_length(pitches, 15.875, percent);
            prop_assert!((elongation(mm, pitches, 15.875) - percent).abs() < 1e-9);
        }
    }
}
