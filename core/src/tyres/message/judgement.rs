//! A tyre in words: its quantities, its sidewall, its age.

use layshaft_wire::message;

use crate::message::Measure;
use crate::record::End;

/// A label, a description or an advice.
#[message("tyres")]
pub(crate) enum TyresMessage {
    /// The diameter of one tyre.
    OuterDiameter { end: End },
    /// Load left.
    LoadLeft { end: End },
    /// Speed left.
    SpeedLeft { end: End },
    /// Year of making.
    YearMade { end: End },
    /// Year of making where three figures leave the decade open.
    MadeAtLatest { end: End },
    /// Why three figures are too old.
    ThreeFiguresOld,
    /// At the age of replacement.
    Replace { years: Measure },
    /// Three figures leave the decade open.
    DecadeOpen,
    /// Young.
    Young { years: Measure },
    /// Between.
    LookYearly { years: Measure, at_latest: Measure },
    /// Cross-ply.
    CrossPly,
    /// Bias-belted.
    BiasBelted,
    /// Radial.
    Radial,
    /// Width and height of a section.
    Section { width: Measure, ratio: Measure },
    /// Those of a letter that stands for about one width.
    SectionAbout { width: Measure, ratio: Measure },
    /// Those of a letter that stands for two.
    SectionEither { least: Measure, most: Measure, ratio: Measure },
    /// Those of an inch size.
    SectionInchRatio { width: Measure, ratio: Measure },
    /// An inch size as high as wide.
    SectionInch { width: Measure },
    /// A low inch size.
    SectionLow { width: Measure },
    /// The charts disagree on a letter.
    DisputedWidth { least: Measure, most: Measure },
    /// The metric size is only near.
    DisputedNearest,
    /// Nobody agrees how high a low section is.
    DisputedHeight,
    /// Where the page holds.
    Range,
}
