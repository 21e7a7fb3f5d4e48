//! What a sidewall says: size, service description and date code, read from the text that is kept.

mod date_code;
mod diameter;
#[cfg(test)]
mod fuzz;
mod message;
mod rating;
mod reader;
mod size;

pub use date_code::{DateCode, WeekMade, age_years, date_source, decade_source};
pub(crate) use date_code::{FIELD, age_days};
pub use diameter::{OuterDiameter, RollingCircumference, YearsOfDays, circumference, outer_diameter, years_of};
pub(crate) use message::SidewallMessage;
pub use rating::{Service, SpeedSymbol, load_kg};
pub(crate) use size::{AlphaLetter, is_low_section};
pub use size::{Construction, Section, Tube, TyreSize};
