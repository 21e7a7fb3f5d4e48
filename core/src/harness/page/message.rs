//! What the pages of circuits and lamps say.

use layshaft_wire::message;

use crate::message::{Measure, Message};

/// What the page of a circuit says.
#[message("harness-circuit")]
pub(crate) enum CircuitMessage {
    /// The circuit is drawn with a battery, and this bike has none.
    DirectCurrent,
    /// The circuit hangs on a lighting coil.
    Alternating,
    /// Too little is known of the coil.
    CoilUnknown,
    /// A regulator cuts the wave.
    CutWave,
    /// Parts that follow the wave.
    FollowsTheWave,
    /// The circuit of the spark.
    Ignition,
    /// Where the effective values come from.
    SourceEffective,
    /// What was asked for: a circuit.
    WhatCircuit,
    /// Volts are lost on the way.
    LosesVolts { element: String, before: Measure, behind: Measure, accepted_before: Measure, accepted_behind: Measure },
    /// Where the operating point comes from.
    SourceOperatingPoint,
    /// Where filaments come from.
    SourceFilament,
    /// Where cold filaments come from.
    SourceColdFilament,
    /// Where blowing fuses come from.
    SourceFuse,
    /// Where the resistances come from.
    SourceTypicalValues,
    /// Where the accepted loss comes from.
    SourceAcceptedLoss,
}

/// What the page of lamps says.
#[message("harness-lamps")]
pub(crate) enum LampsMessage {
    /// Any lamp of the bike.
    AnyLamp,
    /// What was asked for: a lamp.
    LampWithId { place: String },
    /// What to do where there is none.
    EnterConsumers,
    /// An electronic flasher on alternating current.
    FlasherAlternating,
    /// An LED lamp on alternating current.
    LedAlternating,
    /// How flashes are counted.
    HowToCount,
    /// The indicators stay lit or dark.
    Stop,
    /// They flash too fast.
    TooFast { rate: Message },
    /// They flash as they should.
    Right { rate: Message },
    /// Nobody knows without counting.
    Count { rate: Message },
    /// The flasher is not known.
    RateUnknown,
    /// A rate.
    RateAbout { rate: Measure },
    /// A rate between two.
    RateBetween { least: Measure, most: Measure },
    /// The rate tells that a lamp is out.
    OutageTells,
    /// It does not.
    OutageHides,
    /// Both sides light.
    BothSides,
    /// The other side stays dark.
    OtherSideDark,
    /// Nobody knows how the pilot is wired.
    PilotUnknown,
    /// Resistors to buy.
    TakesResistors { count: u32, ohms: Measure, watts: Measure },
    /// What they are screwed to.
    TakesMetal,
    /// The heat that they make.
    TakesHeat { watts: Measure },
    /// A flasher to buy.
    TakesFlasher,
    /// Its earth.
    TakesEarthWire,
    /// Diodes to buy.
    TakesDiodes,
    /// The cap is another.
    CapDoesNotFit,
    /// A stronger lamp.
    MoreWatts { now: Measure, made: Measure },
    /// LED indicators and the law.
    LedIndicatorApproval,
    /// An LED in a reflector and the law.
    LedLampApproval,
    /// LED lamps have a way round.
    LedPolarity,
    /// A count within the rule.
    CountedInside { rate: Measure },
    /// A count outside it.
    CountedOutside { rate: Measure },
    /// Where it holds.
    Range,
}

/// What the lines of the working of lamps give.
#[message("harness-working")]
pub(crate) enum HarnessWorking {
    /// Current of a lamp.
    Current { lamp: String },
    /// Share of the load as made.
    ShareStandard,
    /// As fitted.
    ShareFitted,
    /// As proposed.
    ShareProposed,
    /// With load resistors.
    ShareWithResistors,
    /// With an electronic flasher.
    ShareWithFlasher,
    /// The resistor beside a lamp.
    Resistor,
    /// What it takes.
    ResistorWatts,
}
