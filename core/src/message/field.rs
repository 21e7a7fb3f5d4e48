//! What fields are called where a refusal or a range names them.

use layshaft_wire::message;

/// The name of a field.
#[message("field")]
#[derive(Copy)]
pub enum FieldMessage {
    /// Adjuster, least.
    AdjusterLeast,
    /// Adjuster, most.
    AdjusterMost,
    /// Bore of the master cylinder.
    BoreOfTheMasterCylinder,
    /// Brake fluid.
    BrakeFluid,
    /// Caption.
    Caption,
    /// Consumer.
    Consumer,
    /// Cruising speed.
    CruisingSpeed,
    /// Date code of the tyre.
    DateCodeOfTheTyre,
    /// Day hoped for.
    DayHopedFor,
    /// Day of asking.
    DayOfAsking,
    /// Day of the order.
    DayOfTheOrder,
    /// Day with more bench time.
    DayWithMoreBenchTime,
    /// Day without bench time.
    DayWithoutBenchTime,
    /// Engine speed of peak power.
    EngineSpeedOfPeakPower,
    /// Expected day.
    ExpectedDay,
    /// Fewest teeth behind.
    FewestTeethBehind,
    /// Fewest teeth in front.
    FewestTeethInFront,
    /// Filling.
    Filling,
    /// From when on.
    FromWhenOn,
    /// Full cure.
    FullCure,
    /// Greatest centre distance of the adjuster.
    GreatestCentre,
    /// Handle.
    Handle,
    /// Highest humidity.
    HighestHumidity,
    /// How long it takes.
    HowLongItTakes,
    /// Idle speed.
    IdleSpeed,
    /// Job.
    Job,
    /// Joint.
    Joint,
    /// Least centre distance of the adjuster.
    LeastCentre,
    /// Least chain slack.
    LeastChainSlack,
    /// Limit of an item.
    LimitOfAnItem,
    /// Lowest temperature.
    LowestTemperature,
    /// Where the maker's torque stands.
    MakersTorqueSource,
    /// Mixing ratio.
    MixingRatio,
    /// Most chain slack.
    MostChainSlack,
    /// Most teeth behind.
    MostTeethBehind,
    /// Most teeth in front.
    MostTeethInFront,
    /// Name of the bike.
    NameOfTheBike,
    /// Note.
    Note,
    /// On what.
    OnWhat,
    /// Paint.
    Paint,
    /// Part.
    Part,
    /// The size of a part.
    PartSize,
    /// Parts of hardener.
    PartsOfHardener,
    /// Photo.
    Photo,
    /// Piston.
    Piston,
    /// Pitch.
    Pitch,
    /// Product.
    Product,
    /// Recoat from.
    RecoatFrom,
    /// Recoat until.
    RecoatUntil,
    /// Second temperature.
    SecondTemperature,
    /// Size printed on the tube.
    SizePrintedOnTheTube,
    /// Stamp.
    Stamp,
    /// Step.
    Step,
    /// Temperature.
    Temperature,
    /// Temperature of the air.
    TemperatureOfTheAir,
    /// Temperature of the surface.
    TemperatureOfTheSurface,
    /// Temperature of the times.
    TemperatureOfTheTimes,
    /// The same time at the first temperature.
    TimeAtTheFirstTemperature,
    /// Time at the second temperature.
    TimeAtTheSecondTemperature,
    /// Title.
    Title,
    /// Tool.
    Tool,
    /// Top speed.
    TopSpeed,
    /// Touch dry.
    TouchDry,
    /// Tyre size.
    TyreSize,
    /// Wait.
    Wait,
    /// What must wait.
    WhatMustWait,
    /// What was measured.
    WhatWasMeasured,
    /// When it was measured.
    WhenItWasMeasured,
    /// When it went on.
    WhenItWentOn,
    /// Year of first use.
    YearOfFirstUse,
}
