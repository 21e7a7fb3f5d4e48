//! Tyres: what a sidewall says, the circumference on which the wheel rolls, two tyres side by side, and what they are judged by.
//!
//! Reading order: the size (`size`, `reader`, `rating`) and the date (`date_code`, `age`), what they give on a wheel (`wheel`,
//! `reading`, `compare`, `judge`), what is worth saying (`findings`, `working`), and the two answers: the page (`sheet`) and the
//! quantities that take part in ripple (`derived`).

mod age;
mod compare;
mod date_code;
mod derived;
mod findings;
#[cfg(test)]
mod fuzz;
mod judge;
mod rating;
mod reader;
mod reading;
#[cfg(test)]
mod sample;
mod sheet;
mod size;
mod wheel;
mod working;

pub use age::{LOOK_YEARLY_YEARS, REPLACE_YEARS, TyreAge, TyreWeek, age_source, tyre_age};
pub use compare::{TyreChange, compare_tyres, ride_height_change, turns_per_km};
pub use date_code::{DateCode, WeekMade, age_years, date_source, decade_source};
pub use derived::derive_tyres;
pub use judge::{TyreCheck, load_check, rim_check, speed_check, tube_check, tyre_checks};
pub use rating::{Service, SpeedSymbol, load_kg};
pub use reading::{TyreEquivalent, TyreReading, tyre_reading};
pub use sheet::{TyreAsk, TyreSheet, tyre_sheet};
pub use size::{Construction, Section, Tube, TyreSize};
pub use wheel::{Rolling, rolling_circumference, rolling_pair, tyre_source};
