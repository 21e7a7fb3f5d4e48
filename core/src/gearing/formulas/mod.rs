//! The formulas of the drive train: ratios, chains, and where they come from.

mod adjuster;
mod chain;
mod chain_run;
mod chain_size;
mod compared;
mod ratio;
mod shown_speed;
mod sources;
mod wear;

pub use adjuster::{AdjusterUsed, FreeChain, adjuster_used, free_chain};
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
pub use compared::{EngineSpeedChange, FinalRatio, TallerRatio, taller_ratio};
pub use ratio::{
    EngineSpeed, EngineSpeedDrop, OverallRatio, RoadSpeed, WantedRatio, drop_to, engine_speed, engine_speed_change,
    final_ratio, overall_ratio, road_speed, wanted_ratio,
};
pub use shown_speed::{ShownSpeed, shown_speed};
pub(crate) use sources::{geometry, kinematics, wear_source};
pub use wear::{elongation, worn_length};
