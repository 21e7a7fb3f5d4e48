//! The pages of load, charging and wires.

mod alternating;
mod charging;
mod charging_ask;
mod load;
mod message;
mod usual;
mod wire;

pub use charging::charging_answer;
pub use charging_ask::{ChargingAnswer, ChargingAsk};
pub use load::{LoadAnswer, LoadAsk, load_answer};
pub(crate) use message::{ChargingPageMessage, ElectricalWorking, LoadPageMessage, WireMessage};
pub use usual::{UsualAnswer, UsualConsumer, usual_answer, usual_consumer};
pub use wire::{Binding, WireAnswer, WireAsk, WireChoice, wire_answer};
