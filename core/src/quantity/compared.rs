//! One number beside another, whatever they are of.

use super::formula_source::FormulaSource;
use super::source::{Source, Standing};
use crate::bounds;
use crate::quantity::{formula, within};

/// Change of a number, per cent.
///
/// `Δ = (x₂ / x₁ − 1) · 100`, `x` of any one unit. Source: definition. Range: `x₁` not zero.
///
/// ```
/// assert_eq!(layshaft_core::quantity::percent_change(80.0, 100.0), 25.0);
/// ```
pub fn percent_change(before: f64, after: f64) -> f64 {
    (after / before - 1.0) * 100.0
}

fn definition() -> Source {
    Source::new(FormulaSource::Definition, Standing::Computed)
}

formula! {
    /// Change of a number.
    PercentChange in General, "Δ = (x₂ / x₁ − 1) · 100"
    takes {
        /// Before.
        "x₁" before: f64 = within(&bounds::COMPARED);
        /// After.
        "x₂" after: f64 = within(&bounds::READING);
    }
    gives {
        /// Change.
        change "Δ" Percent;
    }
    from definition();
    it => Ok([percent_change(it.before, it.after)])
}

formula! {
    /// What one number is above another.
    Difference in General, "d = x₂ − x₁"
    takes {
        /// The one.
        "x₁" start: f64 = within(&bounds::READING);
        /// The other.
        "x₂" end: f64 = within(&bounds::READING);
    }
    gives {
        /// Difference.
        difference "d" None;
    }
    from definition();
    it => Ok([it.end - it.start])
}
