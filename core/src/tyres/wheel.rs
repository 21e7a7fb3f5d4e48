//! The circumference on which a wheel rolls: measured by roll-out, else from the size on the sidewall.
//!
//! Two wheels are compared like with like: a roll-out under load is some per cent shorter than `π · D` from the code, so
//! setting one against the other would show a change where there is none.

use super::message::{TyresRefused, TyresSource};
use crate::bounds;
use crate::error::Refused;
use crate::quantity::{Source, Standing};
use crate::record::{TyreSize, Wheel};

/// A rolling circumference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolling {
    /// Circumference, mm.
    pub circumference_mm: f64,
    /// Measured by roll-out on this tyre.
    pub measured: bool,
}

/// Rolling circumference in millimetres, and whether it was measured. A roll-out overrides the size on the sidewall.
///
/// ```
/// use layshaft_core::record::Wheel;
/// use layshaft_core::tyres::rolling_circumference;
/// let mut wheel = Wheel { tyre: Some("3.00-18".to_owned()), ..Wheel::default() };
/// assert!((rolling_circumference(&wheel).unwrap().0 - 1915.1).abs() < 0.05);
/// wheel.circumference_mm = Some(1880.0);
/// assert_eq!(rolling_circumference(&wheel), Ok((1880.0, true)));
/// ```
pub fn rolling_circumference(wheel: &Wheel) -> Result<(f64, bool), Refused> {
    if let Some(measured) = wheel.circumference_mm {
        return Ok((bounds::CIRCUMFERENCE.check(measured)?, true));
    }
    Ok((by_size(wheel)?, false))
}

/// Circumferences of the standard and the fitted wheel, like with like.
///
/// - Same size on both: a roll-out on either holds for both, unless each has its own.
/// - Other sizes: a roll-out holds for its own tyre; the other is scaled by the ratio of the two sizes.
/// - A roll-out that the fitted wheel only takes over from standard says nothing about another tyre.
pub fn rolling_pair(standard: &Wheel, fitted: &Wheel) -> (Result<Rolling, Refused>, Result<Rolling, Refused>) {
    let same = same_tyre(standard, fitted);
    let before = standard.circumference_mm;
    let after = fitted.circumference_mm.filter(|mm| same || before != Some(*mm));
    if same {
        return (rolling(standard, before.or(after)), rolling(fitted, after.or(before)));
    }
    let scaled = |from: Option<f64>, by: &Wheel, to: &Wheel| -> Option<Rolling> {
        let circumference_mm = scaled_circumference(from?, by_size(by).ok()?, by_size(to).ok()?);
        Some(Rolling { circumference_mm, measured: false })
    };
    let before_or_scaled = match (before, scaled(after, fitted, standard)) {
        (None, Some(scaled)) => Ok(scaled),
        _ => rolling(standard, before),
    };
    let after_or_scaled = match (after, scaled(before, standard, fitted)) {
        (None, Some(scaled)) => Ok(scaled),
        _ => rolling(fitted, after),
    };
    (before_or_scaled, after_or_scaled)
}

/// Circumference of a tyre by the roll-out of another one, mm: loaded tyres give way alike.
///
/// `U₂ = U₁ · D₂ / D₁`, `U` circumference, `D` outer diameter (or the circumference by the code), mm. Source: computed; that they
/// give way alike is an assumption. Range: sizes near each other.
///
/// ```
/// let mm = layshaft_core::tyres::scaled_circumference(1880.0, 609.6, 622.3);
/// assert!((mm - 1919.167).abs() < 1e-3);
/// ```
pub fn scaled_circumference(rolled_mm: f64, its_mm: f64, other_mm: f64) -> f64 {
    rolled_mm / its_mm * other_mm
}

/// Where the circumference comes from.
pub fn tyre_source(measured: bool) -> Source {
    if measured {
        Source::new(TyresSource::RollOut, Standing::Entered)
    } else {
        Source::new(TyresSource::Circumference, Standing::Memory)
    }
}

