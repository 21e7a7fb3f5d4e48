//! A wait that runs already.

use crate::message::Message;
use crate::plan::message::PlanFindingMessage;
use crate::quantity::{Finding, FindingCode, Weight};

/// A wait that runs from work that is done, or from a coat that belongs to no job.
#[derive(Clone, Debug)]
pub(crate) struct Running {
    /// Id of the job, or of the coat.
    pub(crate) id: String,
    /// What passes; none where the job leaves nothing to wait for.
    pub(crate) name: Option<Message>,
    /// On what or after which job, by its title.
    pub(crate) title: String,
    /// When it is over; none when that cannot be known.
    pub(crate) over_ms: Option<i64>,
    /// What follows must begin by then.
    pub(crate) closes_ms: Option<i64>,
}

pub(crate) fn endless(wait: Message, title: &str) -> Finding {
    let text = PlanFindingMessage::WaitWithoutEnd { wait, title: title.to_owned() };
    Finding::new(FindingCode::PlanWaitWithoutEnd, Weight::Care, text)
}
