//! The steps of bleeding, what can hurt on the way, and where air hides.

use layshaft_wire::message;

use crate::message::Measure;

/// A sentence of the bleeding procedure.
#[message("brakes-bleeding")]
pub(crate) enum BleedingMessage {
    /// First step: the reservoir.
    LevelReservoir,
    /// What the fluid does to paint and eyes.
    StripsPaint,
    /// Fill it.
    FillFresh,
    /// What another kind of fluid does.
    NeverAnotherKind,
    /// The hose in the jar.
    HoseInJar,
    /// Lever and nipple in turn.
    PullAndClose,
    /// Do not let it run empty.
    TopUp,
    /// What happens if it does.
    SucksAir,
    /// How long to go on, where the volume is known.
    GoOnFor { through: Measure, strokes: u32 },
    /// How long to go on, where it is not.
    GoOn,
    /// Loosen the bubbles.
    TapHose,
    /// Close up.
    CloseNipple,
    /// Hold the pressure.
    HoldPressure,
    /// A lever that gives way.
    CreepsForbidsRiding,
    /// The first try.
    FirstTry,
    /// New pads.
    NewPads,
    /// Air at the banjo.
    AirAtBanjo,
    /// Air in a loop.
    AirInLoop,
    /// Air behind the pistons.
    AirBehindPistons,
    /// Air in the master cylinder.
    AirInMaster,
    /// Air in the outer half of a fixed caliper.
    AirInOuterHalf,
}
