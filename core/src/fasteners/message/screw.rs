//! What a screw bears, how hard it is pulled, how far it goes in, and what may replace it.

use layshaft_wire::message;

use crate::message::{List, Measure, Message};

/// A sentence about a screw, or what it goes into.
#[message("fasteners-screw")]
pub(crate) enum ScrewMessage {
    /// Field: the property class.
    PropertyClass,
    /// There is no such class.
    UnknownClass { given: String, classes: List },
    /// Field: the seat under the head.
    Seat,
    /// There is no table row for the size.
    NoSeat { diameter: Measure },
    /// The seat is smaller than the hole.
    SeatFallsThrough { seat: Measure, hole: Measure },
    /// The seat is too small for hole and thread.
    SeatDoesNotBear { seat: Measure, hole: Measure, thread: String },
    /// Field: where the maker's torque stands.
    MakerSource,
    /// The torque is not the maker's.
    NotTheMakers,
    /// The maker's torque is more than the class bears.
    MakerAboveBand { maker: Measure, most: Measure },
    /// Too little thread is engaged.
    TooShort { engaged: Measure, into: Message, least: Measure, most: Measure },
    /// Nothing may replace it.
    NoSubstitute { rule: Message },
    /// It goes into steel.
    IntoSteel,
    /// It goes into cast iron.
    IntoCastIron,
    /// It goes into wrought aluminium.
    IntoWroughtAluminium,
    /// It goes into cast aluminium.
    IntoCastAluminium,
    /// How a stripped thread is saved.
    Insert,
    /// What may replace a screw of a brake.
    RuleBrake,
    /// What may replace an axle.
    RuleAxle,
    /// What may replace a screw of an engine mount.
    RuleEngineMount,
    /// What may replace a screw of the steering.
    RuleSteering,
    /// What may replace a screw inside the engine.
    RuleInsideEngine,
    /// What may replace a screw of a cover.
    RuleCover,
    /// What may replace a screw of the bodywork.
    RuleBodywork,
    /// Where areas and classes come from.
    SourceClasses,
    /// Where preload and torque come from.
    SourceAssembly,
    /// Where the strength of this screw comes from.
    SourceStrength,
    /// Where the torque of this screw comes from.
    SourceTorque,
    /// Where the friction comes from.
    SourceFriction,
    /// Where the engagement comes from.
    SourceEngagement,
    /// Where it holds.
    Range,
}
