//! One job as a row of the plan.

use layshaft_wire::wire;

use crate::message::Message;
use crate::plan::WorkSpan;
use crate::record::{JobState, Stage};

/// A job on the calendar.
#[wire]
pub struct PlanRow {
    /// Id of the job.
    pub job: String,
    /// Title.
    pub title: String,
    /// Stage.
    pub stage: Stage,
    /// How far it is.
    pub state: JobState,
    /// Hands-on minutes left.
    pub minutes_left: f64,
    /// Work on the calendar, in order; empty when done or when it cannot be planned.
    pub work: Vec<WorkSpan>,
    /// The wait after it ends here, milliseconds since 1970 (UTC).
    pub wait_until_ms: Option<i64>,
    /// What passes meanwhile.
    pub wait_name: Option<Message>,
    /// It holds the ready date: put off to the next bench time, it would move the date, or a time limit would pass.
    pub critical: bool,
    /// In what share of the runs through the plan it holds the date, 0 to 1; none where nothing varies or it is done.
    pub critical_share: Option<f64>,
    /// How much later it could end without moving the ready date, hours.
    pub slack_hours: Option<f64>,
    /// Its work must begin by then, milliseconds since 1970 (UTC): the job before it leaves only so much time, as a
    /// recoat window does.
    pub begin_by_ms: Option<i64>,
    /// What it waits for, by name; empty when it can begin now.
    pub blocked_by: Vec<Message>,
    /// Ids of the jobs that it must follow.
    pub after: Vec<String>,
}
