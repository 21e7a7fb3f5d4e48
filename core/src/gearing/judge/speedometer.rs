//! What the speedometer makes of other sprockets or another tyre, and the band that type approval allows.
//!
//! The shift is kinematics. The band is UN Regulation No. 39, paragraph 5.3, read in quotation (z4-forum.com
//! “speedometer accurate”); rules for machines in use differ from country to country.

use layshaft_wire::wire;

use crate::bounds;
use crate::error::Refused;
use crate::gearing::formulas::{final_ratio, shown_speed};
use crate::gearing::message::GearingSource;
use crate::quantity::{Source, Standing, percent_change};
use crate::quantity::{formula, within};
use crate::record::{Bike, Drive, Spec, SpeedometerDrive};
use crate::tyres::rolling_pair;

/// How the reading shifts against standard.
#[wire]
pub struct SpeedometerShift {
    /// New reading over standard reading at the same road speed.
    pub factor: f64,
    /// The same in per cent: negative reads lower than before.
    pub shift_percent: f64,
    /// What it shows at a true 50 km/h when it was exact (or off by the measured amount) as made, km/h.
    pub shown_at_50_kmh: f64,
    /// What it shows at a true 80 km/h, km/h.
    pub shown_at_80_kmh: f64,
    /// Least that type approval allows at a true 80 km/h, km/h.
    pub allowed_from_at_80_kmh: f64,
    /// Most that type approval allows at a true 80 km/h, km/h.
    pub allowed_to_at_80_kmh: f64,
    /// Whether the reading lies in that band; unknown where the error as made was never measured.
    pub in_band: Option<bool>,
    /// Whether it reads so far off that it wants a second look: outside the band or, whatever it was as made, shifted by
    /// more than [`MOST_SHIFT_PERCENT`].
    pub far_off: bool,
}

/// Shift of the reading, either way, from which it wants a second look even where the error as made is not known, per
/// cent: as much as the band of type approval is wide beside its 4 km/h. Our judgement.
pub const MOST_SHIFT_PERCENT: f64 = 10.0;

/// New speedometer reading over the old one at the same road speed.
///
/// `f = (U₁ / U₂) · (i₂ / i₁)`
///
/// - `U₁`, `U₂` rolling circumference of the wheel that carries (or drives) the sender, before and after, mm
/// - `i₁`, `i₂` final drive ratio before and after, pure numbers; the same for a sender on a wheel
///
/// Source: kinematics, computed: the sender turns with the gearbox output or with its wheel, the speedometer counts its
/// turns. Range: all inputs above zero.
///
/// ```
/// // 15/45 to 16/45 on a gearbox sender: a true 100 km/h shows 93.75 km/h.
/// let factor = layshaft_core::gearing::reading_factor(2000.0, 2000.0, 45.0 / 15.0, 45.0 / 16.0);
/// assert!((factor - 0.9375).abs() < 1e-12);
/// ```
pub fn reading_factor(mm_before: f64, mm_after: f64, ratio_before: f64, ratio_after: f64) -> f64 {
    (mm_before / mm_after) * (ratio_after / ratio_before)
}

/// What type approval allows a speedometer to show at a true speed, least and most, km/h.
///
/// `0 ≤ V₁ − V₂ ≤ 0.1·V₂ + 4 km/h`
///
/// - `V₁` shown, `V₂` true speed, km/h
///
/// Source: UN Regulation No. 39, paragraph 5.3 (second hand, quoted). Production (and some national rules for machines in
/// use) may allow more on the high side; none allows less than the true speed. Range: type approval test speeds, 40 to
/// 120 km/h (from memory).
///
/// ```
/// let (least, most) = layshaft_core::gearing::allowed_reading(80.0);
/// assert_eq!(least, 80.0);
/// assert!((most - 92.0).abs() < 1e-12);
/// ```
pub fn allowed_reading(true_kmh: f64) -> (f64, f64) {
    (true_kmh, true_kmh + 0.1 * true_kmh + 4.0)
}

