//! What the fastener page is asked, and what it answers.

use layshaft_wire::wire;

use crate::fasteners::formulas::{ScrewPlace, SubstituteRule, TappedInto, ThreadMatch};
use crate::message::Message;
use crate::quantity::{Finding, Working};

/// How thread and head are lubricated.
#[wire]
pub enum Lubrication {
    /// As it comes, dry and clean.
    Dry,
    /// A drop of oil.
    Oiled,
    /// Grease, copper or ceramic paste.
    Paste,
    /// Liquid thread lock.
    ThreadLock,
}

impl Lubrication {
    /// Least and greatest friction of thread and head. Common practice, no source; the spread between two screws of one box is
    /// as wide.
    ///
    /// ```
    /// assert_eq!(layshaft_core::fasteners::Lubrication::Oiled.friction(), (0.10, 0.14));
    /// ```
    pub fn friction(self) -> (f64, f64) {
        match self {
            Self::Dry => (0.12, 0.18),
            Self::Oiled => (0.10, 0.14),
            Self::Paste => (0.08, 0.12),
            Self::ThreadLock => (0.12, 0.16),
        }
    }
}

/// A torque from the maker's manual, with where it stands.
#[wire]
pub struct MakerTorque {
    /// Torque, N m.
    pub torque_nm: f64,
    /// Where it stands: manual and page.
    pub source: String,
}

/// What to work out. Diameter and pitch are needed; the rest gives what it can.
#[wire(lenient)]
pub struct FastenerAsk {
    /// Measured outer diameter of the screw, mm.
    pub diameter_mm: Option<f64>,
    /// Measured pitch, mm.
    pub pitch_mm: Option<f64>,
    /// Or turns in an inch.
    pub turns_per_inch: Option<f64>,
    /// Or turns counted over a length.
    pub turns: Option<f64>,
    /// The length over which they were counted, mm.
    pub over_mm: Option<f64>,
    /// Name of one of the threads that fit, when the nearest is not the one.
    pub thread: Option<String>,
    /// Property class on the head: 8.8.
    pub property_class: Option<String>,
    /// How it is lubricated; left out: oiled.
    pub lubrication: Option<Lubrication>,
    /// Outer diameter of the seat under the head, mm; left out: that of a hexagon head.
    pub bearing_mm: Option<f64>,
    /// Clearance hole, mm; left out: a medium hole.
    pub hole_mm: Option<f64>,
    /// What it goes into.
    pub tapped_into: Option<TappedInto>,
    /// Shear strength of that, MPa, where it is known.
    pub shear_mpa: Option<f64>,
    /// Thread engaged, mm.
    pub engagement_mm: Option<f64>,
    /// The maker's figure; it wins.
    pub maker: Option<MakerTorque>,
    /// Where it sits, for what may replace it.
    pub place: Option<ScrewPlace>,
}

/// What a screw bears.
#[wire]
pub struct ScrewStrength {
    /// Property class.
    pub property_class: String,
    /// Stress area, mm².
    pub stress_area_mm2: f64,
    /// Proof load, N.
    pub proof_newtons: f64,
    /// Load at which it breaks, N.
    pub tensile_newtons: f64,
}

/// Preload and torque at one friction.
#[wire]
pub struct TorquePoint {
    /// Friction of thread and head.
    pub friction: f64,
    /// Preload, N.
    pub preload_newtons: f64,
    /// Torque, N m.
    pub torque_nm: f64,
}

/// The torque as a band.
#[wire]
pub struct TorqueBand {
    /// How it is lubricated.
    pub lubrication: Lubrication,
    /// At the least friction: the torque that is safe for every screw of the band.
    pub least: TorquePoint,
    /// In the middle.
    pub middle: TorquePoint,
    /// At the greatest friction.
    pub most: TorquePoint,
    /// The maker's figure, where it was given. It wins.
    pub maker: Option<MakerTorque>,
    /// Preload that the maker's figure gives at the greatest friction, N.
    pub maker_preload_least: Option<f64>,
    /// Preload that the maker's figure gives at the least friction, N.
    pub maker_preload_most: Option<f64>,
}

/// How far it must go in.
#[wire]
pub struct EngagementAdvice {
    /// What it goes into.
    pub tapped_into: TappedInto,
    /// The shorter of the rules, mm.
    pub least_mm: f64,
    /// The longer of the rules, mm.
    pub most_mm: f64,
    /// So that the screw breaks before the thread strips, mm, where the shear strength is known.
    pub screw_breaks_first_mm: Option<f64>,
    /// What is engaged, mm.
    pub engaged_mm: Option<f64>,
    /// Advice on an insert.
    pub insert: Message,
}

/// The fastener page.
#[wire]
pub struct FastenerAnswer {
    /// Measured pitch, mm.
    pub pitch_mm: f64,
    /// Measured turns in an inch.
    pub turns_per_inch: f64,
    /// The thread that the rest is worked out for.
    pub thread: Option<ThreadMatch>,
    /// Threads that fit, the nearest first.
    pub likely: Vec<ThreadMatch>,
    /// Threads that could be taken for it.
    pub neighbours: Vec<ThreadMatch>,
    /// What it bears, where the class is known.
    pub strength: Option<ScrewStrength>,
    /// Torque, where class and seat are known.
    pub torque: Option<TorqueBand>,
    /// How far it must go in, where that is asked.
    pub engagement: Option<EngagementAdvice>,
    /// What may replace it: the rule of its place, else all of them.
    pub substitutes: Vec<SubstituteRule>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}
