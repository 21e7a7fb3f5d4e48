//! Today: what to do next with the time at hand, what cures, when the bike will be ready, what stops it.

mod answer;
mod message;
mod next;
mod not_said;
#[cfg(test)]
mod tests;

pub use answer::{PartDue, TodayAnswer, TodayAsk, today_answer};
pub(crate) use message::TodayMessage;
pub use next::NextJob;
pub use not_said::NotSaid;
