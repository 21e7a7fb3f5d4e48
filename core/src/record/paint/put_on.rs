//! How paint is put on.

use layshaft_wire::wire;

/// How it is put on.
#[wire(stored)]
pub enum PutOn {
    /// Brush.
    Brush,
    /// Roller.
    Roller,
    /// Aerosol can.
    Aerosol,
    /// Spray gun at high pressure.
    Gun,
    /// Spray gun at low pressure (HVLP).
    LowPressureGun,
}
