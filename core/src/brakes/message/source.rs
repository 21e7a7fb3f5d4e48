//! Where the formulas and limits of the brakes come from.

use layshaft_wire::message;

use crate::message::Measure;

/// A citation.
#[message("brakes-source")]
pub(crate) enum BrakesSource {
    /// The hydraulic chain.
    Hydraulics,
    /// Drum geometry.
    Drums,
    /// Twice the contents.
    Bleeding,
    /// Forces on the caliper.
    Caliper,
    /// Swelling of a hose.
    Swelling,
    /// Brake efficiency.
    Efficiency,
    /// Stopping distances of the Directive.
    Directive,
    /// One of its lines.
    DirectiveLine { divisor: Measure, speed: Measure },
    /// Its stop and the force for it.
    LeverForce { deceleration: Measure, most: Measure, load: Measure },
    /// The British inspection.
    British,
    /// Steady deceleration.
    Uniform,
    /// The band of common ratios.
    CommonRatios,
    /// Boiling points.
    Boiling,
}
