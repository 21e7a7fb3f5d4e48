//! What cannot be read on a sidewall, and what is known about its date.

use layshaft_wire::message;

/// What cannot be read on a sidewall, and what is known about its date.
#[message("sidewall")]
pub(crate) enum SidewallMessage {
    /// The width.
    Width { code: String },
    /// The height.
    Height { code: String },
    /// The letter of an alpha code.
    WidthLetter { code: String, letters: String },
    /// The width in inches.
    WidthInches { code: String },
    /// The fraction of a width in inches.
    WidthFraction { code: String },
    /// The height in per cent.
    Ratio { code: String },
    /// What parts section and rim.
    Between { code: String },
    /// The rim.
    Rim { code: String },
    /// A second ply rating.
    SecondPly { code: String },
    /// The ply rating.
    Ply { code: String },
    /// The speed symbol.
    Speed { code: String },
    /// A bracket left open.
    Bracket { code: String },
    /// The load index.
    Load { code: String },
    /// A second load index.
    SecondLoad { code: String },
    /// A mark after the rim.
    Mark { code: String, mark: String },
    /// With a tube and without.
    TwoTubes { code: String },
    /// The date code.
    DateCode { code: String },
    /// Where the form of the date code comes from.
    SourceDate,
    /// Where decade and triangle come from.
    SourceDecade,
}
