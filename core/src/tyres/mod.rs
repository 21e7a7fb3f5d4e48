//! Tyres: the circumference on which the wheel rolls, two tyres side by side, and what they are judged by. What a sidewall says
//! is read in `record`.
//!
//! Reading order: what a tyre gives on a wheel (`wheel`, `reading`, `compare`, `age`), how it is judged (`checks`, `findings`),
//! the quantities that take part in ripple (`derived`), and the page (`page`).

mod age;
mod checks;
mod compare;
mod derived;
mod findings;
mod formulas;
pub(crate) mod message;
mod page;
mod reading;
mod rolled;
#[cfg(test)]
mod sample;
mod wheel;

pub use checks::{TyreCheck, TyreLimit, load_check, rim_check, speed_check, tube_check, tyre_checks};
pub use page::{TyreAnswer, TyreAsk, tyre_answer};

pub use age::{LOOK_YEARLY_YEARS, REPLACE_YEARS, TyreAge, TyreWeek, age_source, tyre_age};
pub use compare::{TyreChange, compare_tyres, ride_height_change, turns_per_km};
pub use derived::derive_tyres;
pub use formulas::{
    AgeOfTyre, RideHeight, ScaledCircumference, TurnsPerKilometre, TyreAgainst, TyreDiameter, TyreRating,
};
pub use reading::{TyreEquivalent, TyreReading, tyre_reading};
pub(crate) use rolled::rolling_line;
pub use wheel::{Rolling, rolling_circumference, rolling_pair, scaled_circumference, tyre_source};
