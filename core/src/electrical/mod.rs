//! Electrical load against output: what the lamps draw, what the alternator gives, how long the battery lasts.

mod battery;
mod derived;
mod findings;
mod fuse;
mod load;
mod output;
mod sheet;
mod sources;
mod volts;
mod wire;

pub use battery::{battery_hours, rested_charge};
pub use derived::derive_electrical;
pub use fuse::{
    BLADE_FUSES, BLOWS_FROM, Binding, TimeBand, WireAsk, WireChoice, WireSheet, fuse_between, fuse_time, wire_sheet,
};
pub use load::{RidingState, consumer_watts, indicating_watts, lamp_watts, load_watts, share_of_time};
pub use output::{balance_speed, drawn_output, nominal_output, output_at};
pub use sheet::{Balance, LoadAsk, LoadSheet, StateLoad, Stationary, load_sheet};
pub use volts::Volts;
pub use wire::{
    Conductor, CurrentList, ampacity, check_wire, gauge_diameter, gauge_section, voltage_drop, wire_resistance,
};
