//! What the formulas give on a bike, and how it is judged: chain and adjuster, gears, speedometer, wear.

mod corrector;
pub(crate) mod findings;
mod fit;
mod mesh;
mod speedometer;
mod tight_spot;
mod train;
mod wear;

pub use corrector::{
    CorrectedReading, Corrector, CorrectorRatio, TEST_SPEEDS_KMH, corrector_band, corrector_to_true, simplest_pair,
};
pub(crate) use corrector::{corrector, production_source};
pub(crate) use fit::{Axle, choose_links, counts_that_fit, fit_chain, links_of, teeth, worn_position, worn_positions};
pub use fit::{ChainFit, WornPosition, links_for};
pub(crate) use mesh::on_mesh;
pub use mesh::{ChainOnSprocket, Mesh, chain_on_sprocket, same_size};
pub use speedometer::{
    AllowedReading, MOST_SHIFT_PERCENT, SpeedometerFactor, SpeedometerShift, allowed_reading, reading_factor,
    speedometer_factor, speedometer_shift, speedometer_source,
};
pub(crate) use speedometer::{Sender, corrector_of, speedometer};
pub use tight_spot::TightSpot;
pub(crate) use tight_spot::{on_tight_spot, tight_spot};
pub(crate) use train::gear_train;
pub use train::{GearLine, GearTrain};
pub use wear::{ELONGATION_READING, WearLimit, WearRule, large_sprocket_limit};
pub(crate) use wear::{judge_wear, noted_elongation, to_measure_again, wear_limits};
