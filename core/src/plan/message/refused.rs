//! What cannot be supposed or reckoned, and the source of the quantiles.

use layshaft_wire::message;

use crate::message::Measure;

/// Why a supposition or the days of a delivery were not accepted, and where the quantiles come from.
#[message("plan")]
pub(crate) enum PlanRefusedMessage {
    /// The field that names a part.
    FieldPart,
    /// The bike has no such part.
    NoSuchPart,
    /// A part that has no day cannot come later.
    PartNeverExpected,
    /// The week would have no bench time.
    NoBenchTimeLeft,
    /// The days of a delivery do not rise.
    DaysOutOfOrder { least: Measure, likely: Measure, most: Measure },
    /// The median of a delivery lies behind its 90th percentile.
    MedianTooLate { median: Measure, p90: Measure },
    /// Source of the quantiles.
    SourceQuantiles,
}
