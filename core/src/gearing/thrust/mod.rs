//! Thrust and top speed: what the engine pushes with in each gear, what holds the machine back, and where the two meet.
//!
//! Reading order: the formulas (`air`, `road_load`, `power`, `top_speed`), what they are worked out with on a bike (`machine`),
//! the lines (`curves`, `gears`), what is worth saying (`findings`, `working`), the page (`sheet`) and the quantities (`derived`).

mod air;
mod answer;
mod at_wheel;
mod curves;
mod derived;
mod findings;
mod formulas;
mod gears;
mod machine;
mod power;
mod road_load;
mod sources;
#[cfg(test)]
mod tests;
mod top_speed;
mod working;

pub use answer::{PowerSource, ThrustAnswer, thrust_answer};

pub use air::air_density;
pub use at_wheel::{TorqueOfPower, WheelPower, power_at_wheel};
pub use curves::{CurvePoint, GearCurve};
pub(super) use derived::derive_thrust;
pub use formulas::{CubicPower, PeaksPower, PowerSpeed, RoadResistance, RollingCoefficient, StandardAir, ThrustAtTyre};
pub use gears::{Cruise, GearDrop, GearingMatch, GearingVerdict};
pub use machine::ThrustAsk;
pub use power::{cubic_law, peaks_agree, power_between_peaks, torque_of};
pub use road_load::{
    FORMULA_TOP_KMH, Resistance, RoadLoad, RollingLaw, air_resistance, rolling_coefficient, slope_force, thrust,
};
pub use top_speed::{HeldBy, TopSpeed, power_limited_speed};
