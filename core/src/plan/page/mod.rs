//! The plan page, with what may be supposed otherwise.

mod answer;
mod offers;
mod suppose;

pub use answer::{DayMark, PlanAsk, PlanSheet, plan_sheet};
pub use offers::Offer;
pub use suppose::{Supposed, Supposition};
