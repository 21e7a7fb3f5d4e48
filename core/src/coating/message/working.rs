//! What the lines of a working give.

use layshaft_wire::message;

/// A line on the cure of one coat.
#[message("coating-working")]
pub(crate) enum CoatingWorking {
    /// Rate now.
    Rate,
    /// Equivalent age.
    Age,
    /// Left on the can.
    LeftOnCan,
    /// Left here.
    LeftHere,
    /// Activation temperature of the sheet.
    Activation,
    /// Dew point.
    DewPoint,
    /// Surface above it.
    SurfaceMargin,
}
