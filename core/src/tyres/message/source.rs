//! Where the formulas and limits of the tyres come from.

use layshaft_wire::message;

/// A citation.
#[message("tyres-source")]
pub(crate) enum TyresSource {
    /// A roll-out.
    RollOut,
    /// The circumference from the size.
    Circumference,
    /// Load indices.
    LoadIndex,
    /// Speed symbols.
    SpeedSymbol,
    /// Both.
    Ratings,
    /// Rim widths.
    RimWidths,
    /// Tubes.
    Tubes,
    /// One tyre against another.
    Comparison,
    /// Age.
    Age,
    /// Low sections by one source.
    LowSection82,
    /// Low sections by another.
    LowSection90,
    /// Letters.
    Charts,
    /// Geometry.
    Geometry,
}