/// New reading over standard reading for two specs; none where a tooth count or tyre that matters is unknown.
///
/// Gearing shifts only a gearbox-driven speedometer, a tyre only the one that its wheel drives (the rear tyre also the
/// gearbox-driven one). See [`reading_factor`].
pub fn speedometer_factor(drive: SpeedometerDrive, standard: &Spec, fitted: &Spec) -> Option<f64> {
    Some(Sender::of(drive, standard, fitted)?.factor())
}

/// What the sender turns with, before and after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Sender {
    /// Rolling circumference of its wheel, before and after, mm.
    pub circumferences_mm: (f64, f64),
    /// Final drive ratio before and after, where it matters.
    pub ratios: Option<(f64, f64)>,
    /// Ratio of the corrector before and after; none fitted is 1.
    pub correctors: (f64, f64),
}

impl Sender {
    /// The sender of a drive; none where a tooth count or tyre that matters is unknown.
    pub fn of(drive: SpeedometerDrive, standard: &Spec, fitted: &Spec) -> Option<Self> {
        let (before, after) = match drive {
            SpeedometerDrive::FrontWheel => rolling_pair(&standard.front_wheel, &fitted.front_wheel),
            SpeedometerDrive::Gearbox | SpeedometerDrive::RearWheel => {
                rolling_pair(&standard.rear_wheel, &fitted.rear_wheel)
            }
        };
        let ratios = match drive {
            SpeedometerDrive::Gearbox => Some((ratio_of(standard)?, ratio_of(fitted)?)),
            SpeedometerDrive::FrontWheel | SpeedometerDrive::RearWheel => None,
        };
        Some(Self {
            circumferences_mm: (before.ok()?.circumference_mm, after.ok()?.circumference_mm),
            ratios,
            correctors: (corrector_of(&standard.drive), corrector_of(&fitted.drive)),
        })
    }

    /// New reading over the old one.
    pub fn factor(&self) -> f64 {
        let (before, after) = self.circumferences_mm;
        let (ratio_before, ratio_after) = self.ratios.unwrap_or((1.0, 1.0));
        reading_factor(before, after, ratio_before, ratio_after) * self.correctors.1 / self.correctors.0
    }
}

/// Ratio of the corrector that is fitted; 1 where there is none.
pub(crate) fn corrector_of(drive: &Drive) -> f64 {
    drive.speedometer_corrector.filter(|ratio| *ratio > 0.0).unwrap_or(1.0)
}

fn ratio_of(spec: &Spec) -> Option<f64> {
    let (front, rear) = (spec.drive.front_teeth?, spec.drive.rear_teeth?);
    (front > 0 && rear > 0).then(|| final_ratio(front, rear))
}

/// The shift with readings at two speeds and the band at 80 km/h.
///
/// `V₁ = V₂ · (1 + e/100) · f`: `e` per cent by which it read high as made (0 where it was never measured), `f` factor.
pub fn speedometer_shift(factor: f64, over_percent: Option<f64>) -> SpeedometerShift {
    let shown = |true_kmh: f64| shown_speed(true_kmh, over_percent.unwrap_or(0.0), factor);
    let (least, most) = allowed_reading(80.0);
    let at_80 = shown(80.0);
    // A reading on the limit is allowed; the last bits of the sum must not decide it.
    let inside = at_80 >= least - 1e-9 && at_80 <= most + 1e-9;
    let in_band = over_percent.map(|_| inside);
    let shift_percent = percent_change(1.0, factor);
    SpeedometerShift {
        factor,
        shift_percent,
        shown_at_50_kmh: shown(50.0),
        shown_at_80_kmh: at_80,
        allowed_from_at_80_kmh: least,
        allowed_to_at_80_kmh: most,
        in_band,
        far_off: in_band == Some(false) || shift_percent.abs() > MOST_SHIFT_PERCENT + 1e-9,
    }
}

