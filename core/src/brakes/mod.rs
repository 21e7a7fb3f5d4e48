//! Brakes: from the fingers to the road, a new pair against the old, drums, stopping, fluid and bleeding.
//!
//! Reading order: the formulas (`hydraulic`, `travel`, `drum`, `stopping`), what they give on a bike (`line`, `compare`,
//! `drum_state`), fluid and its bleeding (`fluid`, `bleeding`), what is worth saying (`findings`, `working`), and the two
//! answers: the page (`sheet`) and the quantities that take part in ripple (`derived`).

mod bleeding;
mod compare;
mod derived;
mod drum;
mod drum_state;
mod findings;
mod fluid;
mod hydraulic;
mod line;
#[cfg(test)]
mod sample;
mod sheet;
mod stopping;
mod travel;
mod working;

pub use hydraulic::{
    brake_torque, clamp_force, deceleration, hydraulic_ratio, lever_force, line_pressure, piston_area,
    pistons_one_side, tyre_force,
};

pub use bleeding::{
    BleedStep, BleedVolume, Bleeding, USUAL_DEPTH_MM, USUAL_STROKE_MM, bleed_volume, bleeding, hose_contents,
};
pub use compare::{BrakeChange, compare, effort_change, judge_ratio, ratio_source, travel_change};
pub use derived::derive_brakes;
pub use drum::{ShoeFactors, cam_angle, cam_torque, shoe_factors, shoe_range};
pub use drum_state::{DrumState, drum_state};
pub use fluid::{FluidCard, Meeting, fluid_source};
pub use line::{BrakeLine, Effort, brake_line};
pub use sheet::{BrakeAsk, BrakeSheet, FluidAdvice, StoppingSheet, brake_sheet};
pub use stopping::{
    DIRECTIVE_LINES, DirectiveLine, StoppingLine, braking_distance, deceleration_from_distance,
    deceleration_from_efficiency, efficiency, reaction_distance, stopping_lines,
};
pub use travel::{SWELL_AT_BAR, clearance_volume, hose_volume, lever_travel, master_travel};
