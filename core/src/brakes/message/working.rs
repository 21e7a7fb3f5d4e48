//! What the lines of a working give.

use layshaft_wire::message;

use crate::message::Measure;

/// A line of the brake page.
#[message("brakes-working")]
pub(crate) enum BrakesWorking {
    /// Hydraulic ratio.
    HydraulicRatio,
    /// Pressure.
    Pressure,
    /// Clamp on a pad.
    Clamp,
    /// Least torque, with a radius that was entered or one from disc and piston.
    TorqueLeast { entered: bool },
    /// Greatest torque.
    TorqueMost { entered: bool },
    /// Least deceleration.
    DecelerationLeast,
    /// Greatest deceleration.
    DecelerationMost,
    /// Travel of the master piston.
    MasterTravel,
    /// Travel of the lever.
    LeverTravel,
    /// Force at the lever against standard.
    LeverForce,
    /// Travel of the lever against standard.
    TravelChange,
    /// Angle of the cam lever.
    CamAngle,
    /// Least force of a drum.
    DrumLeast { friction: Measure },
    /// Least force of a drum whose shoes are bedded in.
    DrumLeastBedded { friction: Measure },
    /// Greatest force of a drum.
    DrumMost { friction: Measure },
    /// Way before the brake works.
    Reaction,
    /// The stop at best.
    StopBest,
    /// The stop at worst.
    StopWorst,
    /// Deceleration from a distance.
    Deceleration,
}
