//! Quantities of the drive, and why they are judged as they are.

use layshaft_wire::message;

use crate::message::Measure;
use crate::record::End;

/// A label, a reason or a description.
#[message("gearing")]
pub(crate) enum GearingMessage {
    /// Circumference of a wheel.
    Circumference { end: End },
    /// Final drive ratio.
    FinalRatio,
    /// Overall ratio of a gear.
    OverallRatio { gear: u32 },
    /// Speed of a gear at the limit.
    SpeedAtLimit { gear: u32 },
    /// Engine speed in top at a road speed.
    EngineSpeedInTop { speed: Measure },
    /// The limit.
    EngineLimit { limit: Measure },
    /// Speed in top at peak power.
    SpeedAtPeakPower,
    /// Links asked for.
    LinksNeeded,
    /// Links of the chain.
    Links,
    /// Why a count is even.
    EvenCount,
    /// Centre distance.
    CentreDistance,
    /// Centre distance with a worn chain.
    WornCentreDistance { wear: Measure },
    /// How the axle moves.
    AxleShift,
    /// Travel used.
    AdjusterUsed,
    /// Whether the axle lands inside the adjuster.
    AdjusterHolds { inside: bool },
    /// Wear that can be taken up.
    WearRoom,
    /// None can.
    AtAdjusterEnd,
    /// Turns until the same link.
    SameLinkTurns,
    /// Elongation.
    Elongation,
    /// Shift of the speedometer.
    SpeedometerShift,
    /// What it shows at a true speed.
    SpeedometerShown { speed: Measure },
    /// What type approval allows there.
    SpeedometerAllowed { least: Measure, most: Measure, speed: Measure },
    /// Ratio of a corrector.
    CorrectorRatio,
    /// The ratios that type approval allows.
    CorrectorAllowed { least: Measure, most: Measure },
    /// What the band of a corrector does not say.
    CorrectorNote,
    /// Where the page holds.
    Range,
    /// With a circumference that was measured.
    RangeMeasured,
    /// With one from the size.
    RangeBySize,
    /// With the chain taken as taut.
    RangeTaut,
}
