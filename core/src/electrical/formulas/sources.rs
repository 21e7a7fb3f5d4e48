//! Where the electrical figures come from, each with its standing.

use crate::quantity::{Source, Standing};

/// The lamp law.
pub(crate) fn filament_law() -> Source {
    Source::new(
        "Filament lamp off its test voltage, P ~ V^1.55: Fink and Beaty, Standard Handbook for Electrical Engineers, \
         11th edition, page 22-8, as restated elsewhere; the pairs of UN R37 (6 W at 13.5 V is 5 W at 12 V) agree",
        Standing::SecondHand,
    )
}

/// Currents that add up.
pub(crate) fn balance() -> Source {
    Source::new("Balance of currents: output less load, divided by the voltage", Standing::Computed)
}

/// The regulated voltage.
pub(crate) fn regulated_volts() -> Source {
    Source::new(
        "Regulated voltage 14.0 to 15.5 V at 5,000 rpm on a 12 V machine: service manuals of motorcycles, halved for 6 V",
        Standing::Seen,
    )
}

/// The nominal output curve.
pub(crate) fn nominal_output() -> Source {
    Source::new(
        "Output of an alternator with fixed magnets into a battery through its own reactance, I ~ sqrt(1 - (n0/n)^2): \
         circuit theory of rectifiers with a constant-voltage load; cut-in n0 at a quarter of the rated speed is an \
         assumption",
        Standing::Memory,
    )
}

/// Peukert's law.
pub(crate) fn peukert() -> Source {
    Source::new(
        "Peukert's law with the rated hours, t = H (C/(I H))^k, exponent 1.2 to 1.3 for flooded lead batteries: battery \
         dealers' technical pages",
        Standing::SecondHand,
    )
}

/// The hours of the rating.
pub(crate) fn rated_hours() -> Source {
    Source::new("Motorcycle batteries are rated over 10 hours", Standing::Memory)
}

/// Load and thermal flashers.
pub(crate) fn flasher_load() -> Source {
    Source::new(
        "A thermal flasher is made for the load of its lamps; no law of rate against load is published. Three quarters to \
         five quarters of the load as made is common practice, no source",
        Standing::CommonPractice,
    )
}

/// Where the battery should stop discharging.
pub(crate) fn balance_limit() -> Source {
    Source::new(
        "The battery should no longer discharge at 3,000 rpm with the lights on: common practice, no source",
        Standing::CommonPractice,
    )
}
