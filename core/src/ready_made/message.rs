//! Where ready-made figures come from.

use layshaft_wire::message;

use crate::record::End;

/// What was found and asks for work.
#[message("remedied")]
pub(crate) enum Remedied {
    /// A chain too slack or too tight.
    ChainSlack,
    /// A chain of uneven pitch.
    ChainTightSpot,
    /// A chain that is longer than it was.
    ChainWear,
    /// A chain with too many or too few links.
    ChainLength,
    /// Chain and sprockets that do not go together.
    ChainSize,
    /// A speedometer that reads wrong.
    Speedometer,
    /// Voltages beside their limits.
    Charging,
    /// A lighting coil that suits its lamps badly.
    LightingCoil,
    /// Current with the key off.
    Drain,
    /// A cell unlike the others.
    BatteryCell,
    /// More load than output.
    Balance,
    /// Indicators that flash wrong.
    Indicators,
    /// A lamp that does not belong there.
    Lamp,
    /// Wires, earths, fuses.
    Wiring,
    /// A tyre that may not go on.
    Tyre { end: End },
    /// Fluid to be renewed.
    BrakeFluid,
    /// Shoes or cam of a drum.
    BrakeShoes { end: End },
    /// A brake that stops too little.
    Brake { end: End },
}

/// Where ready-made figures come from.
#[message("ready-made-source")]
pub(crate) enum ReadyMadeSource {
    /// Of a wait without a product.
    CommonPractice,
    /// Of a typical sheet that the owner changed.
    ChangedSheet,
    /// Of the product of the owner.
    OwnCan,
}

/// Kinds of small motorcycles.
#[message("bike-kind")]
pub(crate) enum KindMessage {
    /// The lightest: no battery.
    TwoStrokeSixVoltsCoil,
    /// The same with a battery.
    TwoStrokeSixVoltsDrums,
    /// An older single.
    FourStrokeSixVoltsDrums,
    /// A two-stroke with a disc in front.
    TwoStrokeTwelveVoltsDisc,
    /// A single with a disc in front.
    FourStrokeTwelveVoltsDisc,
    /// A radiator and two discs.
    CooledByLiquidDiscs,
    /// Where they come from.
    Source,
}

/// Usual weeks at the bench.
#[message("usual-week")]
pub(crate) enum WeekMessage {
    /// Two evenings and a Saturday.
    TwoEveningsAndSaturday,
    /// Saturdays alone.
    Saturdays,
    /// Saturdays and Sundays.
    Weekends,
    /// Every evening of the working week.
    FiveEvenings,
}

/// How a ready-made job goes with what the bike is.
#[message("ready-made-fit")]
pub(crate) enum ReadyMadeFit {
    /// No disc brake to work on.
    NoDisc,
    /// No drum brake to work on.
    NoDrum,
    /// Nothing with a radiator.
    CooledByAir,
    /// Nothing with fins alone.
    CooledByLiquid,
    /// Nothing that only a four-stroke has.
    TwoStroke,
    /// Nothing that only a two-stroke has.
    FourStroke,
    /// Brakes of which nothing is written down.
    BrakesUnknown,
    /// Cooling that is not written down.
    CoolingUnknown,
    /// Strokes that are not written down.
    StrokesUnknown,
    /// Nothing with a starter motor.
    KickOnly,
    /// Nothing that the kick starter alone has.
    StartsByMotor,
    /// A starter that is not written down.
    StarterUnknown,
}
