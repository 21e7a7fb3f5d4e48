//! What the lines of a working give.

use layshaft_wire::message;

use crate::message::{Measure, Message};

/// A line on gears, chain or speedometer.
#[message("gearing-working")]
pub(crate) enum GearingWorking {
    /// Final drive ratio.
    FinalRatio,
    /// Overall ratio in top.
    OverallRatio,
    /// Speed in top at an engine speed.
    SpeedInTop { rpm: Measure },
    /// Speed in top at the limit.
    SpeedAtLimit,
    /// Engine speed in top at the comparison speed.
    EngineSpeed,
    /// Engine speed against standard.
    EngineSpeedChange,
    /// Links at the present centre distance, which was measured or comes from the fitted chain.
    Links { measured: bool },
    /// Centre distance.
    CentreDistance,
    /// How the axle moves.
    AxleMoves,
    /// Travel used.
    AdjusterUsed,
    /// Wear that can be taken up.
    WearRoom,
    /// Chain that hangs free.
    FreeChain,
    /// Centre distance with a worn chain.
    WornCentreDistance { wear: Measure },
    /// Ratio of a corrector.
    CorrectorRatio,
    /// New reading over old.
    ReadingFactor,
    /// Reading at a true speed.
    Reading { speed: Measure },
    /// The same with a speedometer taken as exact before.
    ReadingIfExact { speed: Measure },
    /// What type approval allows there.
    AllowedReading,
    /// Length of a new chain.
    NewLength,
    /// Elongation.
    Elongation,
    /// Length at a limit of wear.
    LengthAtLimit { limit: Message },
}

/// A line on the choice of sprockets.
#[message("sprocket-choice-working")]
pub(crate) enum SprocketChoiceWorking {
    /// Ratio of what is fitted.
    FittedRatio,
    /// Ratio that is wanted.
    WantedRatio,
    /// Ratio of the best pair.
    BestRatio,
    /// How far the best pair is off.
    OffGoal,
    /// Its centre distance.
    CentreDistance,
    /// Turns until tooth and link meet again.
    HuntingTurns,
}

/// A line on thrust and top speed.
#[message("thrust-working")]
pub(crate) enum ThrustWorking {
    /// Torque at peak power.
    PeakTorque,
    /// Rolling coefficient at top speed.
    RollingCoefficient,
    /// Rolling resistance.
    Rolling,
    /// Slope.
    Slope,
    /// Resistance of the air.
    Air,
    /// Power at the wheel.
    WheelPower,
    /// Thrust.
    Thrust,
    /// Top speed where the power ends.
    TopSpeedByPower { gear: u32 },
    /// Top speed at the engine's limit.
    TopSpeedByLimit { gear: u32 },
    /// Top gear against peak power.
    AgainstPeakPower,
    /// Speed with the best gearing.
    BestSpeed,
    /// Final drive ratio for it.
    BestRatio,
}
