//! Where the formulas of thrust and road load come from.

use crate::gearing::message::GearingSource;
use crate::quantity::{Source, Standing};

/// Source of thrust and road load.
pub(super) fn road_load() -> Source {
    Source::new(GearingSource::RoadLoad, Standing::Memory)
}

/// Source of the density of the air.
pub(super) fn air_source() -> Source {
    Source::new(GearingSource::Air, Standing::Memory)
}
