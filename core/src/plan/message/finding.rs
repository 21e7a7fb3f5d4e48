//! What is worth saying of the needs of jobs: what is late, assumed or not known, and time limits.

use layshaft_wire::message;

use crate::message::{Duration, List, Message};
use crate::time::{Day, LocalTime};

/// A finding of the plan, or a sentence of one.
#[message("plan")]
pub(crate) enum PlanFindingMessage {
    /// Jobs wait for each other.
    Circle { needs: List },
    /// One need of such a circle.
    MustFollow { job: String, before: String },
    /// A part has no day on which it should come; whether it is ordered.
    PartWithoutDay { job: String, part: String, ordered: bool },
    /// The day of a part has passed.
    PartLate { part: String, day: Day },
    /// A part with a day is not ordered yet.
    PartNotOrdered { part: String, day: Day },
    /// No bench time is set.
    AssumedBenchTime,
    /// A job takes two, and nobody has said when the second comes.
    AssumedHelper { job: String },
    /// How long a wait takes is not known.
    WaitUnknown { wait: String, job: String },
    /// A wait runs, and its end is not known.
    WaitWithoutEnd { wait: Message, title: String },
    /// A job is done, and its day is not known.
    DoneWithoutDay { job: String },
    /// A time limit passed before the job was begun.
    LimitPassed { job: String, before: String, by: LocalTime },
    /// A time limit runs, and the plan cannot keep it.
    LimitMissed { job: String, by: LocalTime },
    /// The window of the next coat is over.
    WindowClosed { painting: String },
    /// The window of the next coat runs, and the plan cannot keep it.
    WindowNotReached { painting: String, closes: LocalTime },
    /// What comes of that: sanding first.
    SandFirst { job: String, more: Duration },
    /// A job asks for a temperature, and that of the garage is not known.
    TemperatureUnknown { job: String, asked: List },
    /// A job asks for dry air, and the humidity of the garage is not known.
    HumidityUnknown { job: String, asked: List },
    /// A job finds no place in all the years that the plan looks ahead.
    NeverReached { job: String },
}
