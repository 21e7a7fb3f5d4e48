//! The pages of load, charging and wires.

mod charging;
mod load;
mod wire;

pub use charging::{ChargingAnswer, ChargingAsk, charging_answer};
pub use load::{LoadAnswer, LoadAsk, load_answer};
pub use wire::{Binding, WireAnswer, WireAsk, WireChoice, wire_answer};
