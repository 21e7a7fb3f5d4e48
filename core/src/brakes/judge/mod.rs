//! What the formulas give on a bike, and how it is judged: a line from fingers to road, a pair against another, a drum, the fluid.

mod compare;
mod derived;
pub(crate) mod drum_state;
pub(crate) mod findings;
pub(crate) mod fluid;
mod line;

pub(crate) use compare::swap;
pub use compare::{BrakeChange, BrakeSwap, compare, effort_change, judge_ratio, ratio_source, travel_change};
pub use derived::derive_brakes;
pub use drum_state::{DrumState, drum_state};
pub use fluid::{BrakeFluidBoiling, FluidCard, Meeting, fluid_source};
pub(crate) use line::wheel_radius;
pub use line::{BrakeLine, Effort, brake_line};
