//! Where the formulas of the gearing come from.

use crate::gearing::message::GearingSource;
use crate::quantity::{Source, Standing};

/// Source of elongation.
pub(crate) fn wear_source() -> Source {
    Source::new(GearingSource::Elongation, Standing::SecondHand)
}

/// Source of everything that is gears and wheels in mesh.
pub(crate) fn kinematics() -> Source {
    Source::new(GearingSource::Kinematics, Standing::Computed)
}

/// Source of the chain geometry.
pub(crate) fn geometry() -> Source {
    Source::new(GearingSource::ChainGeometry, Standing::Memory)
}
