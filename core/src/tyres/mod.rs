//! Tyres: reading a size code, and the circumference on which the wheel rolls.

mod compare;
mod date_code;
mod rating;
mod reader;
mod size;
mod wheel;

pub use compare::{TyreChange, compare_tyres, ride_height_change, turns_per_km};
pub use date_code::{DateCode, WeekMade, age_years, date_source, decade_source};
pub use rating::{Service, SpeedSymbol, load_kg};
pub use size::{Construction, Section, Tube, TyreSize};
pub use wheel::{Rolling, rolling_circumference, rolling_pair, tyre_source};
