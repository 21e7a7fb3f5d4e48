//! What the rider is doing, as far as the electrics care.

use layshaft_wire::wire;

/// What the rider is doing, as far as the electrics care.
#[wire]
pub enum RidingState {
    /// Key on, engine off, lights on.
    Standing,
    /// Riding by day, lights off where the machine allows it.
    Day,
    /// Riding with lights.
    Lights,
    /// Riding with lights, braking and indicating.
    Busy,
}

impl RidingState {
    /// Every state, in the order in which they are shown.
    pub const ALL: [RidingState; 4] = [Self::Standing, Self::Day, Self::Lights, Self::Busy];
}
