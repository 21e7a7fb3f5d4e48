//! Two tyres on the same wheel: what rolls longer, stands higher, and what the speedometer makes of it.

use layshaft_wire::wire;

use super::wheel::rolling_pair;
use crate::quantity::percent_change;
use crate::record::{End, SpeedometerDrive, TyreSize, Wheel};

/// Turns of the wheel in one kilometre.
///
/// `n = 1 000 000 / U`, `U` rolling circumference, mm
///
/// Source: geometry, computed. Range: above zero, no slip.
///
/// ```
/// assert!((layshaft_core::tyres::turns_per_km(2000.0) - 500.0).abs() < 1e-12);
/// ```
pub fn turns_per_km(circumference_mm: f64) -> f64 {
    1_000_000.0 / circumference_mm
}

/// How much higher the axle stands on another tyre, mm.
///
/// `Δh = (D₂ − D₁) / 2`, `D` outer diameter before and after, mm
///
/// Source: geometry, computed. Range: unloaded; the loaded tyres differ by about as much.
///
/// ```
/// // 3.00-18 to 110/90-18: 609.6 mm and 655.2 mm.
/// assert!((layshaft_core::tyres::ride_height_change(609.6, 655.2) - 22.8).abs() < 1e-9);
/// ```
pub fn ride_height_change(before_mm: f64, after_mm: f64) -> f64 {
    (after_mm - before_mm) / 2.0
}

/// One tyre against another on the same wheel.
#[wire]
pub struct TyreChange {
    /// Outer diameter before, mm.
    pub diameter_before_mm: f64,
    /// Outer diameter after, mm.
    pub diameter_after_mm: f64,
    /// Change of the outer diameter, per cent.
    pub diameter_percent: f64,
    /// Axle higher (positive) or lower, mm.
    pub ride_height_mm: f64,
    /// The least that it may be, where a code leaves the diameter open, mm.
    pub ride_height_least_mm: f64,
    /// The most, mm.
    pub ride_height_most_mm: f64,
    /// Rolling circumference before, mm.
    pub circumference_before_mm: f64,
    /// Rolling circumference after, mm.
    pub circumference_after_mm: f64,
    /// Change of the circumference, per cent: of road speed at the same engine speed too, where this wheel is driven.
    pub circumference_percent: f64,
    /// The circumference before is a roll-out.
    pub measured_before: bool,
    /// The circumference after is a roll-out.
    pub measured_after: bool,
    /// Turns in a kilometre before.
    pub turns_per_km_before: f64,
    /// Turns in a kilometre after.
    pub turns_per_km_after: f64,
    /// Shift of the speedometer by this tyre alone, per cent, negative reads lower; none where this wheel does not drive it,
    /// or where it is not known what does.
    pub speedometer_percent: Option<f64>,
}

/// Sets one wheel against another; none where the tyre of either is not known or cannot be read.
///
/// A roll-out overrides the code, like with like: see [`rolling_pair`]. The diameters stay those of the codes.
pub fn compare_tyres(
    before: &Wheel,
    after: &Wheel,
    end: End,
    speedometer: Option<SpeedometerDrive>,
) -> Option<TyreChange> {
    let size = |wheel: &Wheel| TyreSize::read(wheel.tyre.as_deref()?).ok();
    let (old, new) = (size(before)?, size(after)?);
    let (rolled_before, rolled_after) = rolling_pair(before, after);
    let (rolled_before, rolled_after) = (rolled_before.ok()?, rolled_after.ok()?);
    let (from, to) = (old.outer_diameter_mm(), new.outer_diameter_mm());
    let ((from_least, from_most), (to_least, to_most)) = (old.outer_diameter_range_mm(), new.outer_diameter_range_mm());
    // The same open code on both sides is open in the same way: nothing changes.
    let (least, most) = if old.same_dimensions(&new) {
        (0.0, 0.0)
    } else {
        (ride_height_change(from_most, to_least), ride_height_change(from_least, to_most))
    };
    let (mm_before, mm_after) = (rolled_before.circumference_mm, rolled_after.circumference_mm);
    // The sender turns with the wheel: a longer way for one turn shows less.
    let shift = percent_change(mm_after, mm_before);
    Some(TyreChange {
        diameter_before_mm: from,
        diameter_after_mm: to,
        diameter_percent: percent_change(from, to),
        ride_height_mm: ride_height_change(from, to),
        ride_height_least_mm: least,
        ride_height_most_mm: most,
        circumference_before_mm: mm_before,
        circumference_after_mm: mm_after,
        circumference_percent: percent_change(mm_before, mm_after),
        measured_before: rolled_before.measured,
        measured_after: rolled_after.measured,
        turns_per_km_before: turns_per_km(mm_before),
        turns_per_km_after: turns_per_km(mm_after),
        speedometer_percent: speedometer.filter(|drive| turned_by(*drive) == end).map(|_| shift),
    })
}

