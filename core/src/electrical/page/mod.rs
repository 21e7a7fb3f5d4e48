//! The pages of load, charging and wires.

mod charging;
mod load;
mod message;
mod usual;
mod wire;

pub use charging::{ChargingAnswer, ChargingAsk, charging_answer};
pub use load::{LoadAnswer, LoadAsk, load_answer};
pub(crate) use message::{ChargingPageMessage, ElectricalWorking, LoadPageMessage, WireMessage};
pub use usual::{UsualAnswer, UsualConsumer, usual_answer, usual_consumer};
pub use wire::{Binding, WireAnswer, WireAsk, WireChoice, wire_answer};
