//! What the pages of load, charging and wires say.

use layshaft_wire::message;

use crate::electrical::formulas::RidingState;
use crate::message::{List, Measure};

/// What the load page says of itself.
#[message("electrical-load")]
pub(crate) enum LoadPageMessage {
    /// What is missing when nothing draws current.
    Consumers,
    /// What to do about it.
    EnterConsumers,
    /// Where it holds.
    Range,
    /// The system voltage is assumed.
    AssumedSystem,
    /// The regulated voltage is assumed.
    AssumedCharging { volts: Measure },
    /// The voltage at the battery is assumed, because no regulator holds it.
    AssumedUnregulated { volts: Measure },
    /// The voltage at which lamps on a coil are counted.
    AtCoil { volts: Measure },
    /// At which voltage it stands.
    StandingAt { volts: Measure },
    /// The hours of the rating are assumed.
    AssumedHours,
    /// The exponent is assumed.
    AssumedPeukert,
    /// Where the usual figures of lamps, horn and ignition come from.
    SourceUsual,
}

/// What the charging page says.
#[message("electrical-charging")]
pub(crate) enum ChargingPageMessage {
    /// How to measure a rested battery.
    HowRested,
    /// How to measure at idle.
    HowIdle,
    /// How to measure at speed.
    HowFast,
    /// How to measure the drain.
    HowDrain,
    /// How to measure at the lamps of a coil, at idle.
    HowCoilIdle,
    /// The same at speed.
    HowCoilFast,
    /// There is no battery.
    NoBattery,
    /// Where the answer without a battery holds.
    CoilRange,
    /// Where the limits at the lamps come from.
    SourceCoil,
    /// Where the limits hold behind one diode.
    HalfWaveRange,
    /// A caution with a running engine.
    CautionIdle,
    /// A caution at speed.
    CautionFast,
    /// A caution with the ammeter.
    CautionDrain,
    /// What was not measured.
    NotMeasured { tests: List },
    /// A test in that list.
    TestRested,
    /// A test in that list.
    TestIdle,
    /// A test in that list.
    TestFast,
    /// A test in that list.
    TestDrain,
    /// Something draws current with the key off.
    Drain { drain: Measure },
    /// The same, and for how long the battery stands it.
    DrainFlatIn { drain: Measure, days: Measure },
    /// A dead cell.
    BadCell,
    /// A rested voltage that no battery of this system has.
    AnotherBattery { volts: Measure, most: Measure, system: Measure },
    /// Two tables tell different charges.
    TablesDiffer,
    /// A charger that boils the battery.
    ChargerTooStrong { amperes: Measure, capacity: Measure },
    /// What charging gives off.
    Gas,
    /// Where it holds.
    Range,
    /// The battery is assumed to be full.
    AssumedFull,
    /// Where the tables of charge come from.
    SourceTables,
    /// Where the time to charge comes from.
    SourceChargeFactor,
}

/// What the page of wire and fuse says.
#[message("electrical-wire")]
pub(crate) enum WireMessage {
    /// It loses too much.
    LosesTooMuch { section: Measure, lost: Measure },
    /// Thinner than the list.
    BelowList { section: Measure },
    /// It may not carry the current.
    CarriesTooLittle { section: Measure, carries: Measure },
    /// No fuse stands between load and wire.
    NoFuse { section: Measure, carries: Measure },
    /// No wire keeps the drop.
    NoneKeepsDrop,
    /// No wire carries the load.
    NoneCarries,
    /// What a coil without a battery asks of a fuse.
    FuseCoil,
    /// Where the fuse belongs.
    FuseCloseToBattery,
    /// Where it holds.
    Range,
}

/// What the lines of a working give.
#[message("electrical-working")]
pub(crate) enum ElectricalWorking {
    /// Charge by voltage.
    ChargeByVolts { cells: Measure },
    /// Charge by gravity.
    ChargeByGravity { at: Measure },
    /// Days until flat.
    DaysToFlat,
    /// Hours to charge.
    RechargeHours,
    /// Drop in a wire.
    WireDrop { section: Measure },
    /// Least fuse.
    LeastFuse { amperes: Measure },
    /// Load in a riding state.
    Load { state: RidingState, volts: Measure },
    /// Voltage at the lamps of a lighting coil.
    AtLamps { state: RidingState, rpm: Measure },
    /// What is left for the battery.
    IntoBattery { state: RidingState, rpm: Measure },
    /// How long the battery lasts.
    FlatAfter,
    /// A consumer that counts in no sum.
    InNoSum { consumer: String },
    /// The load resistors of a side.
    LoadResistors,
}
