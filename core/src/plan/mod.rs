//! The plan: jobs in the order they need, on the calendar of the mechanic's hours, through every cure and wait.
//!
//! Reading order: the hours (`hours`), jobs as tasks (`tasks`), the search for a timetable (`search`, with project scheduling
//! without a calendar in `search/rcpsp`), what each job waits for and why (`explain`), how sure the date is (`outlook`), all of
//! it together (`schedule`), and the page (`page`). What they say is declared in `message`. The tests of the whole stand in `tests`.

mod explain;
mod hours;
mod message;
mod outlook;
mod page;
mod schedule;
mod search;
mod tasks;
#[cfg(test)]
pub(crate) mod tests;

pub use explain::PlanRow;
pub use hours::{WorkSpan, air_needed};
pub(crate) use message::{
    PlanAskedMessage, PlanDateMessage, PlanFindingMessage, PlanNeverFitsMessage, PlanOrderMessage, PlanRefusedMessage,
    PlanWaitMessage,
};
pub use outlook::{
    Arrival, Holder, HolderKind, LaterOfTwo, LognormalQuantile, Odds, OddsPoint, Spread, ToOrder, TriangularQuantile,
    arrival, latest_of, lognormal_quantile, triangular_quantile,
};
pub use page::{DayMark, Offer, PlanAnswer, PlanAsk, Supposed, Supposition, plan_answer};
pub use search::{PreviousOrder, rcpsp};

pub use schedule::{Scheduled, schedule, schedule_keeping};
