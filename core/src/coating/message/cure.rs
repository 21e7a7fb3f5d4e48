//! What is said about one coat: how long it takes and why, what to look at, what was taken for granted.

use layshaft_wire::message;

use crate::message::{Duration, Measure};
use crate::time::LocalTime;

/// A sentence about one coat. Times here are in the hours of the can, so that the two can be compared.
#[message("coating-cure")]
pub(crate) enum CureMessage {
    /// Fully cured.
    Done { on_can: Measure, at: Measure },
    /// The last time on the sheet is over, and full cure is not on it.
    LastTimeOver { on_can: Measure, at: Measure },
    /// Too cold, and no end in sight.
    StandsStill { now: Measure, lowest: Measure, left: Measure, at: Measure },
    /// Too cold now, but there is an end.
    StandsStillNow { now: Measure, lowest: Measure, left: Measure, at: Measure, here: Measure },
    /// What is left on the can and here.
    Left { left: Measure, at: Measure, here: Measure, mean: Measure },
    /// What is left on the can, with no end here.
    LeftWithoutEnd { left: Measure, at: Measure, now: Measure },
    /// How long the mix can be used.
    PotLife { time: Duration, at: Measure },
    /// The caution at a heat lamp.
    HeatLamp,
    /// What the house is taken for.
    HouseAssumed { celsius: Measure },
    /// The humidity is not known.
    HumidityUnknown,
    /// The surface is too near the dew point.
    DewClose { surface: Measure, margin: Measure, dew: Measure, asked: Measure },
    /// The surface is below the dew point.
    DewWet { surface: Measure, dew: Measure },
    /// The air is too damp.
    HumidityHigh { humidity: Measure, most: Measure, by_can: bool },
    /// The recoat window is closed.
    WindowClosed,
    /// The recoat window is open.
    WindowOpen { until: LocalTime },
    /// The recoat window is open without an end.
    WindowStaysOpen,
    /// Too cold now.
    Cold { now: Measure, lowest: Measure },
    /// Too cold for a part of the day.
    ColdHours { lowest: Measure },
    /// It is cold, and the can's limit is not known.
    ColdLimitUnknown { now: Measure },
    /// Hotter than the clock goes by.
    NoFaster { celsius: Measure },
    /// No temperature is known.
    ClimateAssumed { now: Measure },
    /// What has to wait, as it stands on the sheet.
    Hold { what: String },
    /// Full cure is not on the sheet.
    FullUnknown,
    /// The sheet is a typical one.
    Typical,
    /// The caution of a tank liner.
    CautionLiner,
    /// The caution of paint.
    CautionPaint,
    /// The caution of converters and resins.
    CautionGloves,
    /// The range: temperatures.
    Range { celsius: Measure },
    /// The range: the activation temperature comes from the sheet.
    RangeActivation { activation: Measure },
    /// The range: the activation temperature is assumed.
    RangeActivationAssumed { activation: Measure },
    /// The range: the reference temperature is assumed.
    RangeReferenceAssumed { celsius: Measure },
    /// Where the equivalent age comes from, and what is assumed of it.
    SourceAge,
    /// Where the dew point comes from.
    SourceDewPoint,
    /// Where it stands how dry surface and air must be.
    SourceDry,
}
