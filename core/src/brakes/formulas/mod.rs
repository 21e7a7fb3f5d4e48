//! The formulas of braking: pressure and force, travel, drums, stopping, bleeding.

mod bleeding;
mod drum;
mod hydraulic;
mod stopping;
mod travel;

pub use bleeding::{
    BleedStep, BleedVolume, Bleeding, USUAL_DEPTH_MM, USUAL_STROKE_MM, bleed_volume, bleeding, hose_contents,
};
pub use drum::{ShoeFactors, cam_angle, cam_torque, shoe_factors, shoe_range};
pub use hydraulic::{
    brake_torque, clamp_force, deceleration, hydraulic_ratio, lever_force, line_pressure, piston_area,
    pistons_one_side, tyre_force,
};
pub use stopping::{
    DIRECTIVE_LINES, DirectiveLine, StoppingLine, braking_distance, deceleration_from_distance,
    deceleration_from_efficiency, efficiency, reaction_distance, stopping_lines,
};
pub use travel::{SWELL_AT_BAR, clearance_volume, hose_volume, lever_travel, master_travel};
