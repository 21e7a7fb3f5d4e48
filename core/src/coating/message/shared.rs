//! What has to wait, what the temperatures rest on, what is refused, and the sources.

use layshaft_wire::message;

use crate::message::Measure;

/// What coats and paint jobs say alike.
#[message("coating")]
pub(crate) enum CoatingMessage {
    /// Kind of thing: a coat.
    Coat,
    /// Kind of thing: a paint job.
    Process,
    /// Field: the product.
    Product,
    /// Field: the paint job.
    ProcessField,
    /// Neither a coat nor a product is named.
    ChooseCoatOrProduct,
    /// Both are named.
    NotCoatAndProduct,
    /// Neither a process nor a plan is named.
    ChooseProcessOrPlan,
    /// Both are named.
    NotProcessAndPlan,
    /// Two temperatures of which the warmer takes longer, or one twice.
    ShorterWhereWarmer,
    /// Touch or clamp it.
    HoldHandle,
    /// Fit it to the bike.
    HoldMount,
    /// Paint over it.
    HoldPaintOver,
    /// Fill fuel in.
    HoldFuel,
    /// Fill oil, brake fluid or coolant in.
    HoldFill,
    /// Run the engine.
    HoldRunEngine,
    /// Fit a tyre.
    HoldFitTyre,
    /// Load, bend or drill it.
    HoldLoad,
    /// Ride.
    HoldRide,
    /// Temperatures: readings, else a daily wave.
    BasisWave { night: Measure, day: Measure },
    /// Temperatures: readings, else a steady one.
    BasisSteady { celsius: Measure },
    /// Temperatures: nothing is known.
    BasisAssumed { celsius: Measure },
    /// Temperatures: readings alone.
    BasisReadings,
    /// Temperatures: the part stands elsewhere for a while.
    BasisElsewhere,
    /// Temperatures: one is tried from now on.
    BasisTried { celsius: Measure },
    /// Where the equivalent age comes from.
    SourceEquivalentAge,
    /// Where the dew point comes from.
    SourceMagnus,
}
