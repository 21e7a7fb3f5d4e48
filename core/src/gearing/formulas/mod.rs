//! The formulas of the drive train: ratios, chains, and where they come from.

mod chain;
mod chain_size;
mod ratio;
mod sources;

pub use chain::{
    centre_distance, chain_length, common_divisor, next_even, pitch_diameter, turns_until_same_link,
    worn_centre_distance,
};
#[cfg(test)]
pub(crate) use chain_size::ALL;
pub use chain_size::{ChainDimensions, chain_dimensions, chain_size_named, chain_size_source, pitch};
pub use ratio::{engine_speed, engine_speed_change, final_ratio, overall_ratio, road_speed};
pub(crate) use sources::{geometry, kinematics, wear_source};
