//! Where ready-made figures come from.

use layshaft_wire::message;

/// Where ready-made figures come from.
#[message("ready-made-source")]
pub(crate) enum ReadyMadeSource {
    /// Of a wait without a product.
    CommonPractice,
    /// Of a typical sheet that the owner changed.
    ChangedSheet,
    /// Of the product of the owner.
    OwnCan,
}

/// How a ready-made job goes with what the bike is.
#[message("ready-made-fit")]
pub(crate) enum ReadyMadeFit {
    /// No disc brake to work on.
    NoDisc,
    /// No drum brake to work on.
    NoDrum,
    /// Nothing with a radiator.
    CooledByAir,
    /// Nothing with fins alone.
    CooledByLiquid,
    /// Nothing that only a four-stroke has.
    TwoStroke,
    /// Nothing that only a two-stroke has.
    FourStroke,
    /// Brakes of which nothing is written down.
    BrakesUnknown,
    /// Cooling that is not written down.
    CoolingUnknown,
    /// Strokes that are not written down.
    StrokesUnknown,
}
