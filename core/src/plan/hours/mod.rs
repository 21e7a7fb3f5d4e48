//! The hours of the mechanic: bench time on the calendar, the bench time of each kind of job, the time axis, the air.

mod air;
mod bench_time;
mod task_hours;
mod time_axis;
mod work_span;

pub use air::air_needed;
pub(crate) use air::unknown_air;
pub(crate) use task_hours::{HoursAsked, TimeAxes};
pub use work_span::WorkSpan;
