//! The work: jobs, parts, the maker's torques, and the mechanic's hours.

mod bench_time;
mod job;
mod link;
mod message;
mod order;
mod part;
mod reason;
mod tightening;

pub(crate) use bench_time::spans_in_order;
pub use bench_time::{BenchTime, DayHours, DayOff, ExtraTime, Span};
pub use job::{Air, Job, JobPlace, JobState, SpotTaken, Stage, Step, StepAsk, Wait, WorkSpot};
pub(crate) use link::jobs_with;
pub use link::{JobLink, job_for};
pub(crate) use message::JobMessage;
pub(super) use order::closed_up;
pub use part::{Delivery, Part, PartState};
pub use reason::{ChangeKind, JobReason};
pub use tightening::Tightening;
