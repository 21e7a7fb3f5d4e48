//! What is said of load, output, battery and charging.

use layshaft_wire::message;

use crate::electrical::formulas::RidingState;
use crate::message::{List, Measure, choices};

choices! { RidingState; }

/// What is said of load and output.
#[message("electrical")]
pub(crate) enum LoadMessage {
    /// A quantity: load by day.
    LoadByDay,
    /// A quantity: load with lights.
    LoadWithLights,
    /// A quantity: load with everything on.
    LoadBusy,
    /// More than the alternator gives.
    LoadAboveOutput { most: Measure },
    /// Within what it gives.
    LoadWithinOutput { most: Measure },
    /// A quantity: how long the battery lasts standing.
    BatteryFlatStanding,
    /// A quantity: from which speed the battery no longer discharges with lights.
    BalanceWithLights,
    /// The same with everything on.
    BalanceBusy,
    /// The speed is low enough for town.
    BalanceFromInTown { rpm: Measure },
    /// It is not.
    BalanceFromAboveTown { rpm: Measure },
    /// A quantity: the indicators of one side.
    IndicatorsOfSide,
    /// The flasher takes any load.
    FlasherMindsNoLoad,
    /// About the load that the flasher was made for.
    FlasherLoadAsMade { made: Measure },
    /// Another load.
    FlasherLoadOther { made: Measure },
    /// Consumers that are in no sum.
    LoadUseUnknown { names: List },
    /// The regulated voltage lies outside the window.
    ChargingOutside { holds: Measure, least: Measure, most: Measure, system: Measure },
    /// The output never meets the load.
    BalanceNever { state: RidingState, asked: Measure, given: Measure },
    /// At idle the battery gives.
    BalanceAboveIdle { gives: Measure, from: Measure },
    /// Nothing is known of the output.
    OutputUnknown,
    /// One point is known.
    OutputOnePoint { watts: Measure, rpm: Measure },
    /// The capacity is not known.
    BatteryUnknown,
    /// One diode leaves half.
    OutputHalfWave,
    /// There is no battery.
    BatteryNone,
    /// A lighting coil for the lights, a battery for the rest.
    CoilBesideBattery,
    /// A lamp out drives the others up.
    CoilBlownLamp { volts: Measure, made: Measure, rpm: Measure },
    /// The same, where the output is not known or one lamp is all there is.
    CoilBlownLampUnknown,
    /// The lamps get too much.
    CoilTooBright { volts: Measure, made: Measure, rpm: Measure },
    /// The coil never gives what the lamps take.
    CoilTooDim { asked: Measure, given: Measure },
    /// A battery is not run flat.
    BatteryLeaveHalf { minutes: Measure },
}

/// What the charging tests mean together, and what to do next.
#[message("electrical-charging")]
pub(crate) enum ChargingMessage {
    /// Nothing was measured at speed.
    FastNotMeasured,
    /// Too high at speed.
    TooHigh,
    /// Too low, and nothing to compare with.
    TooLow,
    /// It does not rise with the engine.
    DoesNotRise,
    /// It rises too little.
    RisesTooLittle,
    /// It charges; nobody knows whether the battery keeps it.
    RestedNotMeasured,
    /// It charges, and the battery rests flat.
    RestsFlat,
    /// It charges, and the battery rests low.
    RestsLow,
    /// All but the idle voltage is known.
    IdleNotMeasured,
    /// At idle it falls.
    FallsAtIdle,
    /// All is good.
    Healthy,
    /// Behind one diode: too high at speed.
    HalfTooHigh,
    /// Behind one diode: it does not rise.
    HalfDoesNotRise,
    /// Behind one diode: it rises too little.
    HalfRisesTooLittle,
    /// Nothing was measured at the lamps.
    CoilNotMeasured,
    /// The lamps get too much, and nothing regulates.
    CoilHigh,
    /// They get too much from the regulator.
    CoilRegulatorHigh,
    /// They get too little.
    CoilLow,
    /// They get what they are rated for.
    CoilRight,
    /// Where the limits of idle and drain come from.
    SourceManual,
    /// Where the limit of rest and the rise come from.
    SourceRested,
}

impl ChargingMessage {
    /// What it means where one diode charges the battery and nothing regulates.
    pub(crate) fn of_half_wave(self) -> Self {
        match self {
            Self::TooHigh => Self::HalfTooHigh,
            Self::DoesNotRise => Self::HalfDoesNotRise,
            Self::RisesTooLittle => Self::HalfRisesTooLittle,
            other => other,
        }
    }
}
