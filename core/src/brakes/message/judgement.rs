//! Quantities of the brakes, and why they are judged as they are.

use layshaft_wire::message;

use crate::message::Measure;
use crate::record::End;

/// A label, a reason or a name of the brakes.
#[message("brakes")]
pub(crate) enum BrakesMessage {
    /// A ratio below the common band.
    RatioBelow { ratio: Measure, least: Measure, most: Measure },
    /// A ratio above it.
    RatioAbove { ratio: Measure, least: Measure, most: Measure },
    /// A ratio within it.
    RatioUsual { least: Measure, most: Measure },
    /// More force, less travel.
    FeelsFirmer,
    /// Less force, more travel.
    FeelsLighter,
    /// Neither.
    FeelsAlike,
    /// The ratio of one brake.
    HydraulicRatio { end: End },
    /// Its lever travel until the pads touch.
    PadTravel { end: End },
    /// Its effort against standard.
    LeverEffort { end: End },
    /// Its travel against standard.
    LeverTravel { end: End },
    /// The force for the stop of type approval.
    LeverForce { end: End, deceleration: Measure },
    /// What type approval allows.
    ForceAllowed { most: Measure },
    /// A cam lever that turned too far.
    CamPastSquare { angle: Measure },
    /// A cam lever that stands right.
    CamSquare { angle: Measure },
    /// How the pointer beside the cam is read.
    Pointer,
    /// Pistons that face each other.
    CountedOpposed { pistons: u32, in_all: u32 },
    /// Pistons of a sliding caliper.
    CountedSliding { pistons: u32 },
    /// Pistons of a caliper that is not known to slide.
    Counted { pistons: u32 },
    /// DOT 3.
    BaseGlycol,
    /// DOT 4 and 5.1.
    BaseBorate,
    /// DOT 5.
    BaseSilicone,
    /// Mineral oil.
    BaseMineral,
    /// The line of the Directive for one end of a motorcycle.
    DirectiveLine { end: End },
    /// The stronger control in Great Britain.
    BritishStronger { efficiency: Measure },
    /// The other control.
    BritishOther { efficiency: Measure },
    /// Where the page holds.
    Range,
    /// The mass that was reckoned with.
    RangeMass { dry: Measure, load: Measure },
    /// No mass.
    RangeNoMass,
}
