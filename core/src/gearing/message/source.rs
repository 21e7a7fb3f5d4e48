//! Where the formulas and limits of the drive come from.

use layshaft_wire::message;

/// A citation.
#[message("gearing-source")]
pub(crate) enum GearingSource {
    /// Elongation.
    Elongation,
    /// Gears and wheels.
    Kinematics,
    /// The chain as a belt.
    ChainGeometry,
    /// Chain sizes.
    ChainSizes,
    /// Pitch circles.
    PitchCircle,
    /// Hunting, as a formula.
    Hunting,
    /// Even counts.
    EvenCounts,
    /// Hunting, on the page.
    HuntingTeeth,
    /// Windows and order of the list.
    ListOrder,
    /// The band of type approval.
    SpeedometerBand,
    /// The band of production.
    SpeedometerProduction,
    /// What a speedometer counts.
    SpeedometerTurns,
    /// A limit of wear that was entered.
    WearEntered,
    /// That of manuals.
    WearManuals,
    /// That of chain makers.
    WearChainMakers,
    /// That of a large sprocket.
    WearLargeSprocket,
    /// Thrust and road load.
    RoadLoad,
    /// The air.
    Air,
    /// Rolling by a coefficient.
    RollingConstant,
    /// Rolling by pressure.
    RollingPressure,
    /// The formula for it.
    RollingFormula,
    /// The cubic law.
    CubicLaw,
    /// The shape between the peaks.
    PeaksShape,
    /// Power as torque and speed.
    Power,
}
