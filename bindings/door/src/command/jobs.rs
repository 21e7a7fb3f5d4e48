//! What was done about jobs.

use layshaft_core::record::Job;
use layshaft_wire::wire;

/// Adds a job.
#[wire]
pub struct AddJob {
    /// The job.
    pub job: Job,
}

/// Adds a ready-made job.
#[wire]
pub struct AddReadyMade {
    /// Its id.
    pub ready_made: String,
}

/// Changes a job.
#[wire]
pub struct ChangeJob {
    /// Its id.
    pub id: String,
    /// The job as it shall be.
    pub job: Job,
}

/// Puts a job away.
#[wire]
pub struct PutJobAway {
    /// Its id.
    pub id: String,
}

/// Brings a job back.
#[wire]
pub struct BringJobBack {
    /// Its id.
    pub id: String,
}

/// Begins a job.
#[wire]
pub struct BeginJob {
    /// Its id.
    pub id: String,
}

/// Ticks steps of a job off.
#[wire]
pub struct TickStep {
    /// Its id.
    pub id: String,
    /// Steps done, from the first.
    pub steps_done: u32,
}

/// Puts a tool that is not at hand on the list of parts: the job waits for it as for any part.
#[wire]
pub struct LackTool {
    /// The job's id.
    pub id: String,
    /// The tool, as the job names it.
    pub tool: String,
}

/// Finishes a job.
#[wire]
pub struct FinishJob {
    /// Its id.
    pub id: String,
}

/// Opens a finished job again.
#[wire]
pub struct ReopenJob {
    /// Its id.
    pub id: String,
}
