//! Brakes: from the fingers to the road, a new pair against the old, drums, stopping, fluid and bleeding.
//!
//! Reading order: `formulas`, what they give on a bike and how it is judged (`judge`, with the quantities that take part in
//! ripple in `derived`), and the page (`page`).

mod formulas;
mod judge;
pub(crate) mod message;
mod page;
#[cfg(test)]
mod sample;

pub use formulas::{
    BleedStep, BleedThrough, BleedVolume, Bleeding, BrakeEfficiency, BrakePair, CaliperPistons, CamLever,
    DIRECTIVE_LINES, DirectiveLine, DirectiveStop, DrumShoes, HydraulicBrake, LeverTravel, SWELL_AT_BAR, ShoeFactors,
    StoppingDeceleration, StoppingDistance, StoppingLine, USUAL_DEPTH_MM, USUAL_STROKE_MM, bleed_volume, bleeding,
    brake_torque, braking_distance, cam_angle, cam_torque, clamp_force, clearance_volume, deceleration,
    deceleration_from_distance, deceleration_from_efficiency, efficiency, hose_contents, hose_volume, hydraulic_ratio,
    lever_force, lever_travel, line_pressure, master_travel, piston_area, pistons_one_side, reaction_distance,
    shoe_factors, shoe_range, stopping_lines, tyre_force,
};
pub use judge::{
    BrakeChange, BrakeFluidBoiling, BrakeLine, BrakeSwap, DrumState, Effort, FluidCard, Meeting, brake_line, compare,
    derive_brakes, drum_state, effort_change, fluid_source, judge_ratio, ratio_source, travel_change,
};
pub use page::{BrakeAnswer, BrakeAsk, FluidAdvice, StoppingAnswer, brake_answer};
