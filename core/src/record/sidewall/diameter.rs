//! Diameter and circumference of a tyre from rim and section height, and its age from days.

use std::f64::consts::PI;

use crate::bounds;
use crate::quantity::{FormulaSource, Source, Standing, formula, within};

/// Outer diameter of a tyre, mm.
///
/// `D = 25.4·d + 2·H`, `d` rim code, inches; `H` section height, mm
///
/// Source: UN Regulation No. 75, paragraph 6.1.2 (from memory). Range: unloaded.
///
/// ```
/// // 120/90-18: published as 673.2 mm.
/// assert!((layshaft_core::record::outer_diameter(18, 108.0) - 673.2).abs() < 1e-9);
/// ```
pub fn outer_diameter(rim_code: u32, height_mm: f64) -> f64 {
    25.4 * f64::from(rim_code) + 2.0 * height_mm
}

/// Circumference on which a tyre of that diameter rolls without load, mm: `U = π · D`.
///
/// ```
/// assert!((layshaft_core::record::circumference(609.6) - 1915.11).abs() < 0.01);
/// ```
pub fn circumference(diameter_mm: f64) -> f64 {
    PI * diameter_mm
}

/// Years of a count of days: `a = n / 365.25`, the mean year of the Julian calendar.
///
/// ```
/// assert_eq!(layshaft_core::record::years_of(1461.0), 4.0);
/// ```
pub fn years_of(days: f64) -> f64 {
    days / 365.25
}

formula! {
    /// Outer diameter of a tyre from rim and section height.
    OuterDiameter in Tyres, "D = 25.4 · d + 2 · H"
    takes {
        /// Rim diameter code, inches.
        "d" rim_code: u32 = within(&bounds::RIM_CODE);
        /// Section height, millimetres.
        "H" height_mm: f64 = within(&bounds::SECTION_HEIGHT);
    }
    gives {
        /// Outer diameter.
        outer_diameter "D" Millimetre;
    }
    from Source::new(FormulaSource::TyreRegulation, Standing::Memory);
    it => Ok([outer_diameter(it.rim_code, it.height_mm)])
}

formula! {
    /// Rolling circumference of a tyre by its diameter.
    RollingCircumference in Tyres, "U = π · D"
    takes {
        /// Outer diameter, millimetres.
        "D" diameter_mm: f64 = within(&bounds::OUTER_DIAMETER);
    }
    gives {
        /// Rolling circumference.
        circumference "U" Millimetre;
    }
    from Source::new(FormulaSource::Geometry, Standing::Computed);
    it => Ok([circumference(it.diameter_mm)])
}

formula! {
    /// Years of a count of days.
    YearsOfDays in Tyres, "a = n / 365.25"
    takes {
        /// Days.
        "n" days: f64 = within(&bounds::AGE_DAYS);
    }
    gives {
        /// Years.
        years "a" None;
    }
    from Source::new(FormulaSource::JulianYear, Standing::Computed);
    it => Ok([years_of(it.days)])
}
