//! Gearing: ratios, road speed, chain length, and what the speedometer makes of it.
//!
//! Reading order: the formulas (`ratio`, `chain`, `chain_size`, `speedometer`), what they give on a bike (`train`, `fit`),
//! what is worth saying about it (`findings`, `working`), and the two answers: the page (`sheet`) and the quantities that
//! take part in ripple (`derived`).

mod chain;
mod chain_size;
mod derived;
mod findings;
mod fit;
mod ratio;
#[cfg(test)]
mod sample;
mod sheet;
mod speedometer;
mod train;
mod working;

pub use chain::{centre_distance, chain_length, next_even, pitch_diameter, turns_until_same_link};
pub use chain_size::{ChainDimensions, chain_dimensions, chain_size_source, pitch};
pub use derived::derive_gearing;
pub use fit::{ChainFit, links_for};
pub use ratio::{engine_speed, engine_speed_change, final_ratio, overall_ratio, road_speed};
pub use sheet::{GearingAsk, GearingSheet, gearing_sheet};
pub use speedometer::{
    SpeedometerShift, allowed_reading, reading_factor, speedometer_factor, speedometer_shift, speedometer_source,
};
pub use train::{GearLine, GearTrain};
