//! Thrust and top speed.

use layshaft_wire::message;

use crate::message::Measure;

/// A label, a finding, an assumption or a caution.
#[message("thrust")]
pub(crate) enum ThrustMessage {
    /// Top speed.
    TopSpeed,
    /// What the rear tyre is rated to.
    TyreRated { limit: Measure },
    /// Engine speed there.
    EngineSpeedThere,
    /// Top gear against peak power.
    AgainstPeakPower,
    /// No gear holds any speed.
    NoneHeld,
    /// A lower gear is faster.
    LowerGearFaster { gear: u32, speed: Measure },
    /// Too tall for speed.
    TooTall { reached: Measure, peak: Measure },
    /// Too tall to hold any speed in top.
    TopHoldsNone,
    /// Too short.
    TooShort { reached: Measure, peak: Measure },
    /// The ratio that would suit.
    WouldSuit { ratio: Measure },
    /// Against what is fitted.
    TopChanges { speed: Measure, gear: u32, fitted: Measure },
    /// Faster than the tyre.
    BeyondTyre { limit: Measure, speed: Measure },
    /// The rolling coefficient is held.
    RollingHeld { above: Measure },
    /// Not on the road.
    CautionRoad,
    /// Old tyres.
    CautionTyres,
    /// A curve of points.
    AssumedPoints,
    /// A curve of two peaks.
    AssumedPeaks,
    /// A curve of one peak.
    AssumedPeak,
    /// The engine's limit.
    AssumedLimit { limit: Measure },
    /// The drag area.
    AssumedDragArea { area: Measure },
    /// The share that reaches the wheel.
    AssumedEfficiency { share: Measure },
    /// The rolling coefficient.
    AssumedRolling { coefficient: Measure },
    /// Where the page holds.
    Range,
    /// An old engine.
    RangeOldEngine,
}
