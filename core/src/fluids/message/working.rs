//! What the lines of a working give.

use layshaft_wire::message;

use crate::message::Measure;

/// A line on filling or mixing.
#[message("fluids-working")]
pub(crate) enum FluidsWorking {
    /// What is poured with a cup.
    Pour { cup: Measure },
    /// All of it.
    Together,
    /// Spreading rate.
    SpreadingRate,
    /// Paint at the least loss.
    PaintLeast,
    /// Paint at the greatest loss.
    PaintMost,
    /// Oil of a premix.
    Oil,
    /// Base.
    Base,
    /// Hardener.
    Hardener,
    /// Thinner by a share of base and hardener.
    ThinnerOfBoth,
    /// Thinner by a share of the base.
    ThinnerOfBase,
    /// Thinner of a paint.
    Thinner,
}
