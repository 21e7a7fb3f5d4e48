//! Why a coat, a product or a paint job is refused.

use layshaft_wire::message;

use crate::message::Measure;
use crate::time::LocalTime;

/// Why a coat, a product or a paint job is refused.
#[message("paint")]
pub(crate) enum PaintMessage {
    /// A coat that ends before it went on.
    CoatEndsTooSoon,
    /// A coat of the future.
    LiesAhead { at: LocalTime, now: LocalTime },
    /// A decal as the first step.
    DecalFirst,
    /// A decal with nothing over it.
    DecalBare,
    /// The product of a step, as a field.
    ProductOf { step: String },
    /// What to do about a coat without a product.
    ChooseProduct,
    /// A decal with a product.
    DecalTakesNone { step: String },
    /// What to do about a sheet without any time.
    EnterATime,
    /// A window that closes before it opens.
    WindowShutFirst { first: Measure, then: Measure },
    /// Handled before it is touch dry.
    HandledWet { first: Measure, then: Measure },
    /// Cured before it is touch dry.
    CuredWet { first: Measure, then: Measure },
    /// Cured before it can be handled.
    CuredUnhandled { first: Measure, then: Measure },
    /// A lowest temperature above the one of the times.
    LowestAboveTimes { lowest: Measure, at: Measure },
    /// What to do about half a ratio.
    EnterRatio,
    /// What to do about half a second time.
    EnterFromSheet,
    /// What to do about a missing first temperature.
    EnterFirstTemperature,
    /// What to do about a missing first time.
    EnterFirstTime,
    /// Two temperatures that say nothing.
    TooClose { second: Measure, first: Measure, apart: Measure },
    /// Slower where it is warmer.
    WarmIsQuicker { hours: Measure, celsius: Measure, first_hours: Measure, first_celsius: Measure },
    /// Times that no paint has.
    NoPaintSo {
        hours: Measure,
        celsius: Measure,
        first_hours: Measure,
        first_celsius: Measure,
        found: Measure,
        min: Measure,
        max: Measure,
    },
    /// What to do about a lamp without a temperature.
    MeasureOnSurface,
}
