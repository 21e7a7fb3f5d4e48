//! The technical spec of one side of the bike: standard (as made) or fitted (as it is being built).

use layshaft_wire::wire;

use super::brake::Brake;
use super::consumer::Consumer;
use super::drive::Drive;
use super::fluid::Fluid;
use super::indication::Indication;
use super::supply::Supply;
use super::wheel::Wheel;

/// Which spec.
#[wire]
pub enum Side {
    /// As made.
    Standard,
    /// As it is being built. What is not said here is as standard.
    Fitted,
}

/// Front or rear.
#[wire]
pub enum End {
    /// Front.
    Front,
    /// Rear.
    Rear,
}

/// One side of the bike.
#[wire(lenient)]
pub struct Spec {
    /// Drive train.
    pub drive: Drive,
    /// Front wheel.
    pub front_wheel: Wheel,
    /// Rear wheel.
    pub rear_wheel: Wheel,
    /// Battery and alternator.
    pub supply: Supply,
    /// Consumers by their mark.
    pub consumers: Vec<Slot>,
    /// Front brake.
    pub front_brake: Brake,
    /// Rear brake.
    pub rear_brake: Brake,
    /// Fillings by their mark.
    pub fluids: Vec<Filling>,
    /// Flasher, pilots and load resistors.
    pub indication: Indication,
}

/// A consumer with its mark, the same mark on both sides of the bike.
#[wire]
pub struct Slot {
    /// Mark.
    pub id: String,
    /// The consumer there.
    pub consumer: Consumer,
}

/// A filling with its mark, the same mark on both sides of the bike.
#[wire]
pub struct Filling {
    /// Mark.
    pub id: String,
    /// The filling.
    pub fluid: Fluid,
}
