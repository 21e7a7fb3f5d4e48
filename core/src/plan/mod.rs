//! The plan: jobs in the order they need, on the calendar of the mechanic's hours, through every cure and wait.

mod bench_time;

pub mod project;

mod bench;
mod blocks;
mod chain;
mod chance;
mod circles;
mod dates;
mod fill;
mod fits;
mod held_by;
mod holders;
mod lay;
mod least;
mod limits;
mod live;
mod needs;
mod notes;
mod offers;
mod order_first;
mod orders;
mod own_time;
mod painting;
mod priorities;
mod rehearse;
mod rows;
mod running;
mod schedule;
mod slack;
mod spots;
mod spread;
mod standing;
mod waits;
mod weather;

mod sheet;
mod suppose;

pub use chance::{Odds, OddsPoint};
pub use holders::{Holder, HolderKind};
pub use offers::Offer;
pub use order_first::ToOrder;
pub use schedule::{Scheduled, schedule, schedule_keeping};
pub use sheet::{DayMark, PlanAsk, PlanRow, PlanSheet, WorkSpan, plan_sheet};
pub use spread::{Spread, latest_of, lognormal_quantile, triangular_quantile};
pub use standing::Standing;
pub use suppose::{Supposed, Supposition};
pub use weather::air_words;

#[cfg(test)]
mod brute;
#[cfg(test)]
mod cases;
#[cfg(test)]
mod checker;
#[cfg(test)]
pub(crate) mod example;
#[cfg(test)]
mod hours_cases;
#[cfg(test)]
mod laws;
#[cfg(test)]
mod paint_cases;