/// The wheel whose tyre the speedometer counts; a sender at the gearbox turns with the rear wheel.
fn turned_by(drive: SpeedometerDrive) -> End {
    match drive {
        SpeedometerDrive::FrontWheel => End::Front,
        SpeedometerDrive::Gearbox | SpeedometerDrive::RearWheel => End::Rear,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wheel(tyre: &str, circumference_mm: Option<f64>) -> Wheel {
        Wheel { tyre: Some(tyre.to_owned()), circumference_mm, ..Wheel::default() }
    }

    fn rear(before: &Wheel, after: &Wheel) -> TyreChange {
        compare_tyres(before, after, End::Rear, Some(SpeedometerDrive::Gearbox)).unwrap()
    }

    /// 120/90-18 and 120/80-18: 673.2 and 649.2 mm, published (maxxis.com “tyre sidewall markings”, second hand).
    #[test]
    fn published_diameters_give_half_their_difference_in_height() {
        let change = rear(&wheel("120/90-18", None), &wheel("120/80-18", None));
        assert!((change.ride_height_mm + 12.0).abs() < 1e-9);
        assert!((change.diameter_percent - (649.2 / 673.2 - 1.0) * 100.0).abs() < 1e-9);
        assert!((change.circumference_percent - change.diameter_percent).abs() < 1e-9);
        // Fewer millimetres to a turn: more turns, and the speedometer reads higher by as much.
        assert!((change.speedometer_percent.unwrap() - (673.2 / 649.2 - 1.0) * 100.0).abs() < 1e-9);
        assert!((change.turns_per_km_after - 1e6 / (std::f64::consts::PI * 649.2)).abs() < 1e-9);
    }

    #[test]
    fn a_roll_out_overrides_the_code_but_not_the_diameter() {
        let change = rear(&wheel("3.00-18", Some(1880.0)), &wheel("110/90-18", Some(2000.0)));
        assert_eq!((change.circumference_before_mm, change.circumference_after_mm), (1880.0, 2000.0));
        assert!(change.measured_before && change.measured_after);
        assert!((change.speedometer_percent.unwrap() + 6.0).abs() < 1e-9);
        assert!((change.ride_height_mm - 22.8).abs() < 1e-9);
    }

    #[test]
    fn an_open_height_gives_a_range_unless_the_code_stays_the_same() {
        let change = rear(&wheel("3.00-18", None), &wheel("4.60-18", None));
        assert!((change.ride_height_least_mm - (648.8176 - 609.6) / 2.0).abs() < 1e-6);
        assert!((change.ride_height_most_mm - (667.512 - 609.6) / 2.0).abs() < 1e-6);
        let same = rear(&wheel("4.60-18", None), &wheel("4.60-18 64H", None));
        assert_eq!((same.ride_height_least_mm, same.ride_height_most_mm, same.diameter_percent), (0.0, 0.0, 0.0));
    }

    #[test]
    fn only_the_wheel_that_drives_the_speedometer_shifts_it() {
        let (old, new) = (wheel("2.75-18", None), wheel("3.00-18", None));
        let shift = |end, drive| compare_tyres(&old, &new, end, drive).unwrap().speedometer_percent;
        assert!(shift(End::Front, Some(SpeedometerDrive::FrontWheel)).is_some());
        assert_eq!(shift(End::Front, Some(SpeedometerDrive::Gearbox)), None);
        assert_eq!(shift(End::Rear, Some(SpeedometerDrive::FrontWheel)), None);
        assert_eq!(shift(End::Rear, None), None);
    }

    #[test]
    fn without_two_readable_codes_there_is_no_comparison() {
        assert_eq!(compare_tyres(&Wheel::default(), &wheel("3.00-18", None), End::Rear, None), None);
        assert_eq!(compare_tyres(&wheel("3.00-18", None), &wheel("fat", None), End::Rear, None), None);
    }
}
