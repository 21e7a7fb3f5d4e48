//! The technical spec of one side of the bike, one file a kind of record.

mod brake;
mod consumer;
mod drive;
mod electrics;
mod fluid;
mod fluid_grade;
mod indication;
mod lamp_cap;
mod message;
mod role;
mod side;
mod supply;
mod wheel;

pub use brake::{Brake, BrakeKind};
pub use consumer::{Consumer, LightSource, Use};
pub(crate) use drive::power_in_order;
pub use drive::{ChainJoint, ChainKind, ChainSize, Drive, PowerPoint, SpeedometerDrive};
pub use electrics::{ElectricalSystem, IgnitionKind, SystemCard};
pub use fluid::{FillKind, Fluid};
pub use fluid_grade::FluidGrade;
pub use indication::{FlasherKind, Indication, PilotFitting};
pub use lamp_cap::LampCap;
pub(crate) use message::SpecMessage;
pub use role::ConsumerRole;
pub use side::{End, Filling, Side, Slot, Spec};
pub use supply::{OutputPoint, Supply};
pub use wheel::Wheel;
