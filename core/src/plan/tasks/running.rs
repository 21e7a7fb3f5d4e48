//! A wait that runs already.

use crate::quantity::{Finding, FindingCode, Weight};

/// A wait that runs from work that is done, or from a coat that belongs to no job.
#[derive(Clone, Debug)]
pub(crate) struct Running {
    /// Id of the job, or of the coat.
    pub(crate) id: String,
    /// What passes.
    pub(crate) name: String,
    /// On what or after which job, by its title.
    pub(crate) title: String,
    /// When it is over; none when that cannot be known.
    pub(crate) over_ms: Option<i64>,
    /// What follows must begin by then.
    pub(crate) closes_ms: Option<i64>,
}

pub(crate) fn endless(name: &str, title: &str) -> Finding {
    Finding::new(
        FindingCode::PlanWaitWithoutEnd,
        Weight::Care,
        format!(
            "When “{name}” on “{title}” is over cannot be said: its time is not known, or it is too cold there to cure. \
             What follows cannot be planned."
        ),
    )
}
