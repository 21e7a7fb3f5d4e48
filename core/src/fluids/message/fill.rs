//! What is said about a filling: how to pour it, step by step, and what to mind.

use layshaft_wire::message;

use crate::message::{List, Measure, Message};

/// A sentence about a filling.
#[message("fluids-fill")]
pub(crate) enum FillMessage {
    /// Kind of thing: a filling.
    Filling,
    /// A cup, full or up to a mark.
    Pour { volume: Measure },
    /// The same several times.
    PourTimes { times: u32, volume: Measure },
    /// The same in one of several cups.
    PourInCup { pour: Message, cup: Measure },
    /// One pour after the others.
    ThenPour { before: Message, pour: Message },
    /// Step: the drain plug.
    StepPlug,
    /// Step: measure out.
    StepMeasure { pours: Message, back: Measure },
    /// Step: pour.
    StepPour,
    /// Step: let the engine run.
    StepIdle,
    /// Step: read the level.
    StepRead,
    /// Step: add the rest.
    StepAdd,
    /// Caution: heat.
    CautionHot,
    /// Caution: exhaust.
    CautionOutdoors,
    /// Caution: old oil.
    CautionOldOil,
    /// The volume depends on what was opened; the other fillings follow.
    ByOccasion { others: List },
    /// One of the other fillings.
    Other { name: String, litres: Measure },
    /// The volume was rounded.
    Rounded { litres: Measure, volume: Measure },
    /// The grade is not known.
    MissingGrade,
    /// The volume comes from the bike.
    SourceBike,
    /// The volume was entered.
    SourceEntered,
    /// The order of the cups.
    SourceCups,
    /// Where it holds.
    Range,
}
