//! Gearing: ratios, road speed, chain length, and what the speedometer makes of it.
//!
//! Reading order: `formulas`, what they give on a bike and how it is judged (`judge`), the pages of gearing and chain wear
//! (`page`), the choice of sprockets (`choice`), thrust and top speed (`thrust`), and the quantities that take part in ripple
//! (`derived`).

mod choice;
mod derived;
mod formulas;
mod judge;
pub(crate) mod message;
mod page;
#[cfg(test)]
mod sample;
mod thrust;

pub use choice::{
    AdjusterSpan, Hunting, SprocketChoiceAnswer, SprocketChoiceAsk, SprocketGoal, SprocketPair, TeethLimits,
    sprocket_choice_answer,
};
pub use formulas::{
    AdjusterUsed, CentreDistance, ChainDimensions, ChainElongation, ChainLength, ChainSizeDimensions, EngineSpeed,
    EngineSpeedChange, EngineSpeedDrop, FinalRatio, FreeChain, HuntingTooth, OverallRatio, PitchDiameter, RoadSpeed,
    ShownSpeed, TallerRatio, WantedRatio, WornCentreDistance, WornLength, adjuster_used, centre_distance,
    chain_dimensions, chain_length, chain_size_named, chain_size_source, common_divisor, drop_to, elongation,
    engine_speed, engine_speed_change, final_ratio, free_chain, next_even, overall_ratio, pitch, pitch_diameter,
    road_speed, shown_speed, taller_ratio, turns_until_same_link, wanted_ratio, worn_centre_distance, worn_length,
};
pub use judge::{
    AllowedReading, ChainFit, ChainOnSprocket, CorrectedReading, Corrector, CorrectorRatio, ELONGATION_READING,
    GearLine, GearTrain, MOST_SHIFT_PERCENT, Mesh, SpeedometerFactor, SpeedometerShift, TEST_SPEEDS_KMH, TightSpot,
    WearLimit, WearRule, WornPosition, allowed_reading, chain_on_sprocket, corrector_band, corrector_to_true,
    large_sprocket_limit, links_for, reading_factor, same_size, simplest_pair, speedometer_factor, speedometer_shift,
    speedometer_source,
};
pub use page::{ChainWearAnswer, ChainWearAsk, GearingAnswer, GearingAsk, WearMark, chain_wear_answer, gearing_answer};
pub use thrust::{
    Cruise, CubicPower, CurvePoint, FORMULA_TOP_KMH, GearCurve, GearDrop, GearingMatch, GearingVerdict, HeldBy,
    PeaksPower, PowerSource, PowerSpeed, Resistance, RoadLoad, RoadResistance, RollingCoefficient, RollingLaw,
    StandardAir, ThrustAnswer, ThrustAsk, ThrustAtTyre, TopSpeed, TorqueOfPower, WheelPower, air_density,
    air_resistance, cubic_law, peaks_agree, power_at_wheel, power_between_peaks, power_limited_speed,
    rolling_coefficient, slope_force, thrust, thrust_answer, torque_of,
};

pub use derived::{derive_gearing, derived_top_speed};
