//! The plan page, with what may be supposed otherwise.

mod answer;
mod offers;
mod suppose;

pub use answer::{DayMark, PlanAnswer, PlanAsk, plan_answer};
pub use offers::Offer;
pub use suppose::{Supposed, Supposition};