fn rolling(wheel: &Wheel, measured: Option<f64>) -> Result<Rolling, Refused> {
    match measured {
        Some(mm) => Ok(Rolling { circumference_mm: bounds::CIRCUMFERENCE.check(mm)?, measured: true }),
        None => Ok(Rolling { circumference_mm: by_size(wheel)?, measured: false }),
    }
}

fn by_size(wheel: &Wheel) -> Result<f64, Refused> {
    match &wheel.tyre {
        Some(code) => Ok(TyreSize::read(code)?.circumference_mm()),
        None => Err(Refused::Missing {
            field: "tyre".to_owned(),
            label: TyresRefused::LabelSize.into(),
            help: TyresRefused::EnterSize.into(),
        }),
    }
}

/// Whether both wheels carry a tyre of the same dimensions; two tyres of unknown size count as the same one.
fn same_tyre(one: &Wheel, other: &Wheel) -> bool {
    match (&one.tyre, &other.tyre) {
        (Some(one), Some(other)) => match (TyreSize::read(one), TyreSize::read(other)) {
            (Ok(one), Ok(other)) => one.same_dimensions(&other),
            _ => one == other,
        },
        (None, None) => true,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wheel(tyre: &str, circumference_mm: Option<f64>) -> Wheel {
        Wheel { tyre: Some(tyre.to_owned()), circumference_mm, ..Wheel::default() }
    }

    fn pair(standard: &Wheel, fitted: &Wheel) -> ((f64, bool), (f64, bool)) {
        let (before, after) = rolling_pair(standard, fitted);
        let plain = |rolling: Rolling| (rolling.circumference_mm, rolling.measured);
        (plain(before.unwrap()), plain(after.unwrap()))
    }

    #[test]
    fn a_roll_out_on_the_same_size_shows_no_change() {
        let (before, after) = pair(&wheel("3.00-18", None), &wheel("3.00-18 52P", Some(1880.0)));
        assert_eq!((before, after), ((1880.0, true), (1880.0, true)));
    }

    #[test]
    fn a_roll_out_on_each_keeps_its_own() {
        let (before, after) = pair(&wheel("3.00-18", Some(1890.0)), &wheel("3.00-18", Some(1870.0)));
        assert_eq!((before, after), ((1890.0, true), (1870.0, true)));
    }

    #[test]
    fn a_roll_out_taken_over_from_standard_does_not_hold_for_another_tyre() {
        let (before, after) = pair(&wheel("3.00-18", Some(1880.0)), &wheel("110/90-18", Some(1880.0)));
        assert_eq!(before, (1880.0, true));
        // 655.2 mm against 609.6 mm by the codes.
        assert!((after.0 - 1880.0 * 655.2 / 609.6).abs() < 1e-9 && !after.1, "{after:?}");
    }

    #[test]
    fn a_roll_out_on_the_new_tyre_scales_the_standard_one() {
        let (before, after) = pair(&wheel("3.00-18", None), &wheel("110/90-18", Some(2000.0)));
        assert!((before.0 - 2000.0 * 609.6 / 655.2).abs() < 1e-9 && !before.1, "{before:?}");
        assert_eq!(after, (2000.0, true));
    }

    #[test]
    fn an_unknown_tyre_is_missing_and_an_unreadable_one_says_so() {
        let (before, after) = rolling_pair(&Wheel::default(), &wheel("fat", None));
        assert!(matches!(before, Err(Refused::Missing { field, .. }) if field == "tyre"));
        assert!(matches!(after, Err(Refused::Unreadable { field, .. }) if field == "tyre"));
    }

    #[test]
    fn a_roll_out_outside_reason_is_refused_with_its_range() {
        let refused = rolling_circumference(&wheel("3.00-18", Some(-1.0))).unwrap_err();
        assert_eq!(refused.english(), "Rolling circumference: −1 mm is outside 500 to 3 000 mm");
    }
}
