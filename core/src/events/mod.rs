//! What comes about by itself: a list of events, told on return and carried to a calendar as alarms.

mod alarms;
mod calendar;
mod due;
mod message;

pub use alarms::{AlarmsAnswer, alarms_answer};
pub use calendar::{CalendarAnswer, CalendarAsk, CalendarEntry, calendar_answer};
pub use due::{Due, DueKind, dues, since};
pub(crate) use message::{EventMessage, EventsMessage};
