//! The corrector of a speedometer: a small gear in the cable (or a box in the wire) that brings the reading back.
//!
//! A corrector multiplies every reading by the same ratio. Inside the band of type approval there is a least ratio (never
//! below the true speed) and a most, which the highest test speed sets, because the 4 km/h of the band weigh least there.

use layshaft_wire::wire;

use super::speedometer::{SpeedometerShift, allowed_reading};
use crate::bounds;
use crate::gearing::message::{GearingMessage, GearingSource};
use crate::message::Message;
use crate::quantity::{Source, Standing};
use crate::quantity::{formula, within};

/// A reading at a test speed, now and with the corrector.
#[wire]
pub struct CorrectedReading {
    /// True speed, km/h.
    pub true_kmh: f64,
    /// Shown now, km/h.
    pub shown_now_kmh: f64,
    /// Shown with the gear pair of the corrector, km/h.
    pub shown_corrected_kmh: f64,
    /// Least that type approval allows, km/h.
    pub allowed_from_kmh: f64,
    /// Most that type approval allows, km/h.
    pub allowed_to_kmh: f64,
    /// Most that is allowed to a machine out of production (L3 to L5), km/h; from memory, unconfirmed.
    pub production_to_kmh: f64,
}

/// What a corrector must do. A ratio here is cable turns out for one turn in: above 1 it makes the speedometer read more.
#[wire]
pub struct Corrector {
    /// Reading over true speed without a corrector.
    pub reading_factor: f64,
    /// Ratio of the corrector that is fitted; 1 where there is none.
    pub present_ratio: f64,
    /// Whether the error as made is known; else it is taken as none, and nothing here is sure.
    pub as_made_known: bool,
    /// Whether another one than the present is needed for the band; unknown where the error as made is.
    pub needed: Option<bool>,
    /// Ratio that makes it read true.
    pub to_true: f64,
    /// Ratio that brings it back to what it read as made.
    pub to_as_made: f64,
    /// Least ratio inside the band.
    pub band_from: f64,
    /// Greatest ratio inside the band.
    pub band_to: f64,
    /// Teeth (or turns) of the side that drives, of the simplest pair inside the band.
    pub driving_teeth: u32,
    /// Teeth of the side that is driven.
    pub driven_teeth: u32,
    /// Readings at the test speeds.
    pub readings: Vec<CorrectedReading>,
    /// What the band does not say.
    pub note: Message,
}

/// Test speeds of type approval, km/h (UN Regulation No. 39, from memory).
pub const TEST_SPEEDS_KMH: [f64; 3] = [40.0, 80.0, 120.0];

/// Ratio of a corrector that makes the speedometer read true.
///
/// `k = 1 / a`, where `a` is the reading over the true speed; pure numbers. Source: computed. Range: `a` above zero; an error
/// that is a share of the speed, as wrong gearing makes it.
///
/// ```
/// // 15/45 to 16/45: a true 100 km/h shows 93.75 km/h; the cable must turn 1.0667 times as fast.
/// let ratio = layshaft_core::gearing::corrector_to_true(0.9375);
/// assert!((ratio - 16.0 / 15.0).abs() < 1e-12);
/// ```
pub fn corrector_to_true(reading_factor: f64) -> f64 {
    1.0 / reading_factor
}

/// Least and greatest corrector ratio that keep the reading inside the band at every test speed.
///
/// `1/a ≤ k ≤ min over v of (0.1·v + 4 + v) / (a·v)`
///
/// - `a` reading over true speed; `v` test speeds, km/h; `k` ratio
///
/// Source: UN Regulation No. 39, paragraph 5.3 (second hand), solved for the ratio. Range: as [`corrector_to_true`].
///
/// ```
/// let (least, most) = layshaft_core::gearing::corrector_band(1.0);
/// assert_eq!(least, 1.0);
/// assert!((most - 136.0 / 120.0).abs() < 1e-12);
/// ```
pub fn corrector_band(reading_factor: f64) -> (f64, f64) {
    let most = TEST_SPEEDS_KMH.map(|kmh| allowed_reading(kmh).1 / kmh).into_iter().fold(f64::INFINITY, f64::min);
    (1.0 / reading_factor, most / reading_factor)
}

/// The simplest ratio of whole numbers from `least` to `most`: the one with the smallest driven side.
///
/// Source: number theory, computed. Range: `0 < least < most`; up to 99 teeth, else the nearest at 99.
///
/// ```
/// use layshaft_core::gearing::simplest_pair;
/// assert_eq!(simplest_pair(16.0 / 15.0, 1.2), (6, 5));
/// assert_eq!(simplest_pair(0.98, 1.1), (1, 1));
/// ```
pub fn simplest_pair(least: f64, most: f64) -> (u32, u32) {
    const MOST_TEETH: u32 = 99;
    // A ratio that lies on the end counts as inside; the last bits must not decide it.
    let driving = |driven: u32| (least * f64::from(driven) - 1e-9).ceil().max(1.0);
    let inside = (1..MOST_TEETH).find(|driven| driving(*driven) <= most * f64::from(*driven) + 1e-9);
    let driven = inside.unwrap_or(MOST_TEETH);
    (driving(driven) as u32, driven)
}

