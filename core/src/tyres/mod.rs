//! Tyres: what a sidewall says, the circumference on which the wheel rolls, two tyres side by side, and what they are judged by.
//!
//! Reading order: the size (`size`, `reader`, `rating`) and the date (`date_code`, `age`), what they give on a wheel (`wheel`,
//! `reading`, `compare`, `judge`), what is worth saying (`findings`, `working`), and the two answers: the page (`sheet`) and the
//! quantities that take part in ripple (`derived`).

mod age;
mod checks;
mod compare;
mod derived;
mod findings;
mod page;
mod reading;
#[cfg(test)]
mod sample;
mod wheel;

pub use checks::{TyreCheck, load_check, rim_check, speed_check, tube_check, tyre_checks};
pub use page::{TyreAsk, TyreSheet, tyre_sheet};

pub use age::{LOOK_YEARLY_YEARS, REPLACE_YEARS, TyreAge, TyreWeek, age_source, tyre_age};
pub use compare::{TyreChange, compare_tyres, ride_height_change, turns_per_km};
pub use derived::derive_tyres;
pub use reading::{TyreEquivalent, TyreReading, tyre_reading};
pub use wheel::{Rolling, rolling_circumference, rolling_pair, tyre_source};
