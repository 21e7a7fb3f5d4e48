//! Threads, classes, torque and engagement: tables and formulas.

mod engagement;
mod identify;
mod screw;
mod strength;
mod thread;
mod tightening;
mod torque;

pub use engagement::{FINE_FACTOR, ScrewPlace, SubstituteRule, TappedInto, engaged_by_rule, engagement_length};
pub use identify::{Identified, ThreadMatch, identify};
pub use screw::{
    IdentifyThread, NutFactorTorque, PreloadFromTorque, ScrewLoads, StressArea, ThreadEngagement, TighteningTorque,
};
pub use strength::{CLASSES, PropertyClass, screw_load};
pub use thread::{INCH_MM, THREADS, Thread, ThreadFamily, core_diameter, flank_diameter, pitch_of_turns, stress_area};
pub use tightening::{AssemblyPreload, EngagementRule, PreloadTorque, ScrewLoad};
pub use torque::{
    Seat, YIELD_SHARE, assembly_preload, nut_factor_torque, preload_from_torque, tighten, tightening_torque,
};
