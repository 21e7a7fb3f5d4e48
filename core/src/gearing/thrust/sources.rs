//! Where the formulas of thrust and road load come from.

use crate::quantity::{Source, Standing};

/// Source of thrust and road load.
pub(super) fn road_load() -> Source {
    Source::new(
        "Thrust and road load: Cossalter, Motorcycle Dynamics, chapter 3; Gillespie, Fundamentals of Vehicle Dynamics, chapter 4",
        Standing::Memory,
    )
}

/// Source of the density of the air.
pub(super) fn air_source() -> Source {
    Source::new("Density of the air: US Standard Atmosphere 1976 (as ISO 2533 at these heights)", Standing::Memory)
}
