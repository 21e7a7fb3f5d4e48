//! The formulas of the drive train: ratios, chains, and where they come from.

mod chain;
mod chain_run;
mod chain_size;
mod ratio;
mod sources;
mod wear;

pub use chain::{
    centre_distance, chain_length, common_divisor, next_even, pitch_diameter, turns_until_same_link,
    worn_centre_distance,
};
pub use chain_run::{
    CentreDistance, ChainElongation, ChainLength, ChainSizeDimensions, HuntingTooth, PitchDiameter, WornCentreDistance,
    WornLength,
};
#[cfg(test)]
pub(crate) use chain_size::ALL;
pub use chain_size::{ChainDimensions, chain_dimensions, chain_size_named, chain_size_source, pitch};
pub use ratio::{
    EngineSpeed, EngineSpeedDrop, OverallRatio, RoadSpeed, WantedRatio, drop_to, engine_speed, engine_speed_change,
    final_ratio, overall_ratio, road_speed, wanted_ratio,
};
pub(crate) use sources::{geometry, kinematics, wear_source};
pub use wear::{elongation, worn_length};