/// What a corrector must do for a speedometer that has shifted.
pub(crate) fn corrector(shift: &SpeedometerShift, over_percent: Option<f64>, present_ratio: f64) -> Corrector {
    let bare = shift.factor / present_ratio;
    let reading_factor = bare * (1.0 + over_percent.unwrap_or(0.0) / 100.0);
    let (band_from, band_to) = corrector_band(reading_factor);
    let (driving_teeth, driven_teeth) = simplest_pair(band_from, band_to);
    let ratio = f64::from(driving_teeth) / f64::from(driven_teeth);
    let readings = TEST_SPEEDS_KMH.map(|true_kmh| {
        let (allowed_from_kmh, allowed_to_kmh) = allowed_reading(true_kmh);
        CorrectedReading {
            true_kmh,
            shown_now_kmh: true_kmh * reading_factor * present_ratio,
            shown_corrected_kmh: true_kmh * reading_factor * ratio,
            allowed_from_kmh,
            allowed_to_kmh,
            production_to_kmh: allowed_to_kmh + 4.0,
        }
    });
    Corrector {
        reading_factor,
        present_ratio,
        as_made_known: over_percent.is_some(),
        needed: over_percent.map(|_| !inside(present_ratio, band_from, band_to)),
        to_true: corrector_to_true(reading_factor),
        to_as_made: corrector_to_true(bare),
        band_from,
        band_to,
        driving_teeth,
        driven_teeth,
        readings: readings.to_vec(),
        note: GearingMessage::CorrectorNote.into(),
    }
}

/// Whether a ratio lies inside the band; on its end counts as inside.
fn inside(ratio: f64, band_from: f64, band_to: f64) -> bool {
    band_from <= ratio + 1e-9 && band_to >= ratio - 1e-9
}

/// Where the looser figure for production comes from.
pub(crate) fn production_source() -> Source {
    Source::new(GearingSource::SpeedometerProduction, Standing::Memory)
}

formula! {
    /// Ratio of a speedometer corrector.
    CorrectorRatio in Drive, "c = 1 / k"
    takes {
        /// Reading over true speed.
        "k" reading_factor: f64 = within(&bounds::READING_FACTOR);
    }
    gives {
        /// For a true reading.
        to_true "c" None;
        /// Least that type approval allows.
        band_from "c" None;
        /// Most that type approval allows.
        band_to "c" None;
        /// Teeth, driving.
        driving "z₁" Teeth;
        /// Teeth, driven.
        driven "z₂" Teeth;
    }
    from production_source();
    it => {
        let (least, most) = corrector_band(it.reading_factor);
        let (driving, driven) = simplest_pair(least, most);
        Ok([corrector_to_true(it.reading_factor), least, most, f64::from(driving), f64::from(driven)])
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::gearing::judge::speedometer::speedometer_shift;

    #[test]
    fn one_tooth_more_in_front_needs_16_to_15_or_a_little_more() {
        let corrector = corrector(&speedometer_shift(0.9375, Some(0.0)), Some(0.0), 1.0);
        assert_eq!(corrector.needed, Some(true));
        assert!((corrector.to_true - 1.066_667).abs() < 1e-6 && corrector.to_true == corrector.to_as_made);
        assert!((corrector.band_to - 1.133_333 / 0.9375).abs() < 1e-6);
        assert_eq!((corrector.driving_teeth, corrector.driven_teeth), (6, 5));
        for reading in &corrector.readings {
            assert!(reading.shown_now_kmh < reading.allowed_from_kmh);
            assert!(reading.shown_corrected_kmh >= reading.allowed_from_kmh);
            assert!(reading.shown_corrected_kmh <= reading.allowed_to_kmh);
        }
    }

    #[test]
    fn the_measured_error_counts_towards_what_is_needed() {
        let with = |over| corrector(&speedometer_shift(0.9375, Some(over)), Some(over), 1.0).needed;
        assert_eq!([with(6.6), with(6.7), with(20.8), with(20.9)], [Some(true), Some(false), Some(false), Some(true)]);
        let unknown = corrector(&speedometer_shift(0.9375, None), None, 1.0);
        assert!(!unknown.as_made_known && unknown.needed.is_none());
    }

    #[test]
    fn a_fitted_corrector_ends_the_need_and_changes_no_ratio_that_is_asked_for() {
        let without = corrector(&speedometer_shift(0.9375, Some(0.0)), Some(0.0), 1.0);
        let with = corrector(&speedometer_shift(0.9375 * 1.2, Some(0.0)), Some(0.0), 1.2);
        assert_eq!((without.needed, with.needed), (Some(true), Some(false)));
        assert!((with.to_true - without.to_true).abs() < 1e-12 && (with.band_to - without.band_to).abs() < 1e-12);
        assert!((with.readings[1].shown_now_kmh - 90.0).abs() < 1e-9);
    }

    #[test]
    fn production_allows_eight_where_type_approval_allows_four() {
        let corrector = corrector(&speedometer_shift(1.0, None), None, 1.0);
        let most: Vec<_> = corrector.readings.iter().map(|reading| reading.production_to_kmh).collect();
        assert_eq!(most, [52.0, 96.0, 140.0]);
    }

    proptest! {
        #[test]
        fn the_pair_lies_inside_the_band_and_none_is_simpler(factor in 0.6..1.6) {
            let (least, most) = corrector_band(factor);
            let (driving, driven) = simplest_pair(least, most);
            let ratio = f64::from(driving) / f64::from(driven);
            prop_assert!(ratio >= least - 1e-9 && ratio <= most + 1e-9);
            for fewer in 1..driven {
                let none = (1..200).all(|top| {
                    let ratio = f64::from(top) / f64::from(fewer);
                    ratio < least - 1e-9 || ratio > most + 1e-9
                });
                prop_assert!(none);
            }
        }

        #[test]
        fn with_the_ratio_for_a_true_reading_it_reads_true(factor in 0.6..1.6) {
            prop_assert!((corrector_to_true(factor) * factor - 1.0).abs() < 1e-12);
        }
    }
}
