//! What the first page says.

use layshaft_wire::message;

use crate::message::{List, Message};

/// Why a job is offered, and what is not known of the inspection.
#[message("today")]
pub(crate) enum TodayMessage {
    /// The job does not fit into the time at hand.
    LongerThanTime,
    /// What the job asks of the hour.
    Needs { asked: List },
    /// It asks for daylight.
    Daylight,
    /// It asks for the spray place, by day.
    SprayPlaceInDaylight,
    /// It asks for a second pair of hands.
    Helper,
    /// It holds the ready date.
    HoldsDate,
    /// How many jobs it frees.
    Frees { jobs: u32 },
    /// It is begun.
    BegunAlready,
    /// A wait follows it.
    ThenTimeWorks { wait: Message },
    /// It needs parts, and they are here.
    PartsHere,
    /// Nothing else is to be said of it.
    NothingInTheWay,
    /// The pack of the bike cannot be had.
    InspectionUnknown { refused: Message },
}
