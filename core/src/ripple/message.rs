//! What a proposal is called, and what follows from it.

use layshaft_wire::message;

use crate::message::{List, Measure};
use crate::record::End;

/// A change that is wanted.
#[message("ripple-change")]
pub(crate) enum RippleChange {
    /// Other sprockets.
    Sprockets,
    /// Another consumer.
    Consumer { name: String },
    /// Other parts in a brake.
    Brake { end: End },
    /// Flasher, pilots, load resistors.
    Flasher,
    /// Tyre, tube or rim.
    Tyre { end: End },
}

/// A proposal in words.
#[message("ripple")]
pub(crate) enum RippleMessage {
    /// What must be given.
    LabelProposal,
    /// How.
    SayProposal,
    /// Other sprockets.
    Sprockets { front: u32, rear: u32 },
    /// Another consumer.
    Consumer { name: String, power: Measure },
    /// Other parts in a brake.
    Brake { end: End, parts: List },
    /// Pistons of a caliper.
    Pistons { pistons: u32, bore: Measure },
    /// A master cylinder.
    MasterCylinder { bore: Measure },
    /// Parts without a name.
    OtherParts,
    /// Another tyre, tube or rim.
    Wheel { end: End, parts: List },
    /// No tube.
    NoTube,
    /// A tube.
    Tube { sizes: List },
    /// A rim.
    Rim { width: Measure },
    /// Figures without a name.
    OtherFigures,
    /// A flasher with a bimetal.
    FlasherThermal,
    /// An electronic one with two terminals.
    FlasherTwo,
    /// An electronic one with three.
    FlasherThree,
    /// A pilot between the sides.
    PilotBetween,
    /// A pilot through diodes.
    PilotDiodes,
    /// Two pilots.
    PilotEach,
    /// Load resistors.
    Resistors { resistance: Measure },
    /// Nothing changes.
    IndicatorsAsTheyAre,
}

/// A part or a job that follows.
#[message("ripple-follows")]
pub(crate) enum RippleFollows {
    /// A gearbox sprocket.
    FrontSprocket { teeth: u32 },
    /// A wheel sprocket.
    RearSprocket { teeth: u32 },
    /// A chain.
    Chain { links: u32 },
    /// Slack and alignment.
    SetSlack,
    /// Brake work.
    FitBrake { end: End },
    /// A tyre.
    Tyre { end: End, tyre: String },
    /// Fitting it.
    FitTyre { end: End },
    /// A tube.
    Tube { end: End, sizes: List },
    /// A tube without a size of its own.
    TubeOfTyre { end: End },
    /// A flasher with three terminals.
    FlasherThree,
    /// Its earth.
    EarthFlasher,
    /// A flasher.
    Flasher,
    /// Diodes.
    Diodes,
    /// Feeding the pilot through them.
    FeedPilot,
    /// Load resistors.
    Resistors { count: u32, resistance: Measure },
    /// A consumer.
    Consumer { name: String },
}
