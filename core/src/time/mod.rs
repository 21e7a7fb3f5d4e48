//! Moments, the local clock and civil days. The host gives the time; nothing here reads a clock.

mod day;
mod zone;

pub(crate) use day::{Day, LocalTime, TimeMessage};
pub use day::{check_day, check_written};
pub(crate) use zone::{DAY_MS, HOUR_MS, MINUTE_MS};
pub use zone::{Moment, Zone, ZoneShift};
