//! What the lines of a working give.

use layshaft_wire::message;

use crate::message::Measure;

/// A line of the tyre page, or the one on a circumference elsewhere.
#[message("tyres-working")]
pub(crate) enum TyresWorking {
    /// Outer diameter.
    Diameter,
    /// The least that the size allows.
    DiameterLeast,
    /// The most.
    DiameterMost,
    /// Circumference by the size, of the tyre or of the rear wheel.
    Circumference { rear: bool },
    /// Circumference that was rolled out.
    RolledOut { rear: bool },
    /// Circumference from the roll-out of the other tyre.
    FromRollOut { rear: bool },
    /// Turns in a kilometre.
    Turns,
    /// How the axle moves.
    AxleHigher,
    /// Circumference against standard.
    CircumferenceChange,
    /// What the speedometer makes of it.
    SpeedometerChange,
    /// Load that is left.
    LoadLeft,
    /// Speed that is left.
    SpeedLeft,
    /// Age by a week.
    Age { week: u32, year: Measure },
}
