//! From jobs to tasks: what each job needs, time limits, waits, paint jobs that run, and what there is only one of.

mod cycles;
mod limits;
mod needs;
mod notes;
mod painting;
mod resources;
mod running;
mod running_waits;
mod task;
mod waits;

pub(crate) use cycles::cycles;
pub(crate) use limits::{at_most_ms, limit_missed};
pub(crate) use needs::{MORNING_MINUTE, Needs, likely_day, minutes_left, missing};
pub(crate) use painting::give_up_windows;
pub(crate) use resources::{Freed, Takes};
pub(crate) use running::Running;
pub(crate) use task::{ReleaseCause, Task};
pub(crate) use waits::{Clockwork, WaitRule};
