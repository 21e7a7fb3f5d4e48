//! Fasteners: which thread this is, how hard it may be pulled, how far it must go in, and what may replace it.
//!
//! Reading order: tables and formulas (`formulas`), and the page (`page`).

mod formulas;
mod message;
mod page;

pub use formulas::{
    AssemblyPreload, CLASSES, EngagementRule, FINE_FACTOR, INCH_MM, Identified, IdentifyThread, NutFactorTorque,
    PreloadFromTorque, PreloadTorque, PropertyClass, ScrewLoad, ScrewLoads, ScrewPlace, Seat, StressArea,
    SubstituteRule, THREADS, TappedInto, Thread, ThreadEngagement, ThreadFamily, ThreadMatch, TighteningTorque,
    YIELD_SHARE, assembly_preload, core_diameter, engaged_by_rule, engagement_length, flank_diameter, identify,
    nut_factor_torque, pitch_of_turns, preload_from_torque, screw_load, stress_area, tighten, tightening_torque,
};
pub(crate) use message::{ScrewMessage, ThreadMessage};
pub(crate) use page::FastenersWorking;
pub use page::{
    EngagementAdvice, FastenerAnswer, FastenerAsk, Lubrication, MakerTorque, ScrewStrength, TorqueBand, TorquePoint,
    fastener_answer,
};
