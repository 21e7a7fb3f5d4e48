//! What the program says about a bike, and why one may believe it: findings, derived quantities, workings and sources.

mod codes;
mod compared;
mod derived;
mod equation;
mod figure;
mod finding;
mod formula;
mod formula_source;
mod input;
mod line;
mod source;
mod working;

pub use codes::FindingCode;
pub use compared::{Difference, PercentChange, percent_change};
pub use derived::{Derived, Judgement, Quantity};
pub use figure::{Figure, Figures};
pub use finding::{Finding, Weight};
pub use formula::{Area, FormulaCard, OutputCard};
pub(crate) use formula::{Definition, Evaluate, InputDefinition, OutputDefinition, formula};
pub(crate) use formula_source::FormulaSource;
pub use input::{Accepts, InputCard};
pub(crate) use input::{Given, Input, within};
pub(crate) use line::Line;
pub use source::{Source, Standing};
pub use working::{WorkLine, Working};
