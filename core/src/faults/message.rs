//! What the search for a fault says: suspects, checks, cautions, what is refused.

use layshaft_wire::message;

use crate::message::{List, Measure, Message};

/// What the search says.
#[message("faults")]
pub(crate) enum FaultsMessage {
    /// None of the suspects fits.
    Recheck { check: Message },
    /// What an answer means.
    Means { answer: Message, suspects: List },
    /// A reading as an answer.
    VoltsRead { volts: Measure },
    /// A reading with the leads the wrong way round.
    VoltsReversed { volts: Measure },
    /// A check that nobody could answer.
    NotSure,
    /// A search that does not say what is wrong.
    NotSaid,
    /// What was asked for: a check.
    WhatCheck,
    /// What was asked for: a suspect.
    WhatSuspect,
    /// What was asked for: a cover.
    WhatCover,
    /// What was asked for: a point.
    WhatPoint,
    /// What was asked for: an answer to a check.
    WhatAnswer { check: Message },
    /// What was asked for: a table.
    WhatTable,
    /// What was asked for: a search.
    WhatSearch,
    /// What was asked for: a circuit.
    WhatCircuit,
    /// A field: what is wrong.
    FieldTrouble,
    /// A field: what put it right.
    FieldCure,
    /// A field: what was learned.
    FieldLearned,
    /// How an end is told where nothing was answered.
    SayWhatWasLearned,
    /// A field: a table.
    FieldTable,
    /// What to do without trouble.
    BeginSearch,
    /// There is no answer left.
    NothingToTakeBack,
    /// The search has ended.
    HasEnded,
    /// A reading where none is asked for.
    NoReading { check: Message },
    /// A table that names nobody.
    NoSuchSuspect { check: String, suspect: String },
    /// A case without suspects.
    NoSuspects,
    /// A weight that cannot be.
    WeightNotAbove { suspect: Message, weight: Measure },
    /// A time that cannot be.
    TimeNotAbove { suspect: Message },
    /// Likelihoods for another number of suspects.
    OtherNumberOfLines { check: Message, lines: usize, suspects: usize },
    /// Likelihoods that are none.
    NoLikelihoods { check: Message, suspect: Message },
    /// Predictions for another number of suspects.
    OtherNumberOfPredictions { check: Message },
}

/// What a circuit is asked, and what puts it right.
#[message("faults-circuit")]
pub(crate) enum CircuitCheckMessage {
    /// A look at a lamp.
    Look { setting: Message, lamp: String },
    /// A voltage.
    Measure { setting: Message, from: String, to: String },
    /// A voltage on alternating current.
    MeasureAlternating { setting: Message, from: String, to: String },
    /// An answer: about so much.
    About { volts: Measure },
    /// An answer: about so much, the other way round.
    Reversed { volts: Measure },
    /// An answer: between two.
    Between { low: Measure, high: Measure },
    /// A point touches the frame.
    CureShort { point: String },
    /// Two contacts are exchanged.
    CureSwapped { one: String, other: String },
    /// It is the wrong way round.
    CureReversed { element: String },
    /// It is renewed.
    CureRenew { element: String },
    /// It is cleaned.
    CureClean { element: String },
    /// The starter turns.
    CautionStarter,
    /// The engine runs.
    CautionEngine,
    /// No fuse guards the point.
    CautionNoFuse,
    /// A slip of the probe.
    CautionProbe,
    /// A slip of the probe where a coil feeds.
    CautionProbeCoil,
}

/// Where a point is, and what is in the way.
#[message("faults-reach")]
#[derive(Copy)]
pub(crate) enum ReachMessage {
    /// A cover: the headlamp.
    HeadlampOut,
    /// A cover: the seat.
    SeatOff,
    /// A cover: a side panel.
    SidePanelOff,
    /// A cover: a lens.
    LensOff,
    /// A place.
    AtBattery,
    /// A place.
    BehindSidePanel,
    /// A place.
    AtFlasher,
    /// A place.
    InIndicator,
    /// A place.
    InRearLamp,
    /// A place.
    AtHorn,
    /// A place.
    AtEngine,
    /// A place.
    OnFrame,
    /// A place.
    InHeadlampShell,
}

/// Where method and weights come from.
#[message("faults-source")]
pub(crate) enum FaultsSource {
    /// Checks by information over trouble.
    Checks,
    /// Order of cures.
    Order,
    /// How likely each fault is.
    Judgement,
}

/// What somebody notices of a fault in a circuit, in the words in which it is told at the bench.
#[message("faults-notice")]
pub(crate) enum FaultsNotice {
    /// Lamps that stay dark.
    Lighting,
    /// A stop lamp.
    StopLamp,
    /// Indicators with one pilot.
    IndicatorsOnePilot,
    /// Indicators with a pilot on each side.
    IndicatorsTwoPilots,
    /// A horn.
    Horn,
    /// A neutral lamp.
    Neutral,
    /// A starter.
    Starter,
    /// A battery that is not charged, by one phase.
    Charging,
    /// The same, by three.
    ChargingThreePhase,
    /// An engine that the stop switch does not stop, or that has no spark because of it.
    IgnitionStop,
}

impl FaultsNotice {
    /// What is noticed of a circuit, by its id.
    pub(super) fn of_circuit(id: &str) -> Option<Self> {
        Some(match id {
            "lighting" | "coil-lighting" => Self::Lighting,
            "stop-lamp" | "coil-stop-lamp" => Self::StopLamp,
            "indicators-one-pilot" => Self::IndicatorsOnePilot,
            "indicators-two-pilots" => Self::IndicatorsTwoPilots,
            "horn" | "coil-horn" => Self::Horn,
            "neutral" => Self::Neutral,
            "starter" => Self::Starter,
            "charging" => Self::Charging,
            "charging-three-phase" => Self::ChargingThreePhase,
            "ignition-stop" => Self::IgnitionStop,
            _ => return None,
        })
    }
}
