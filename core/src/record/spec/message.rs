//! Why a part of a spec is refused.

use layshaft_wire::message;

/// Why a part of a spec is refused.
#[message("spec")]
pub(crate) enum SpecMessage {
    /// The adjuster the wrong way round.
    AdjusterOrder,
    /// Limits of the gearbox sprocket the wrong way round.
    FrontTeethOrder,
    /// Limits of the wheel sprocket the wrong way round.
    RearTeethOrder,
    /// Slack the wrong way round.
    ChainSlackOrder,
    /// Too few points, or two at one engine speed.
    PowerCurvePoints,
    /// Load resistors without their size.
    ResistorOhms,
}
