//! The page of a tyre: what is asked, what is answered, how it was worked out.

mod answer;
mod working;

pub use answer::{TyreAnswer, TyreAsk, tyre_answer};
