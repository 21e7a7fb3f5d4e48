//! What a speedometer shows.

use crate::bounds;
use crate::quantity::{FormulaSource, Source, Standing, formula, within};

/// Speed that is shown at a true one, km/h.
///
/// `V₁ = V₂ · (1 + e / 100) · k`: `e` per cent by which it read high as made, `k` new reading over the reading as made. Source:
/// kinematics, computed. Range: an error that is a share of the speed.
///
/// ```
/// assert_eq!(layshaft_core::gearing::shown_speed(80.0, 0.0, 0.9375), 75.0);
/// ```
pub fn shown_speed(true_kmh: f64, over_percent: f64, factor: f64) -> f64 {
    true_kmh * (1.0 + over_percent / 100.0) * factor
}

formula! {
    /// Speed that a speedometer shows.
    ShownSpeed in Drive, "V₁ = V₂ · (1 + e / 100) · k"
    takes {
        /// Road speed, km/h.
        "V₂" road_speed_kmh: f64 = within(&bounds::ROAD_SPEED);
        /// High as made, per cent.
        "e" speedometer_over_percent: f64 = within(&bounds::SPEEDOMETER_OVER);
        /// New reading over the reading as made.
        "k" reading_factor: f64 = within(&bounds::READING_FACTOR);
    }
    gives {
        /// Shown.
        shown "V₁" KilometreHour;
    }
    from Source::new(FormulaSource::SenderTurns, Standing::Computed);
    it => Ok([shown_speed(it.road_speed_kmh, it.speedometer_over_percent, it.reading_factor)])
}
