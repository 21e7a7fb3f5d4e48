//! What the brake page is asked, and what it answers.

use layshaft_wire::wire;

use crate::brakes::formulas::{Bleeding, StoppingLine};
use crate::brakes::judge::{BrakeChange, BrakeLine, DrumState, FluidCard, Meeting};
use crate::message::Message;
use crate::quantity::{Finding, Working};
use crate::record::{Brake, BrakeKind, End, FluidGrade};

/// What to work out. What is left out is taken from the fitted bike, or is as said.
#[wire(lenient)]
pub struct BrakeAsk {
    /// Which brake; left out: the front one.
    pub end: Option<End>,
    /// What would be fitted; fields left out are as fitted now.
    pub brake: Option<Brake>,
    /// Force at the lever or pedal, N; left out: 100.
    pub lever_newtons: Option<f64>,
    /// Rider, luggage and fluids, kg; left out: 90.
    pub load_kg: Option<f64>,
    /// Speed before braking, km/h; left out: 60, the speed of the type approval test.
    pub road_speed_kmh: Option<f64>,
    /// Reaction, s; left out: 1.
    pub reaction_seconds: Option<f64>,
    /// Grip of the road; left out: 0.8, dry tarmac.
    pub road_friction: Option<f64>,
    /// A stop that was measured from that speed, m, reaction included.
    pub metres: Option<f64>,
    /// Drum: travel of the rod or cable until the brake is on, mm.
    pub rod_travel_mm: Option<f64>,
    /// Fluid that would be poured in.
    pub pour_in: Option<FluidGrade>,
    /// Age of the fluid, years.
    pub fluid_years: Option<f64>,
    /// Water measured in the fluid, per cent.
    pub water_percent: Option<f64>,
}

/// Stopping with the brake that is looked at.
#[wire]
pub struct StoppingAnswer {
    /// Speed before braking, km/h.
    pub road_speed_kmh: f64,
    /// Reaction, s.
    pub reaction_seconds: f64,
    /// Way in the reaction, m.
    pub reaction_metres: f64,
    /// Deceleration at the worst, m/s², no more than the road allows.
    pub deceleration_least: Option<f64>,
    /// Deceleration at best, m/s², no more than the road allows.
    pub deceleration_most: Option<f64>,
    /// Shortest stop, m.
    pub metres_least: Option<f64>,
    /// Longest stop, m.
    pub metres_most: Option<f64>,
    /// Deceleration that a measured stop means, m/s².
    pub measured_deceleration: Option<f64>,
    /// The same in per cent of the weight.
    pub measured_percent: Option<f64>,
    /// Lines to set it against; the first is that of type approval.
    pub lines: Vec<StoppingLine>,
}

/// Brake fluid.
#[wire]
pub struct FluidAdvice {
    /// Every grade.
    pub grades: Vec<FluidCard>,
    /// What is in the bike.
    pub now: Option<FluidGrade>,
    /// Whether what would be poured in may meet it.
    pub meeting: Option<Meeting>,
}

/// The brake page.
#[wire]
pub struct BrakeAnswer {
    /// Which brake.
    pub end: End,
    /// Disc or drum, where it is known.
    pub brake: Option<BrakeKind>,
    /// As made, where it is a disc and known well enough.
    pub standard: Option<BrakeLine>,
    /// As asked, where it is a disc.
    pub proposed: Option<BrakeLine>,
    /// The one against the other.
    pub change: Option<BrakeChange>,
    /// The drum, where it is one.
    pub drum: Option<DrumState>,
    /// Stopping.
    pub stopping: StoppingAnswer,
    /// Fluid, where it is a disc.
    pub fluid: Option<FluidAdvice>,
    /// Bleeding, where it is a disc.
    pub bleeding: Option<Bleeding>,
    /// What to mind whatever the numbers say.
    pub cautions: Vec<Message>,
    /// What is worth saying.
    pub findings: Vec<Finding>,
    /// How it was worked out.
    pub working: Working,
}
