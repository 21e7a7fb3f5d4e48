//! Where the formulas of the brakes come from.

use crate::quantity::{Source, Standing};

/// Source of the hydraulic chain.
pub(crate) fn hydraulics() -> Source {
    Source::new("Pascal's law and the balance of moments; form of Limpert, Brake Design and Safety", Standing::Memory)
}

/// Source of drum geometry.
pub(crate) fn drums() -> Source {
    Source::new(
        "Balance of moments about the pivot of a shoe; proportions and friction are common practice, no source",
        Standing::Computed,
    )
}
