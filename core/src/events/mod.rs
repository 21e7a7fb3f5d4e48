//! What comes about by itself: a list of events, told on return and carried to a calendar as alarms.

mod alarms;
mod due;

pub use alarms::{AlarmsAnswer, alarms_answer, calendar};
pub use due::{Due, DueKind, dues, since};
