//! Where the formulas of the brakes come from.

use crate::brakes::message::BrakesSource;
use crate::quantity::{Source, Standing};

/// Source of the hydraulic chain.
pub(crate) fn hydraulics() -> Source {
    Source::new(BrakesSource::Hydraulics, Standing::Memory)
}

/// Source of drum geometry.
pub(crate) fn drums() -> Source {
    Source::new(BrakesSource::Drums, Standing::Computed)
}

/// Source of stopping at a steady deceleration.
pub(crate) fn uniform() -> Source {
    Source::new(BrakesSource::Uniform, Standing::Computed)
}
