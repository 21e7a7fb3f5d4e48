//! Coatings: what is on the can, and a cure that runs on temperature.

mod climate;
mod coat;
mod cure;
mod dew;
mod findings;
mod product;
mod sheet;
mod typical;
mod words;

pub use climate::ClimateLog;
pub use coat::Coat;
pub use cure::{CureState, Milestone, activation, cure_end_ms, equivalent_age, rate_factor};
pub use dew::{dew_point, surface_margin};
pub use product::{Product, ProductKind};
pub use sheet::{CureAsk, CurePoint, CureSheet, cure_sheet, running_cures};
pub use typical::{products, typical_product};
