//! Gearing: ratios, road speed, chain length, and what the speedometer makes of it.
//!
//! Reading order: the formulas (`ratio`, `chain`, `chain_size`, `mesh`, `wear`, `speedometer`, `corrector`), what they give on a
//! bike (`train`, `fit`, `tight_spot`), what is worth saying about it (`findings`, `working`), and the answers: the page
//! (`sheet`), the choice of sprockets (`choice`), chain wear (`wear_sheet`), thrust and top speed (`thrust`), and the quantities
//! that take part in ripple (`derived`).

mod chain;
mod chain_size;
mod choice;
mod corrector;
mod derived;
mod findings;
mod fit;
mod mesh;
mod ratio;
#[cfg(test)]
mod sample;
mod sheet;
mod speedometer;
mod thrust;
mod tight_spot;
mod train;
mod wear;
mod wear_sheet;
mod working;

pub use chain::{
    centre_distance, chain_length, common_divisor, next_even, pitch_diameter, turns_until_same_link,
    worn_centre_distance,
};
pub use chain_size::{ChainDimensions, chain_dimensions, chain_size_named, chain_size_source, pitch};
pub use choice::{
    AdjusterSpan, Hunting, SprocketChoiceAsk, SprocketChoiceSheet, SprocketGoal, SprocketPair, TeethLimits,
    sprocket_choice_sheet, wanted_ratio,
};
pub use corrector::{CorrectedReading, Corrector, TEST_SPEEDS_KMH, corrector_band, corrector_to_true, simplest_pair};
pub use derived::{derive_gearing, derived_top_speed};
pub use fit::{ChainFit, WornPosition, links_for};
pub use mesh::{Mesh, chain_on_sprocket, same_size};
pub use ratio::{engine_speed, engine_speed_change, final_ratio, overall_ratio, road_speed};
pub use sheet::{GearingAsk, GearingSheet, gearing_sheet};
pub use speedometer::{
    SpeedometerShift, allowed_reading, reading_factor, speedometer_factor, speedometer_shift, speedometer_source,
};
pub use thrust::{
    Cruise, CurvePoint, FORMULA_TOP_KMH, GearCurve, GearDrop, GearingMatch, GearingVerdict, HeldBy, PowerSource,
    Resistance, RoadLoad, RollingLaw, ThrustAsk, ThrustSheet, TopSpeed, air_density, air_resistance, cubic_law,
    drop_to, peaks_agree, power_between_peaks, power_limited_speed, rolling_coefficient, slope_force, thrust,
    thrust_sheet, torque_of,
};
pub use tight_spot::TightSpot;
pub use train::{GearLine, GearTrain};
pub use wear::{ELONGATION_READING, WearLimit, WearRule, elongation, large_sprocket_limit, worn_length};
pub use wear_sheet::{ChainWearAsk, ChainWearSheet, WearMark, chain_wear_sheet};
