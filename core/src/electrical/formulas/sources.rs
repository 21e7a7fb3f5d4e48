//! Where the electrical figures come from, each with its standing.

use crate::electrical::message::ElectricalSource;
use crate::quantity::{Source, Standing};

/// The lamp law.
pub(crate) fn filament_law() -> Source {
    Source::new(ElectricalSource::FilamentLaw, Standing::SecondHand)
}

/// Currents that add up.
pub(crate) fn balance() -> Source {
    Source::new(ElectricalSource::Balance, Standing::Computed)
}

/// The regulated voltage.
pub(crate) fn regulated_volts() -> Source {
    Source::new(ElectricalSource::RegulatedVolts, Standing::Seen)
}

/// The nominal output curve.
pub(crate) fn nominal_output() -> Source {
    Source::new(ElectricalSource::NominalOutput, Standing::Memory)
}

/// Peukert's law.
pub(crate) fn peukert() -> Source {
    Source::new(ElectricalSource::Peukert, Standing::SecondHand)
}

/// The hours of the rating.
pub(crate) fn rated_hours() -> Source {
    Source::new(ElectricalSource::RatedHours, Standing::Memory)
}

/// Load and thermal flashers.
pub(crate) fn flasher_load() -> Source {
    Source::new(ElectricalSource::FlasherLoad, Standing::CommonPractice)
}

/// The current of a lighting coil.
pub(crate) fn lighting_coil() -> Source {
    Source::new(ElectricalSource::LightingCoil, Standing::Memory)
}

/// A coil as induced voltage behind reactance.
pub(crate) fn coil_source() -> Source {
    Source::new(ElectricalSource::CoilSource, Standing::Computed)
}

/// Where the battery should stop discharging.
pub(crate) fn balance_limit() -> Source {
    Source::new(ElectricalSource::BalanceLimit, Standing::CommonPractice)
}
