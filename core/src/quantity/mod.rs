//! What the program says about a bike, and why one may believe it: findings, derived quantities, workings and sources.

mod codes;
mod derived;
mod finding;
mod source;
mod working;

pub use codes::FindingCode;
pub use derived::{Derived, Judgement, Quantity};
pub use finding::{Finding, Weight};
pub use source::{Source, Standing};
pub use working::{WorkLine, Working};
