//! Where the formulas of the gearing come from.

use crate::quantity::{Source, Standing};

/// Source of elongation.
pub(crate) fn wear_source() -> Source {
    Source::new(
        "Elongation: length over pitches against that of a new chain; way of measuring at motorcyclechain.top “how to measure \
         motorcycle chain wear”",
        Standing::SecondHand,
    )
}

/// Source of everything that is gears and wheels in mesh.
pub(crate) fn kinematics() -> Source {
    Source::new(
        "Gears in series multiply; a wheel that rolls without slip covers its circumference",
        Standing::Computed,
    )
}

/// Source of the chain geometry.
pub(crate) fn geometry() -> Source {
    Source::new(
        "Chain as an open belt on the pitch circles: classical geometry, printed as an approximation in ISO 606 and Machinery's \
         Handbook",
        Standing::Memory,
    )
}
