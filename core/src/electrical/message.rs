//! What the formulas of the electrics say: where they come from, what fits, what is refused.

use layshaft_wire::message;

use crate::message::{Measure, Message};

/// Where an electrical figure comes from.
#[message("electrical-source")]
pub(crate) enum ElectricalSource {
    /// The lamp law.
    FilamentLaw,
    /// Light and life of a filament.
    FilamentLight,
    /// The sheet of a lamp in the directive.
    LampDirective { lamp: String },
    /// The sheet of a lamp in the regulation.
    LampRegulation { lamp: String },
    /// A sheet as somebody quotes it.
    LampQuoted { lamp: String },
    /// A lamp without a sheet.
    LampUsual { lamp: String },
    /// Caps of lamps by type.
    Caps,
    /// Currents that add up.
    Balance,
    /// Where the battery should stop discharging.
    BalanceLimit,
    /// The regulated voltage.
    RegulatedVolts,
    /// The nominal output curve.
    NominalOutput,
    /// A coil as a source.
    CoilSource,
    /// The current of a lighting coil.
    LightingCoil,
    /// Peukert's law.
    Peukert,
    /// The hours of the rating.
    RatedHours,
    /// Load and thermal flashers.
    FlasherLoad,
    /// The rule of the flash rate.
    FlashRule,
    /// The bands of flashers off their load.
    FlashBands,
    /// Load resistors.
    Resistor,
    /// Blade fuses.
    Fuses,
    /// The conservative list of currents.
    ListConservative,
    /// The list for towing cable.
    ListTowing,
    /// Thin-wall wire.
    ListThinWall,
    /// Resistance of conductors.
    WireTable,
    /// Copper.
    Copper,
}

/// What a lamp, a resistor, a wire is told.
#[message("electrical")]
pub(crate) enum ElectricalMessage {
    /// One of two caps is not known.
    CapUnknown,
    /// Holder and lamp have the same cap.
    CapSame { cap: String },
    /// They have different ones.
    CapOther { holder: String, holder_looks: Message, lamp: String, lamp_looks: Message },
    /// Of one width, kept apart on purpose.
    CapKeptApart,
    /// A stronger lamp behind much the same flange.
    CapStronger,
    /// A lamp for another voltage than the bike has.
    LampOtherVoltage { made: Measure, system: Measure },
    /// How a load resistor is mounted.
    ResistorMounting,
    /// There is no load to make up.
    ResistorNothingToMakeUp,
    /// A gauge that is none.
    GaugeNotWhole { gauge: Measure },
}

/// Colour of a blade fuse.
#[message("electrical-fuse")]
#[derive(Copy)]
pub enum FuseColour {
    /// 2 A.
    Grey,
    /// 3 A.
    Violet,
    /// 5 A.
    Tan,
    /// 7.5 A.
    Brown,
    /// 10 A.
    Red,
    /// 15 A.
    Blue,
    /// 20 A.
    Yellow,
    /// 25 A.
    WhiteOrClear,
    /// 30 A.
    Green,
    /// 40 A.
    Orange,
}
