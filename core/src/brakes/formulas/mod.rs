//! The formulas of braking: pressure and force, travel, drums, stopping, bleeding.

mod bleeding;
mod drum;
mod hydraulic;
mod sources;
mod stopping;
mod travel;

pub use bleeding::{
    BleedStep, BleedThrough, BleedVolume, Bleeding, USUAL_DEPTH_MM, USUAL_STROKE_MM, bleed_volume, bleeding,
    hose_contents,
};
pub use drum::{CamLever, DrumShoes, ShoeFactors, cam_angle, cam_torque, shoe_factors, shoe_range};
pub(crate) use drum::{USUAL_PIVOT_SHARE, lining_friction};
pub use hydraulic::{
    BrakePair, CaliperPistons, HydraulicBrake, brake_torque, clamp_force, deceleration, hydraulic_ratio, lever_force,
    line_pressure, piston_area, pistons_one_side, tyre_force,
};
pub(crate) use sources::{drums, hydraulics, uniform};
pub use stopping::{
    BrakeEfficiency, DIRECTIVE_LINES, DirectiveLine, DirectiveStop, StoppingDeceleration, StoppingDistance,
    StoppingLine, braking_distance, deceleration_from_distance, deceleration_from_efficiency, efficiency,
    reaction_distance, stopping_lines,
};
pub use travel::{LeverTravel, SWELL_AT_BAR, clearance_volume, hose_volume, lever_travel, master_travel};