/// Where the band comes from.
pub fn speedometer_source() -> Source {
    Source::new(GearingSource::SpeedometerBand, Standing::SecondHand)
}

/// The shift of the speedometer between the bike as made and a spec; none where its drive or what it turns on is unknown.
pub(crate) fn speedometer(bike: &Bike, spec: &Spec) -> Result<Option<SpeedometerShift>, Refused> {
    let over = bounds::SPEEDOMETER_OVER.check_known(spec.drive.speedometer_over_percent)?;
    let Some(drive) = spec.drive.speedometer else { return Ok(None) };
    Ok(speedometer_factor(drive, &bike.standard, spec).map(|factor| speedometer_shift(factor, over)))
}

formula! {
    /// New speedometer reading over the old one at the same road speed.
    SpeedometerFactor in Drive, "k = U₁ / U₂ · i₂ / i₁ · c₂ / c₁"
    takes {
        /// Rolling circumference before, of the wheel that the sender turns with, millimetres.
        "U₁" circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
        /// Rolling circumference after, of that wheel, millimetres.
        "U₂" new_circumference_mm: f64 = within(&bounds::CIRCUMFERENCE);
        /// Final drive ratio before; the same twice for a sender on a wheel.
        "i₁" final_ratio: f64 = within(&bounds::FINAL_RATIO);
        /// Final drive ratio after.
        "i₂" new_final_ratio: f64 = within(&bounds::FINAL_RATIO);
        /// Ratio of the corrector before; 1 without one.
        "c₁" speedometer_corrector: f64 = within(&bounds::CORRECTOR);
        /// Ratio of the corrector after.
        "c₂" new_speedometer_corrector: f64 = within(&bounds::CORRECTOR);
    }
    gives {
        /// New reading over old.
        factor "k" None;
        /// Change.
        shift "(k − 1) · 100" Percent;
    }
    from Source::new(GearingSource::SpeedometerTurns, Standing::Computed);
    it => {
        let sender = Sender {
            circumferences_mm: (it.circumference_mm, it.new_circumference_mm),
            ratios: Some((it.final_ratio, it.new_final_ratio)),
            correctors: (it.speedometer_corrector, it.new_speedometer_corrector),
        };
        let factor = sender.factor();
        Ok([factor, percent_change(1.0, factor)])
    }
}

