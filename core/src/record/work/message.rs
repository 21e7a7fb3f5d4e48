//! Why a job, bench time or a delivery is refused.

use layshaft_wire::message;

use crate::message::Measure;

/// Why a job, bench time or a delivery is refused.
#[message("job")]
pub(crate) enum JobMessage {
    /// Bench time that ends before it begins.
    BenchTimeOrder { ends: String, begins: String },
    /// Temperatures the wrong way round.
    AirOrder { lowest: Measure, highest: Measure },
    /// Least hands-on time above the usual.
    LeastAboveUsual { usual: Measure },
    /// Most hands-on time below the usual.
    MostBelowUsual { usual: Measure },
    /// A wait longer than its time limit.
    WaitBeyondLimit { limit: Measure, wait: Measure },
    /// A delivery that may take far longer and takes no time.
    DeliveryTail,
    /// Days of a delivery out of order.
    DeliveryOrder { least: Measure, likely: Measure, most: Measure },
}
