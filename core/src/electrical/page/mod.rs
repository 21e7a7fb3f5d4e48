//! The pages of load, charging and wires.

mod charging;
mod load;
mod wire;

pub use charging::{ChargingAsk, ChargingSheet, charging_sheet};
pub use load::{LoadAsk, LoadSheet, load_sheet};
pub use wire::{Binding, WireAsk, WireChoice, WireSheet, wire_sheet};
