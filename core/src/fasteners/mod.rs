//! Fasteners: which thread this is, how hard it may be pulled, how far it must go in, and what may replace it.
//!
//! Reading order: geometry and tables (`thread`), naming a thread (`identify`), classes (`strength`), torque (`torque`),
//! engagement and substitutes (`engagement`), and the answer (`sheet`, `findings`, `words`).

mod engagement;
mod findings;
mod identify;
mod sheet;
mod strength;
mod thread;
mod torque;
mod words;

pub use engagement::{FINE_FACTOR, ScrewPlace, SubstituteRule, TappedInto, engagement_length};
pub use identify::{Identified, ThreadMatch, identify};
pub use sheet::{
    EngagementAdvice, FastenerAsk, FastenerSheet, Lubrication, MakerTorque, ScrewStrength, TorqueBand, TorquePoint,
    fastener_sheet,
};
pub use strength::{CLASSES, PropertyClass, screw_load};
pub use thread::{INCH_MM, THREADS, Thread, ThreadFamily, core_diameter, flank_diameter, pitch_of_turns, stress_area};
pub use torque::{
    Seat, YIELD_SHARE, assembly_preload, nut_factor_torque, preload_from_torque, tighten, tightening_torque,
};