formula! {
    /// What type approval allows a speedometer to show.
    AllowedReading in Drive, "V = v + 0.1 · v + 4"
    takes {
        /// Road speed, km/h.
        "v" road_speed_kmh: f64 = within(&bounds::ROAD_SPEED);
    }
    gives {
        /// Most.
        most "V" KilometreHour;
        /// Least.
        least "v" KilometreHour;
    }
    from speedometer_source();
    it => {
        let (least, most) = allowed_reading(it.road_speed_kmh);
        Ok([most, least])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Wheel;

    fn spec(front_teeth: u32, rear_teeth: u32, front_tyre: &str, rear_tyre: &str) -> Spec {
        let wheel = |tyre: &str| Wheel { tyre: Some(tyre.to_owned()), ..Wheel::default() };
        Spec {
            drive: Drive { front_teeth: Some(front_teeth), rear_teeth: Some(rear_teeth), ..Drive::default() },
            front_wheel: wheel(front_tyre),
            rear_wheel: wheel(rear_tyre),
            ..Spec::default()
        }
    }

    #[test]
    fn the_band_agrees_with_published_readings() {
        for (true_kmh, most) in [
            (20.0, 26.0),
            (40.0, 48.0),
            (50.0, 59.0),
            (60.0, 70.0),
            (70.0, 81.0),
            (80.0, 92.0),
            (90.0, 103.0),
            (110.0, 125.0),
            (120.0, 136.0),
            (130.0, 147.0),
        ] {
            let (least, highest) = allowed_reading(true_kmh);
            assert_eq!(least, true_kmh);
            assert!((highest - most).abs() < 1e-9);
        }
    }

    #[test]
    fn a_reading_is_far_off_outside_the_band_or_from_a_shift_of_more_than_a_tenth() {
        let far_off = |factor, over| speedometer_shift(factor, over).far_off;
        for factor in [0.9, 1.0, 1.1] {
            assert!(!far_off(factor, None), "{factor}");
        }
        for factor in [0.899, 1.101] {
            assert!(far_off(factor, None) && far_off(factor, Some(4.0)), "{factor}");
        }
        // Exact as made: one per cent less reads low, which no approval allows.
        assert!(far_off(0.99, Some(0.0)) && !far_off(0.99, Some(4.0)));
    }

    #[test]
    fn gearing_shifts_only_a_gearbox_speedometer() {
        let (standard, fitted) = (spec(15, 45, "2.75-18", "3.00-18"), spec(16, 45, "2.75-18", "3.00-18"));
        let factor = |drive| speedometer_factor(drive, &standard, &fitted).unwrap();
        assert!((factor(SpeedometerDrive::Gearbox) - 0.9375).abs() < 1e-12);
        assert_eq!(factor(SpeedometerDrive::FrontWheel), 1.0);
        assert_eq!(factor(SpeedometerDrive::RearWheel), 1.0);
    }

    #[test]
    fn a_corrector_multiplies_the_reading_whatever_drives_it() {
        let (standard, mut fitted) = (spec(15, 45, "2.75-18", "3.00-18"), spec(16, 45, "2.75-18", "3.00-18"));
        fitted.drive.speedometer_corrector = Some(16.0 / 15.0);
        let factor = |drive| speedometer_factor(drive, &standard, &fitted).unwrap();
        assert!((factor(SpeedometerDrive::Gearbox) - 1.0).abs() < 1e-12);
        assert!((factor(SpeedometerDrive::FrontWheel) - 16.0 / 15.0).abs() < 1e-12);
    }

    #[test]
    fn a_rear_tyre_shifts_gearbox_and_rear_wheel_speedometers_but_no_front_wheel_one() {
        let (standard, fitted) = (spec(15, 45, "2.75-18", "3.00-18"), spec(15, 45, "2.75-18", "3.25-18"));
        let factor = |drive| speedometer_factor(drive, &standard, &fitted).unwrap();
        // 609.6 mm over 622.3 mm.
        assert!((factor(SpeedometerDrive::Gearbox) - 0.97959).abs() < 5e-6);
        assert!((factor(SpeedometerDrive::RearWheel) - 0.97959).abs() < 5e-6);
        assert_eq!(factor(SpeedometerDrive::FrontWheel), 1.0);
    }

    #[test]
    fn an_unknown_sprocket_leaves_a_gearbox_speedometer_unknown_and_a_wheel_one_known() {
        let standard = spec(15, 45, "2.75-18", "3.00-18");
        let mut fitted = standard.clone();
        fitted.drive.front_teeth = None;
        assert_eq!(speedometer_factor(SpeedometerDrive::Gearbox, &standard, &fitted), None);
        assert_eq!(speedometer_factor(SpeedometerDrive::FrontWheel, &standard, &fitted), Some(1.0));
    }

    #[test]
    fn without_a_measured_error_nobody_knows_whether_it_lies_in_the_band() {
        assert_eq!(speedometer_shift(1.0, None).in_band, None);
        assert_eq!(speedometer_shift(0.9375, None).in_band, None);
    }

    #[test]
    fn one_tooth_more_in_front_is_allowed_only_where_it_read_high_enough_before() {
        // 1 / 0.9375 = 1.0667: it must have read at least 6.67 % high.
        assert_eq!(speedometer_shift(0.9375, Some(6.6)).in_band, Some(false));
        assert_eq!(speedometer_shift(0.9375, Some(6.7)).in_band, Some(true));
        // 15 % is the most at 80 km/h.
        assert_eq!(speedometer_shift(1.0, Some(15.0)).in_band, Some(true));
        assert_eq!(speedometer_shift(1.0, Some(15.1)).in_band, Some(false));
    }
}
