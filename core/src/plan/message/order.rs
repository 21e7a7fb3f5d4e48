//! Why a part is to be ordered.

use layshaft_wire::message;

use crate::time::Day;

/// Why a part is to be ordered, and how urgent that is.
#[message("plan-order")]
pub(crate) enum PlanOrderMessage {
    /// Nothing is known of its delivery.
    NothingKnown { job: String },
    /// There is no plan that it could keep.
    Needed { job: String },
    /// The last day has passed.
    TooLate { job: String },
    /// The last day is today.
    Today { job: String },
    /// The last day is to come.
    By { job: String, day: Day },
}
